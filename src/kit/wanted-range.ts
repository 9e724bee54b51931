import { type Parameter, unitText } from "../core/log/parameters.ts";
import { showNumber } from "../core/quantity/show.ts";
import type { Tank } from "../records/tank.ts";
import type { Context } from "./context.ts";

/** Where a parameter should be, and who says so. */
export interface WantedRange {
  readonly low?: number;
  readonly high?: number;
  /** "your target", "usual for marine tanks". */
  readonly from: string;
  readonly isOwn: boolean;
}

/** The member's own target for a tank, else what such tanks are commonly kept at; undefined where neither is. */
export function wantedRange(
  subject: Parameter,
  tank: Tank,
  { records, member }: Pick<Context, "records" | "member">,
): WantedRange | undefined {
  const own = records.targets.of(tank.owner, tank.id).find(({ parameter }) => parameter === subject.id);
  if (own !== undefined) {
    const { low, high } = own;
    return {
      ...(low === undefined ? {} : { low }),
      ...(high === undefined ? {} : { high }),
      from: tank.owner === member.id ? "your target" : "its target",
      isOwn: true,
    };
  }
  const usual = subject.usual[tank.kind];
  if (usual === undefined) return undefined;
  // Nothing lies below nothing: such a range has one end.
  return {
    ...(usual.min <= subject.possible.min ? {} : { low: usual.min }),
    high: usual.max,
    from: `usual for ${tank.kind} tanks`,
    isOwn: false,
  };
}

/** "7.8–8.4", "under 50 mg/L as NO₃", "400 mg/L or more". */
export function showRange({ low, high }: Pick<WantedRange, "low" | "high">, subject: Parameter): string {
  const unit = unitText(subject);
  const withUnit = (figures: string): string => (unit === "" ? figures : `${figures} ${unit}`);
  if (high === undefined) return `${withUnit(showNumber(low ?? 0, 3))} or more`;
  if (low === undefined) return `under ${withUnit(showNumber(high, 3))}`;
  return withUnit(`${showNumber(low, 3)}${low < 0 ? " to " : "–"}${showNumber(high, 3)}`);
}
