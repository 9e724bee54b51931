import type { SourceId } from "../sources.ts";
import type { HelpFacts } from "./facts.ts";
import { short, type Urgency } from "./urgency.ts";

/** "fits": the readings agree. "doubtful": one of them is likely wrong. "measure": what would tell more, and why. */
export type FindingKind = "fits" | "doubtful" | "measure";

export interface Finding {
  readonly kind: FindingKind;
  readonly says: string;
  readonly source: SourceId;
}

/** Nitrogen the kits call "none", mg/L. Source: common-practice (the first step of common charts). */
const TRACE = { ammonia: 0.2, nitrite: 0.2, nitrate: 2.5 } as const;
/** A tank younger than this is still growing its bacteria. Source: common-practice. */
export const YOUNG_DAYS = 56;
/** One animal a week is a pace a young filter follows. Source: common-practice. */
const HEADS_A_WEEK = 2;
/** Alkalinity that holds the pH only just, meq/L. Source: common-practice (about 3 dKH). */
const LITTLE_BUFFER = 1.1;
const MUCH_BUFFER = 2.1;
/** Carbonic acid against bicarbonate in fresh water at 25 °C: pK₁ 6.35. Source: carbonic-acid-fresh. */
const PK1_FRESH = 6.35;
const CO2_MG_PER_MMOL = 44;
/** More carbon dioxide than water holds unless it is fed with it, mg/L. Source: common-practice. */
const MUCH_CO2 = 60;
const LITTLE_CO2 = 0.3;

/** The readings against each other: what fits, what is doubtful, what to measure next and why. */
export function findingsOf(facts: HelpFacts, urgency: Urgency): readonly Finding[] {
  return [
    ...doubtfulFigures(facts),
    ...nitrogen(facts, urgency),
    ...buffer(facts),
    ...salt(facts),
    ...stocking(facts),
    ...habits(facts),
    ...toMeasure(facts, urgency),
  ];
}

function doubtfulFigures(facts: HelpFacts): readonly Finding[] {
  return [
    ...facts.doubtful.map(
      ({ typed }): Finding => ({
        kind: "doubtful",
        says: `“${typed}” is no value such water can have. Please test it again, or type it with its unit.`,
        source: "assumption",
      }),
    ),
    ...[...facts.readings.values()]
      .filter(({ isUnclear }) => isUnclear)
      .map(
        ({ typed, parameter }): Finding => ({
          kind: "doubtful",
          says: `“${typed}” has more than one meaning; the sums cover them all. ${UNCLEAR[parameter] ?? "The unit on the kit's chart would settle it."}`,
          source: "definition",
        }),
      ),
  ];
}

const UNCLEAR: Readonly<Record<string, string>> = {
  ammonia: "Some kits count ammonia as nitrogen, others as the whole molecule: the leaflet says which.",
  salinity: "Name the tool, and for a gravity the two temperatures printed on it, such as 25/25 °C.",
};

function nitrogen(facts: HelpFacts, urgency: Urgency): readonly Finding[] {
  const value = (id: "ammonia" | "nitrite" | "nitrate"): number | undefined =>
    facts.readings.get(id)?.estimate.best;
  const [ammonia, nitrite, nitrate] = [value("ammonia"), value("nitrite"), value("nitrate")];
  const age = facts.ageDays?.best;
  const isYoung = age === undefined ? undefined : age < YOUNG_DAYS;
  const found: Finding[] = [];
  const add = (kind: FindingKind, says: string, source: SourceId = "common-practice"): void => {
    found.push({ kind, says, source });
  };
  if (nitrite !== undefined && nitrite > TRACE.nitrite && ammonia !== undefined && ammonia <= TRACE.ammonia) {
    if (isYoung === false)
      add(
        "doubtful",
        "Nitrite with no ammonia, in a tank that is not new: the filter lost part of its bacteria, or the nitrite test is old. Test nitrite once more.",
      );
    else
      add(
        "fits",
        "Nitrite with no ammonia fits a new tank: the first bacteria are there, the second kind still grows. Wait with new animals until both read nothing.",
      );
  }
  if (ammonia !== undefined && ammonia > TRACE.ammonia && isYoung === true && (nitrite ?? 0) <= TRACE.nitrite)
    add("fits", "Ammonia in a tank this young fits: the bacteria that use it up have hardly begun.");
  if (ammonia !== undefined && ammonia > TRACE.ammonia && isYoung === false)
    add(
      "doubtful",
      "Ammonia in a tank that is not new has a cause: something dead, too much food, a filter that stood still, or tap water. Look for it, and test your tap water too.",
    );
  if (
    ammonia !== undefined &&
    nitrite !== undefined &&
    nitrate !== undefined &&
    ammonia <= TRACE.ammonia &&
    nitrite <= TRACE.nitrite &&
    nitrate <= TRACE.nitrate &&
    isYoung === true &&
    (facts.animals ?? 1) > 0
  )
    add(
      "doubtful",
      "No ammonia, no nitrite and no nitrate in a young tank with animals is too good to be sure of. Shake the bottles of the kit, and test again.",
    );
  if (nitrite !== undefined && nitrite > TRACE.nitrite && nitrate !== undefined && nitrate > TRACE.nitrate)
    add(
      "doubtful",
      "A nitrate test also counts nitrite, so with nitrite about it reads too high. Believe the nitrate once nitrite is gone.",
    );
  if (nitrite !== undefined && nitrite > 1 && nitrate !== undefined && nitrate <= TRACE.nitrate)
    add(
      "doubtful",
      "Nitrite but no nitrate at all seldom go together. Shake the nitrate bottles hard and test again.",
    );
  if (facts.usedBinder && ammonia !== undefined && ammonia > TRACE.ammonia)
    add(
      "doubtful",
      "After an ammonia binder many kits still show the ammonia it holds. It may be less harmful than it reads; do not count on that.",
    );
  const here = urgency.ammonia;
  if (
    here !== undefined &&
    ammonia !== undefined &&
    ammonia > TRACE.ammonia &&
    !urgency.alarms.some(({ code }) => code === "ammonia")
  )
    add(
      "fits",
      `At this pH and warmth about ${short(100 * here.answer.value.nh3Share.best)} % of the ammonia is the harmful kind: ${short(here.answer.value.nh3MgPerL.best)} mg/L, under the limit of ${short(here.answer.value.limitNh3)}.`,
      "epa-440-5-88-004",
    );
  return found;
}

/** pH and alkalinity have to fit one another. Source: mass action with pK₁ 6.35 at 25 °C, fresh water. */
function buffer(facts: HelpFacts): readonly Finding[] {
  const pH = facts.readings.get("ph")?.estimate.best;
  const alkalinity = facts.readings.get("alkalinity")?.estimate.best;
  const found: Finding[] = [];
  if (pH !== undefined && alkalinity !== undefined && (facts.water ?? "fresh") === "fresh") {
    const co2 = carbonDioxide(pH, alkalinity);
    if (co2 > MUCH_CO2)
      found.push({
        kind: "doubtful",
        says: `A pH of ${short(pH)} with that much alkalinity (the water's store against acid) would mean ${short(co2)} mg/L of carbon dioxide, more than water holds unless it is fed with it. Test both again.`,
        source: "carbonic-acid-fresh",
      });
    else if (co2 < LITTLE_CO2 && pH > 8)
      found.push({
        kind: "doubtful",
        says: `A pH of ${pH.toFixed(1)} with so little alkalinity is rare: one of the two tests is likely off. Test both again.`,
        source: "carbonic-acid-fresh",
      });
    else
      found.push({
        kind: "fits",
        says: "pH and alkalinity agree with each other.",
        source: "carbonic-acid-fresh",
      });
  }
  if (alkalinity !== undefined && alkalinity < LITTLE_BUFFER)
    found.push({
      kind: "measure",
      says: "Alkalinity (the water's store against acid) is low, so the pH can drop without warning. Measure the pH daily for a week.",
      source: "common-practice",
    });
  if (
    facts.water === "marine" &&
    pH !== undefined &&
    alkalinity !== undefined &&
    pH < 7.6 &&
    alkalinity > MUCH_BUFFER
  )
    found.push({
      kind: "doubtful",
      says: "A low pH with good alkalinity in sea water comes from stale room air or from the probe. Air a glass of tank water outdoors for an hour and test that.",
      source: "common-practice",
    });
  return found;
}

/** mg/L of CO₂ that a pH and an alkalinity (meq/L) go with. */
export function carbonDioxide(pH: number, alkalinityMeqL: number): number {
  return alkalinityMeqL * 10 ** (PK1_FRESH - pH) * CO2_MG_PER_MMOL;
}

function salt(facts: HelpFacts): readonly Finding[] {
  const reading = facts.readings.get("salinity");
  if (reading === undefined) return [];
  const { best } = reading.estimate;
  const isBarePpt = /ppt|psu|salinity/i.test(reading.typed);
  if (facts.water === "marine" && best < 5 && isBarePpt)
    return [
      {
        kind: "doubtful",
        says: `“${reading.typed}” is fresh water. A gravity of about 1.02 is no ppt: say which tool and which scale, and test again.`,
        source: "common-practice",
      },
    ];
  if (facts.water === "marine" && best >= 20 && best < 28.5)
    return [
      {
        kind: "doubtful",
        says: `${short(best)} is low for sea water. Was it a gravity such as 1.0${Math.round(best)}, read as ppt? Sea water is about 35 ppt, or 1.026. Test again before you add salt.`,
        source: "common-practice",
      },
    ];
  if (facts.water === "fresh" && best > 3)
    return [
      {
        kind: "doubtful",
        says: `${short(best)} ppt is a lot of salt for fresh-water animals. Check the tool in plain tap water: it should read nearly nothing.`,
        source: "common-practice",
      },
    ];
  if (best > 42)
    return [
      {
        kind: "doubtful",
        says: `${short(best)} ppt is saltier than the sea by far. Rinse the tool, set its zero, and test again.`,
        source: "common-practice",
      },
    ];
  return [];
}

function stocking({ animals, ageDays, volumeL }: HelpFacts): readonly Finding[] {
  const found: Finding[] = [];
  if (animals !== undefined && ageDays !== undefined && ageDays.best < YOUNG_DAYS) {
    const weeks = Math.max(1, ageDays.best / 7);
    if (animals > HEADS_A_WEEK * weeks)
      found.push({
        kind: "fits",
        says: `${animals} animals in ${Math.round(ageDays.best)} days is more than a young filter can keep up with. Add none until ammonia and nitrite stay at nothing for two weeks; feed little.`,
        source: "common-practice",
      });
  }
  if (animals !== undefined && animals > 0 && volumeL !== undefined && volumeL.best / animals < 3)
    found.push({
      kind: "measure",
      says: `${animals} animals in ${short(volumeL.best)} L leave under 3 L for each. /stocking load works out what they ask of the water.`,
      source: "common-practice",
    });
  return found;
}

function habits(facts: HelpFacts): readonly Finding[] {
  return [
    ...(facts.neverChanged && (facts.ageDays?.best ?? 0) > 30
      ? [
          {
            kind: "measure",
            says: "No water was changed yet. Measure nitrate and pH: they tell what has built up. Then begin with small changes.",
            source: "common-practice",
          } as const,
        ]
      : []),
    ...(facts.cleanedFilter &&
    facts.readings.has("ammonia") &&
    (facts.readings.get("ammonia")?.estimate.best ?? 0) > TRACE.ammonia
      ? [
          {
            kind: "fits",
            says: "A filter that was just cleaned or renewed has lost bacteria; ammonia after that fits.",
            source: "common-practice",
          } as const,
        ]
      : []),
  ];
}

function toMeasure(facts: HelpFacts, urgency: Urgency): readonly Finding[] {
  const found: Finding[] = [];
  const unknown = urgency.ammonia?.assumed ?? [];
  const ammonia = facts.readings.get("ammonia")?.estimate.best ?? 0;
  if (unknown.length > 0 && ammonia > TRACE.ammonia)
    found.push({
      kind: "measure",
      says: `Measure ${unknown.join(" and ")}: how harmful ammonia is hangs on ${unknown.length === 1 ? "it" : "them"}.`,
      source: "epa-440-5-88-004",
    });
  if (!facts.readings.has("ammonia"))
    found.push({
      kind: "measure",
      says: "Measure ammonia first: it is what harms soonest and shows least.",
      source: "common-practice",
    });
  if (!facts.readings.has("nitrite") && facts.readings.has("ammonia"))
    found.push({
      kind: "measure",
      says: "Measure nitrite: with the ammonia it tells how far the filter has come.",
      source: "common-practice",
    });
  return found;
}
