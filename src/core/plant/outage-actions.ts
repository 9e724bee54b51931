/** Steps in a power cut; worded elsewhere. */
export type OutageAction =
  | "switch-off-at-the-wall"
  | "start-battery-air"
  | "stir-the-surface"
  | "open-the-lid"
  | "stop-feeding"
  | "take-out-spare-demand"
  | "wrap-the-tank"
  | "shade-and-fan"
  | "add-aerated-water"
  | "check-oxygen-or-breathing"
  | "generator-outside"
  | "flush-filters-first"
  | "restart-in-steps";

export interface OutageSituation {
  readonly hasBatteryAir: boolean;
  readonly hasGenerator: boolean;
  /** Where the room is taking the water: colder, warmer, or neither to matter. */
  readonly drift: "cooling" | "warming" | "steady";
  readonly isOxygenAtAlarm: boolean;
}

/** What to do, first things first: oxygen, then demand, then temperature, then the return of power.
 *  Source: common-practice; oxygen fails hours before temperature does. */
export function outageActions(situation: OutageSituation): readonly OutageAction[] {
  const air: OutageAction[] = situation.hasBatteryAir
    ? ["start-battery-air", "stir-the-surface"]
    : ["stir-the-surface"];
  const rescue: OutageAction[] = ["add-aerated-water"];
  const warmth: OutageAction[] =
    situation.drift === "cooling"
      ? ["wrap-the-tank"]
      : situation.drift === "warming"
        ? ["shade-and-fan"]
        : [];
  return [
    ...air,
    ...(situation.isOxygenAtAlarm ? rescue : []),
    "open-the-lid",
    "stop-feeding",
    "switch-off-at-the-wall",
    "take-out-spare-demand",
    "check-oxygen-or-breathing",
    ...(situation.isOxygenAtAlarm ? [] : rescue),
    ...warmth,
    ...(situation.hasGenerator ? (["generator-outside"] as const) : []),
    "flush-filters-first",
    "restart-in-steps",
  ];
}
