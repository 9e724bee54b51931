import { as, type Fraction } from "../quantity/units.ts";
import { type Caution, caution } from "../result.ts";
import { LARGE_CHANGE } from "../water/change-size.ts";
import { leftAfterChanges } from "../water/dilution.ts";
import type { HelpFacts } from "./facts.ts";
import { type AlarmCode, DANGER_C, short, type Urgency } from "./urgency.ts";

/** How much water to change, and what the new water has to match. */
export interface ChangeNow {
  /** Share of the water, each time. */
  readonly share: number;
  readonly times: number;
  /** Litres each time, where the volume is known. */
  readonly litres?: number;
  /** Why this much. */
  readonly because: string;
}

export interface DoNow {
  /** In this order. */
  readonly steps: readonly string[];
  readonly change?: ChangeNow;
  readonly cautions: readonly Caution[];
}

/** A change that helps nearly always and harms hardly ever, where no reading sets its size. Source: common-practice. */
const USUAL_CHANGE = 0.3;
/** Shares are told in steps of five per cent, upward. */
const STEP = 0.05;
const STEPS_AT_MOST = 6;
const ELECTRIC: readonly AlarmCode[] = ["electric tingle", "overheating equipment", "leak"];
const BREATH: readonly AlarmCode[] = [
  "gasping",
  "low oxygen",
  "no flow",
  "lying",
  "mass deaths",
  "too hot",
  "poisoned water",
  "nitrite",
];
const WATER: readonly AlarmCode[] = [
  "ammonia",
  "nitrite",
  "gasping",
  "lying",
  "mass deaths",
  "poisoned water",
];

/** What to do before anything is explained: calm, numbered, nothing that can make it worse. Undefined when nothing presses. */
export function doNow(facts: HelpFacts, urgency: Urgency): DoNow | undefined {
  if (urgency.level !== "now") return undefined;
  const has = (codes: readonly AlarmCode[]): boolean =>
    urgency.alarms.some(({ code }) => codes.includes(code));
  const change = has(WATER) ? changeNow(facts, urgency) : undefined;
  const isElectric = has(ELECTRIC);
  const steps = [
    ...(isElectric ? [electricStep(urgency)] : []),
    ...(has(["leak"])
      ? [
          "Then draw water off into clean buckets until the leak stops, and move the animals into one of them, with air.",
        ]
      : []),
    ...(has(BREATH) ? [airStep(isElectric)] : []),
    ...(has(["too hot"]) ? [coolStep(facts)] : []),
    ...(has(["too cold"]) ? [warmStep(facts)] : []),
    ...(has(["no flow"]) && !isElectric
      ? [
          "Look why the filter or pump stands still: plug, switch, a blocked inlet. Switch off at the wall before you reach in. If it stood for hours, rinse it in a bucket of tank water before it runs again.",
        ]
      : []),
    ...(has(["poisoned water"])
      ? ["Stop what gets in. If the filter takes fresh active carbon, put it in: it binds many poisons."]
      : []),
    ...(change === undefined ? [] : [changeStep(change, facts)]),
    ...(has(["pH far out"])
      ? [
          "Test the pH again with a clean tube. If it reads the same, change a tenth of the water now and again in an hour; never swing the pH in one go.",
        ]
      : []),
    ...(has(["mass deaths"]) || facts.oneDeath
      ? ["Take out what is dead, with a net. Count the others."]
      : []),
    "Feed nothing today, and add no medicine or other powder.",
    testStep(facts),
  ];
  return {
    steps: steps.slice(0, STEPS_AT_MOST),
    ...(change === undefined ? {} : { change }),
    cautions: cautionsOf(facts, urgency, change, isElectric),
  };
}

function electricStep({ alarms }: Urgency): string {
  return alarms.some(({ code }) => code === "leak") && !alarms.some(({ code }) => code === "electric tingle")
    ? "Keep out of the wet. Switch the tank's sockets off at the breaker, with dry hands. If you cannot reach it dry, stay away and call an electrician."
    : "Hands out of the water. Switch the tank's sockets off at the breaker, with dry hands, and leave them off. A licensed electrician has to find the fault.";
}

function airStep(isElectric: boolean): string {
  return isElectric
    ? "Give air without power: scoop water up in a jug and let it splash back, some minutes every quarter hour. An air pump on batteries is better."
    : "Give air: an air stone, or the filter outlet aimed at the surface until it ripples hard. Lid open.";
}

function coolStep(facts: HelpFacts): string {
  const { high } = facts.isCoolWater ? DANGER_C.cool : DANGER_C.tropical;
  return `Cool it slowly, about 1 °C an hour, until it is under ${high - 4} °C: heater unplugged, lights off, lid open, a fan across the water. Closed bags of cold water may float in it; no loose ice.`;
}

function warmStep(facts: HelpFacts): string {
  const { low } = facts.isCoolWater ? DANGER_C.cool : DANGER_C.tropical;
  return `Warm it slowly, about 1 °C an hour, until it is over ${low + 4} °C: wrap the tank in a blanket and float closed bottles of warm water. A new heater goes in cold and is switched on after a quarter of an hour.`;
}

function changeStep({ share, times, litres, because }: ChangeNow, facts: HelpFacts): string {
  const each = `${Math.round(100 * share)} % of the water${litres === undefined ? "" : ` (${short(litres)} L)`}`;
  const again =
    times === 1 ? "" : `, ${times === 2 ? "twice" : `${times} times`}, two hours apart, with a test between`;
  const celsius = facts.readings.get("temperature")?.estimate.best;
  const salinity = facts.readings.get("salinity")?.estimate.best;
  const isSalt = facts.water === "marine" || facts.water === "brackish";
  const match = [
    `as warm as the tank (${celsius === undefined ? "" : `${short(celsius)} °C, `}within 1 °C)`,
    ...(isSalt ? [`as salty (${salinity === undefined ? "" : `${short(salinity)} ppt, `}within 1 ppt)`] : []),
    "and with tap-water conditioner if it comes from the tap",
  ];
  return `Change ${each}${again}: ${because}. The new water: ${match.join(", ")}.`;
}

function testStep(facts: HelpFacts): string {
  const missing = (
    [
      ["ammonia", "ammonia"],
      ["nitrite", "nitrite"],
      ["ph", "pH"],
      ["temperature", "temperature"],
    ] as const
  ).filter(([id]) => !facts.readings.has(id));
  return missing.length === 0
    ? "Test ammonia, nitrite and pH again in two hours, and type what they read."
    : `Then measure ${missing.map(([, name]) => name).join(", ")} and type what you read. No kit? A shop often tests for free.`;
}

/** The size of the change: from the ammonia where that is known, else a share that is safe for nearly all. */
export function changeNow(facts: HelpFacts, { ammonia, alarms }: Urgency): ChangeNow {
  const wanted = ammonia?.answer.value.remedy?.waterChange;
  const codes = new Set(alarms.map(({ code }) => code));
  const volume = facts.volumeL?.best;
  const sized = (share: number, times: number, because: string): ChangeNow => ({
    share,
    times,
    ...(volume === undefined ? {} : { litres: share * volume }),
    because,
  });
  if (wanted !== undefined && codes.has("ammonia")) {
    const share = Math.min(0.99, wanted.best);
    if (share <= LARGE_CHANGE)
      return sized(
        Math.max(0.1, upward(share)),
        1,
        "that brings the harmful ammonia under its limit, if the new water has none",
      );
    const times = timesOfHalf(share);
    return sized(
      LARGE_CHANGE,
      times,
      "no more than half at once; together that brings the harmful ammonia under its limit",
    );
  }
  const nitrite = facts.readings.get("nitrite")?.estimate.best;
  if (nitrite !== undefined && codes.has("nitrite"))
    return sized(
      LARGE_CHANGE,
      1,
      `it halves the nitrite, from ${short(nitrite)} to ${short(nitrite * leftAfterChanges(as<Fraction>(LARGE_CHANGE), 1))} mg/L`,
    );
  if (codes.has("poisoned water")) return sized(LARGE_CHANGE, 2, "each one halves what got in");
  return sized(USUAL_CHANGE, 1, "a size that helps in most trouble and harms in hardly any");
}

/** Changes of one half until no more than the rest is left. */
function timesOfHalf(share: number): number {
  let times = 1;
  while (leftAfterChanges(as<Fraction>(LARGE_CHANGE), times) > 1 - share && times < 6) times += 1;
  return times;
}

function upward(share: number): number {
  return Math.ceil(Number((share / STEP).toFixed(6))) * STEP;
}

/** Below this pH, with much ammonia, new water of a higher pH does harm. Source: common-practice. */
const MILD_PH = 7;

function cautionsOf(
  facts: HelpFacts,
  { alarms }: Urgency,
  change: ChangeNow | undefined,
  isElectric: boolean,
): readonly Caution[] {
  const has = (code: AlarmCode): boolean => alarms.some((alarm) => alarm.code === code);
  const pH = facts.readings.get("ph")?.estimate.best;
  const tan = facts.readings.get("ammonia")?.estimate.best ?? 0;
  return [
    ...(isElectric
      ? [caution("help-electrician-first", {}, "danger"), caution("help-doctor-first", {}, "danger")]
      : []),
    ...(has("poisoned water") ? [caution("help-poison-line", {}, "danger")] : []),
    ...(isElectric ? [] : [caution("mains-near-water", {}, "danger")]),
    caution("help-call-a-vet", {}, "warning"),
    ...(pH !== undefined && pH < MILD_PH && tan >= 1
      ? [caution("help-pH-rises-with-the-change", { pH })]
      : []),
    ...(change === undefined ? [] : [caution("help-heavy-water", {}, "note")]),
    caution("help-no-medicine", {}, "warning"),
  ];
}
