import { judgeRegimen } from "../../src/core/plans/regimens.ts";
import { askFor, type Context, capitalised, fills, type Question, UserError } from "../../src/kit/index.ts";
import { tankLogOf } from "../../src/kit/tank-log.ts";
import type { Regimen } from "../../src/records/plan.ts";
import type { Tank } from "../../src/records/tank.ts";
import { numberOption } from "../plan/shared.ts";

export const regimenOption = numberOption("Its number, as /regimen list shows it", ({ records, member }) =>
  records.plans.regimens(member.id).map(({ id }) => id),
);

/** The regimen meant: the one named, else the only one that is not over. Throws: UserError where there is none. */
export function regimenMeant(
  given: number | undefined,
  title: string,
  context: Context,
): { readonly regimen: Regimen; readonly tank: Tank } | Question {
  const { records, member } = context;
  const running = records.plans.regimens(member.id).filter(({ state }) => state !== "over");
  const [only, ...others] = running;
  if (given === undefined && only === undefined)
    throw new UserError("not-found", "No regimen is running. /regimen list shows what there is to start.");
  if (given === undefined && others.length > 0)
    return askFor(
      context,
      { name: "regimen", example: "1" },
      {
        title,
        text: "Which regimen?",
        choices: running
          .slice(0, 20)
          .map(({ id, pattern }) => fills(`${id}: ${pattern}`, "regimen", String(id))),
      },
    );
  const regimen = given === undefined ? only : records.plans.regimen(member.id, given);
  if (regimen === undefined)
    throw new UserError("not-found", `There is no regimen ${given} of yours. /regimen list shows them.`);
  const tank = records.tanks.own(member.id).find(({ id }) => id === regimen.tankId);
  if (tank === undefined) throw new UserError("not-found", "Its tank has gone.");
  return { regimen, tank };
}

/** What the log says to it at this moment, and what was said last. */
export function standing(regimen: Regimen, tank: Tank, { records, member, now }: Context): string {
  if (regimen.state === "over") return `Over${regimen.why === undefined ? "" : `: ${regimen.why}`}.`;
  if (regimen.state === "paused") return "Paused: /regimen resume lets it go on.";
  const madeAt = records.plans.plansOf(member.id, regimen.id)[0]?.createdAt ?? regimen.startedAt;
  const verdict = judgeRegimen(
    regimen.pattern,
    regimen.settings,
    tankLogOf(tank, madeAt, records),
    Date.parse(regimen.startedAt),
    now,
  );
  switch (verdict.kind) {
    case "go":
      return verdict.why === undefined
        ? regimen.why === undefined
          ? "Runs."
          : `Runs; the last dose was held: ${regimen.why}.`
        : `Runs: ${verdict.why}.`;
    case "hold":
      return `Holds: ${verdict.why}.`;
    case "end":
    case "stop":
      return `Ends: ${capitalised(verdict.why)}.`;
  }
}
