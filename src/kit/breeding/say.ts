import { hatchFiguresFor } from "../../core/breeding/hatch-table.ts";
import { type Caution, caution } from "../../core/result.ts";
import { sayCaution } from "../../wording/index.ts";
import type { Context } from "../context.ts";
import type { Reply } from "../reply.ts";
import { capitalised } from "../text.ts";

type Extra = Partial<Pick<Reply, "headline" | "table" | "chart" | "picture" | "files" | "ok">> & {
  readonly cautions?: readonly Caution[];
};

/** A reply about the group's own things. */
export function told(
  context: Context,
  title: string,
  body: readonly string[],
  { cautions = [], ok = true, ...rest }: Extra = {},
): Reply {
  return {
    kind: "reply",
    ok,
    title,
    body,
    ...rest,
    cautions: cautions.map((each) => ({ level: each.level, text: capitalised(sayCaution(each)) })),
    audience: context.audience,
  };
}

/** What holds whenever animals change hands or are sought. */
export function handoverCautions(species: string): readonly Caution[] {
  return [
    caution("breeding-never-release", {}, "note"),
    hatchFiguresFor(species)?.needsPapers === true
      ? caution("breeding-papers", { species })
      : caution("breeding-authority", { species }, "note"),
  ];
}

export function percentText(share: number, digits = 0): string {
  return `${(100 * share).toFixed(digits)} %`;
}
