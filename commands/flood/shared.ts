import { overflowHead } from "../../src/core/plant/overflow-head.ts";
import type { Millimetres } from "../../src/core/plant/plant-units.ts";
import type { PumpOffInputs } from "../../src/core/plant/pump-off-flood.ts";
import type { RowFact } from "../../src/core/plant/read-row.ts";
import { tankRow } from "../../src/core/plant/tank-row.ts";
import { type Estimate, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { as, type LitresPerHour } from "../../src/core/quantity/units.ts";
import { askFor, type Context, listed, type Question } from "../../src/kit/index.ts";
import type { PlantFigures } from "../../src/kit/plant-figures.ts";
import { PLANT_READERS, type PlantValue } from "../../src/kit/plant-notes.ts";

type PumpOffKey = "row" | "level" | "returns" | "overflow-box" | "pipe" | "surface";

/** The figures of a pump stop, or the one question for what is missing. */
export type PumpOffFigures =
  | {
      readonly kind: "ready";
      readonly pumpOff: PumpOffInputs;
      readonly facts: readonly RowFact[];
      readonly flow: Estimate<LitresPerHour> | undefined;
    }
  | Question;

export function pumpOffFigures(
  known: PlantFigures,
  input: { readonly [K in PumpOffKey]?: PlantValue<K> | undefined } & {
    readonly flow?: { readonly estimate: Estimate<LitresPerHour> } | undefined;
  },
  context: Context,
  title: string,
): PumpOffFigures {
  const containers = known.tank?.containers ?? [];
  const facts = known.plant("row", input.row);
  if (facts === undefined) {
    const names = containers
      .filter(({ role, inSystem }) => inSystem && role !== "display")
      .map(({ name }) => name);
    return askFor(
      context,
      { name: "row", example: PLANT_READERS.row.example },
      {
        title,
        text: `${PLANT_READERS.row.question}${names.length === 0 ? "" : ` Yours are ${listed(names)}.`}`,
      },
    );
  }
  const row = tankRow(facts, containers);
  if (row.kind === "missing")
    return askFor(
      context,
      { name: "row", example: `${row.container} holds the pump, surface 0.6 m2, room 120 mm` },
      {
        title,
        text:
          row.what === "surface"
            ? `How large is the water's surface in ${row.container}? Say the row again with it.`
            : `How much room is there above the water in ${row.container}, up to its lowest hole, notch or rim? Say the row again with it.`,
      },
    );
  const areaM2 = known.surface(input.surface);
  if (areaM2 === undefined) return known.askPlant("surface", title);
  const said = known.plant("level", input.level);
  const flow = known.flow(input.flow);
  const crest = said === undefined && flow !== undefined ? known.plant("crest", undefined) : undefined;
  const head = crest === undefined || flow === undefined ? undefined : overflowHead(flow, crest);
  const worked = head?.kind === "answer" ? head.value.headMm : undefined;
  const aboveCrestMm =
    said === undefined ? worked : mapEstimate(said.estimate, (cm) => as<Millimetres>(cm * 10));
  if (aboveCrestMm === undefined) return known.askPlant("level", title);
  if (said === undefined)
    known.measured("level over the crest, worked out from the flow", aboveCrestMm, "mm");
  const returns = known.plant("returns", input.returns);
  if (returns === undefined) return known.askPlant("returns", title);
  const box = known.plant("overflow-box", input["overflow-box"]);
  const pipes = known.plant("pipe", input.pipe);
  if (box === undefined) known.assume({ name: "overflow box", from: "not said", readAs: "0 L" });
  if (pipes === undefined) known.assume({ name: "pipes", from: "not said", readAs: "0 L" });
  if (row.fromDimensions.length > 0)
    known.assume({
      name: "surface or rim",
      from: "their dimensions",
      readAs: `of ${listed(row.fromDimensions)}`,
    });
  return {
    kind: "ready",
    facts,
    flow,
    pumpOff: {
      display: { name: "display", areaM2, aboveCrestMm, returns },
      pipes: pipes ?? [],
      row: row.row,
      ...(box === undefined ? {} : { overflowBoxL: box.estimate }),
    },
  };
}
