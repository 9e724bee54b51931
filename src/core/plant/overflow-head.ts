import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type LitresPerHour, type Metres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseUnlessPositive } from "./usable-figures.ts";
import { type EndContractions, francisFlow, francisHead, francisLimit, toothedHead } from "./weir.ts";

/** Share of the slots that weed and snails may close. Source: common-practice. */
const SHARES_BLOCKED = [0, 0.3, 0.5] as const;
/** Spread of the head for a given flow: flow ±10 % is head ±6.6 %. Source: francis-1883 against Rehbock. */
const PLAIN_SPREAD = between(0.9, 1.1, 1);
/** ±20 % of flow, since the slots are narrower than the notches tested. Source: kindsvater-carter-1957. */
const TOOTHED_SPREAD = between(0.8, 1.2, 1);
/** Least head of the published tests, mm. Source: usbr-water-measurement. */
const TESTED_HEAD_MM = 60;

export type Crest =
  | { readonly kind: "plain"; readonly lengthM: Estimate<Metres>; readonly endContractions: EndContractions }
  | {
      readonly kind: "toothed";
      readonly slots: number;
      readonly slotWidthMm: Estimate<Millimetres>;
      readonly toothHeightMm?: Estimate<Millimetres>;
    };

export interface OverflowHead {
  /** Water standing above the crest (or above the foot of the teeth) in running. */
  readonly headMm: Estimate<Millimetres>;
  /** The same with 30 % of the crest closed. */
  readonly thirdBlockedMm: Estimate<Millimetres>;
  /** The same with half the crest closed. */
  readonly halfBlockedMm: Estimate<Millimetres>;
  /** Whether the water may run over the teeth, clean or half blocked; undefined without a tooth height. */
  readonly overTeeth: "no" | "when half blocked" | "even clean" | undefined;
}

/** How high the water stands over the overflow for a flow. */
export function overflowHead(flow: Estimate<LitresPerHour>, crest: Crest): Answer<OverflowHead> | NoAnswer {
  const refused = refuseUnlessPositive({
    flow,
    "crest length": crest.kind === "plain" ? crest.lengthM : undefined,
    "slot width": crest.kind === "toothed" ? crest.slotWidthMm : undefined,
    "number of slots": crest.kind === "toothed" ? between(crest.slots, crest.slots) : undefined,
    "tooth height": crest.kind === "toothed" ? crest.toothHeightMm : undefined,
  });
  if (refused !== undefined) return refused;
  return crest.kind === "plain" ? plainHead(flow, crest) : toothedCrestHead(flow, crest);
}

function plainHead(
  flow: Estimate<LitresPerHour>,
  crest: Extract<Crest, { kind: "plain" }>,
): Answer<OverflowHead> | NoAnswer {
  const shortest = as<Metres>(crest.lengthM.low * (1 - SHARES_BLOCKED[2]));
  const most = francisFlow(shortest, francisLimit(shortest), crest.endContractions);
  const asked = flow.high / PLAIN_SPREAD.low;
  if (asked > most) return noAnswer("weir-drowned", { flowLPerH: flow.best, mostLPerH: most });
  const { estimates, drivers } = propagate(
    { flow, "crest length": crest.lengthM, "weir formula": PLAIN_SPREAD },
    (v) =>
      headsFor((share) =>
        francisHead(
          as<Metres>(v["crest length"] * (1 - share)),
          as<LitresPerHour>(v.flow / v["weir formula"]),
          crest.endContractions,
        ),
      ),
  );
  const head = estimates.headMm.best;
  const cautions: Caution[] =
    head < TESTED_HEAD_MM
      ? [caution("weir-below-tested-heads", { headMm: head, testedMm: TESTED_HEAD_MM }, "note")]
      : [];
  return {
    kind: "answer",
    value: { ...estimates, overTeeth: undefined },
    method: "Francis' formula for a sharp crest with free fall",
    working: [
      "flow = 1.84 × (length − 0.1 × end contractions × head) × head^1.5, in metres and m³/s",
      "solved for the head",
      "again with 30 % and 50 % of the crest closed by growth",
    ],
    constants: [
      { name: "weir coefficient", value: "1.84 m^½/s", source: "francis-1883" },
      { name: "length lost per end contraction", value: "0.1 × head", source: "francis-1883" },
      { name: "spread of the formula at small heads", value: "±10 % of flow", source: "francis-1883" },
    ],
    sources: ["francis-1883", "usbr-water-measurement", "common-practice"],
    assumptions: ["the crest is sharp and level", "air gets under the falling sheet"],
    cautions,
    driver: drivers.headMm,
  };
}

function toothedCrestHead(
  flow: Estimate<LitresPerHour>,
  crest: Extract<Crest, { kind: "toothed" }>,
): Answer<OverflowHead> {
  const { estimates, drivers } = propagate(
    { flow, "slot width": crest.slotWidthMm, "weir formula": TOOTHED_SPREAD },
    (v) =>
      headsFor((share) =>
        toothedHead(
          crest.slots * (1 - share),
          v["slot width"],
          as<LitresPerHour>(v.flow / v["weir formula"]),
        ),
      ),
  );
  const tooth = crest.toothHeightMm?.low;
  const overTeeth =
    tooth === undefined
      ? undefined
      : estimates.headMm.high > tooth
        ? "even clean"
        : estimates.halfBlockedMm.high > tooth
          ? "when half blocked"
          : "no";
  const cautions: Caution[] =
    tooth !== undefined && overTeeth !== "no"
      ? [
          caution("water-over-the-teeth", {
            headMm: overTeeth === "even clean" ? estimates.headMm.high : estimates.halfBlockedMm.high,
            toothHeightMm: tooth,
          }),
        ]
      : [];
  return {
    kind: "answer",
    value: { ...estimates, overTeeth },
    method: "Every slot counted as a narrow notch of its own",
    working: [
      "flow = slots × 0.587 × ⅔ × √(2g) × slot width × head^1.5",
      "solved for the head",
      "again with 30 % and 50 % of the slots closed by growth",
    ],
    constants: [
      { name: "narrow-notch coefficient", value: "0.587", source: "kindsvater-carter-1957" },
      { name: "standard gravity", value: "9.80665 m/s²", source: "nist-sp-811" },
      { name: "spread, slots narrower than any tested", value: "±20 % of flow", source: "assumption" },
    ],
    sources: ["kindsvater-carter-1957", "nist-sp-811", "common-practice", "assumption"],
    assumptions: ["the slots are level and clean unless said", "the water in the box stands below the slots"],
    cautions,
    driver: drivers.headMm,
  };
}

function headsFor(headAt: (share: number) => Millimetres) {
  return {
    headMm: headAt(SHARES_BLOCKED[0]),
    thirdBlockedMm: headAt(SHARES_BLOCKED[1]),
    halfBlockedMm: headAt(SHARES_BLOCKED[2]),
  };
}
