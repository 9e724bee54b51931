import { ammoniumDose } from "../../src/core/dosing/ammonium-dose.ts";
import { carbonRamp } from "../../src/core/dosing/carbon-ramp.ts";
import { regimenPlans } from "../../src/core/plans/regimen-plans.ts";
import {
  REGIMEN_IDS,
  REGIMENS,
  type RegimenId,
  type RegimenSettings,
} from "../../src/core/plans/regimens.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../src/core/result.ts";
import { SOURCES } from "../../src/core/sources.ts";
import { calendarOf } from "../../src/kit/calendar.ts";
import {
  answerReply,
  type Context,
  capitalised,
  choice,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  quoted,
  type Reply,
  reading,
  tankOption,
  UserError,
} from "../../src/kit/index.ts";
import { wholeDays } from "../../src/kit/later.ts";
import { newPlan } from "../../src/kit/plan-change.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";
import { readMoment } from "../../src/kit/time-of-plan.ts";
import type { Tank } from "../../src/records/tank.ts";
import { askToday, conditionsOf, todayOptions } from "../carbon/shared.ts";
import { placeLine } from "../plan/add.ts";
import { plainReply } from "../plan/shared.ts";
import { ownTank } from "../tank/shared.ts";

const MOST_DAYS = 366;

export default defineCommand({
  name: "start",
  summary: "Start a regimen on a tank: cycling, ethanol ramp, water changes, quarantine, salinity watch",
  options: {
    pattern: choice("Which regimen", REGIMEN_IDS),
    first: optional(
      reading(
        "The first day and its time of day; today if left out",
        "tomorrow 19:00",
        (text, { member, now }) => readMoment(text, member, now),
      ),
    ),
    days: optional(quantity.span("Days between water changes, or the length of a quarantine", "7 days")),
    share: optional(quantity.fraction("Of each water change", "15 %")),
    strength: optional(quantity.percent("Of the alcohol in the reservoir, by volume", "10 %")),
    doses: optional(quantity.count("Into how many a day's alcohol is split", "8")),
    nitrate: optional(quantity.plainNumber("Nitrate to come down to, mg/L as NO₃", "10")),
    ammonia: optional(quantity.plainNumber("Ammonia to feed a filter with, mg/L as N", "2")),
    ...todayOptions,
    tank: optional(tankOption()),
  },
  examples: [
    "/regimen start pattern:water changes days:7 days share:15 %",
    "/regimen start pattern:ethanol ramp strength:10 % nitrate:10 today:all runs, fish eat tank:Lagoon",
    "/regimen start pattern:quarantine days:30 days",
  ],
  run(input, context): Outcome {
    const tank = ownTank(input.tank, context);
    const pattern = REGIMENS.find(({ id }) => id === input.pattern);
    if (pattern === undefined)
      throw new UserError("bad-input", `There is no regimen ${quoted(input.pattern)}.`);
    const { records, member, now } = context;
    const isRunning = records.plans
      .regimens(member.id)
      .some((each) => each.pattern === pattern.id && each.tankId === tank.id && each.state !== "over");
    if (isRunning)
      throw new UserError(
        "not-now",
        `${capitalised(pattern.id)} runs on ${tank.name} already: /regimen show.`,
      );
    const settings: RegimenSettings = {
      ...pattern.usual,
      ...(input.days === undefined ? {} : { days: wholeDays(input.days.estimate.best) }),
      ...(input.share === undefined ? {} : { share: input.share.best }),
      ...(input.strength === undefined ? {} : { percent: input.strength.best }),
      ...(input.doses === undefined ? {} : { dosesPerDay: input.doses.best }),
      ...(input.nitrate === undefined ? {} : { nitrate: input.nitrate.best }),
      ...(input.ammonia === undefined ? {} : { ammonia: input.ammonia.best }),
    };
    mustMakeSense(settings);
    const conditions = conditionsOf(input);
    if (pattern.id === "ethanol ramp" && conditions === undefined) return askToday(context, "Ethanol ramp");
    const gate = gateOf(pattern.id, settings, tank, conditions, context);
    if (gate?.kind === "no-answer") return refused(gate, `${tank.name}: ${pattern.id} not started`, context);
    const calendar = calendarOf(member.zone);
    const first = calendar.local(input.first ?? now);
    const plans = regimenPlans(pattern.id, settings, first.day, first.minute).map(({ task, rule, words }) =>
      newPlan({ tankId: tank.id, task, rule, typed: words }, now, calendar),
    );
    const startedAt = new Date(input.first ?? now).toISOString();
    const regimen = records.plans.startRegimen(
      member.id,
      { tankId: tank.id, pattern: pattern.id, settings, startedAt },
      plans,
      new Date(now).toISOString(),
    );
    const cautions = gate === undefined ? [] : answerReply(gate, context, NO_WORDS).cautions;
    return plainReply(
      `${tank.name}: regimen ${regimen.id}`,
      [
        `${pattern.about}.`,
        ...pattern.rules,
        "/regimen show gives its calendar page; pause, shift or stop it at any time.",
        ...placeLine(context),
      ],
      context,
      {
        headline: `${capitalised(pattern.id)} runs`,
        basis: `a pattern of the trade: ${SOURCES[pattern.source].standing}`,
        cautions,
      },
    );
  },
});

const NO_WORDS = { title: "", headline: () => "", body: () => [] };

/** The sums whose refusals forbid a start: no carbon while something is off, no ammonia where animals live. */
function gateOf(
  id: RegimenId,
  settings: RegimenSettings,
  tank: Tank,
  conditions: ReturnType<typeof conditionsOf>,
  context: Context,
): Answer<unknown> | NoAnswer | undefined {
  if (id === "ethanol ramp" && conditions !== undefined)
    return carbonRamp({
      route: "aerobic assimilation",
      systemVolume: tankVolume(tank, context).estimate,
      reservoirPercent: exactly(settings.percent ?? 0),
      weeks: 1,
      dosesPerDay: settings.dosesPerDay ?? 1,
      conditions,
    });
  if (id === "cycling")
    return ammoniumDose({
      systemVolume: tankVolume(tank, context).estimate,
      target: exactly(settings.ammonia ?? 0),
      form: "TAN",
      purity: exactly(as<Fraction>(1)),
      hasAnimals: tank.notes.livestock !== undefined,
    });
  return undefined;
}

function refused(gate: NoAnswer, title: string, context: Context): Reply {
  return answerReply(gate, context, { ...NO_WORDS, title });
}

/** Throws: UserError for a figure with which no regimen could run. */
function mustMakeSense({ days = 1, share = 0.1, dosesPerDay = 1, nitrate = 1 }: RegimenSettings): void {
  if (days < 1 || days > MOST_DAYS)
    throw new UserError("bad-input", `From 1 to ${MOST_DAYS} days will do: days:7 days`);
  if (!(share > 0) || share > 1)
    throw new UserError(
      "bad-input",
      "A change takes more than nothing and at most all of the water: share:15 %",
    );
  if (!Number.isInteger(dosesPerDay) || dosesPerDay < 1 || dosesPerDay > 96)
    throw new UserError("bad-input", "From 1 to 96 whole doses a day will do: doses:8");
  if (!(nitrate > 0)) throw new UserError("bad-input", "Nitrate is never wanted at nothing: nitrate:10");
}
