import { loggedAction } from "../../src/core/dosing/read-action.ts";
import { type PhInstrument, phWithDoubt } from "../../src/core/nitrogen/ph-doubt.ts";
import { type AmmoniaReading, readAmmonia } from "../../src/core/nitrogen/read-nitrogen.ts";
import { type Estimate, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type PH } from "../../src/core/quantity/units.ts";
import { type Context, choice, type Option, optional, quantity, reading } from "../../src/kit/index.ts";
import type { KnownFigures } from "../../src/kit/known-figures.ts";
import { ago } from "../../src/kit/tank-figures.ts";

/** A kit's total ammonia; whether it means nitrogen, NH₃ or NH₄ is asked when not said. */
export const ammonia = (description: string): Option<AmmoniaReading, true> =>
  reading(description, "0.5 mg/L as NH4", (text, { habits }) => readAmmonia(text, habits));

const INSTRUMENTS = [
  "colour kit",
  "meter, ordinary buffers",
  "meter, total scale",
] as const satisfies PhInstrument[];

/** A pH, and what it was read with. */
export const phOptions = {
  ph: optional(quantity.ph("pH at the same time; your last logged one if left out", "8.2")),
  measured: optional(choice("What the pH was read with; a colour kit if left out", INSTRUMENTS)),
};

/** The pH typed, else logged within so many days, with the doubt of what it was read with. */
export function phOf(
  input: { readonly ph?: Estimate<PH> | undefined; readonly measured?: PhInstrument | undefined },
  known: KnownFigures,
  mostDays: number,
):
  | { readonly read: Estimate<PH>; readonly doubted: Estimate<PH>; readonly isTotalScale: boolean }
  | undefined {
  const logged = input.ph === undefined ? known.logged("ph", mostDays) : undefined;
  const read = input.ph ?? (logged === undefined ? undefined : mapEstimate(logged, (value) => as<PH>(value)));
  if (read === undefined) return undefined;
  const doubted = phWithDoubt(read, input.measured ?? "colour kit");
  if (doubted !== read)
    known.assume({
      name: "pH with a colour kit's doubt",
      from: input.measured === undefined ? "how it was read was not said" : "half a step of the chart",
      readAs: showEstimate(doubted, ""),
    });
  return { read, doubted, isTotalScale: input.measured === "meter, total scale" };
}

/** Log lines looked through for a binder; two days hardly hold more. */
const MOST_LINES = 100;
const BLIND_HOURS = 48;

/** Whether the tank's log holds a binder of the last two days; it is named in `taken` when it does. */
export function hasLoggedBinder(known: KnownFigures, { records, now }: Context): boolean {
  const { tank } = known;
  if (tank === undefined) return false;
  const event = records.log
    .recent(tank.owner, tank.id, MOST_LINES)
    .flatMap((line) => (line.kind === "event" ? [line.event] : []))
    .find((each) => {
      const action = loggedAction({ ...each, kind: "event" }, now);
      return (
        action?.kind === "dose" &&
        action.of === "ammonia binder" &&
        action.at > -BLIND_HOURS &&
        action.at <= 0
      );
    });
  if (event === undefined) return false;
  known.assume({ name: "binder", from: `${tank.name}, logged ${ago(event.at, now)}`, readAs: event.readAs });
  return true;
}
