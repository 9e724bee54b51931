import type { Rule } from "./recurrence.ts";
import type { RegimenId, RegimenSettings } from "./regimens.ts";
import type { Task } from "./task.ts";

/** One repeated task of a regimen. */
export interface RegimenPlan {
  readonly task: Task;
  readonly rule: Rule;
  readonly words: string;
}

/** The tasks of a regimen that begins on a day, at a time of day. */
export function regimenPlans(
  id: RegimenId,
  settings: RegimenSettings,
  firstDay: number,
  minute: number,
): readonly RegimenPlan[] {
  const every = (days: number, from = firstDay): Rule => ({ kind: "every", days, from, minute });
  switch (id) {
    case "cycling":
      return [
        {
          task: { kind: "test", parameters: ["ammonia", "nitrite"] },
          rule: every(1),
          words: "test ammonia and nitrite",
        },
        {
          // The day's test comes first: the dose hangs on it.
          task: { kind: "ammonium dose", mgPerL: settings.ammonia ?? 0 },
          rule: { kind: "every", days: 1, from: firstDay, minute: Math.min(1439, minute + 60) },
          words: "dose ammonium salt",
        },
      ];
    case "ethanol ramp":
      return [
        {
          task: {
            kind: "ethanol step",
            percent: settings.percent ?? 0,
            dosesPerDay: settings.dosesPerDay ?? 1,
          },
          rule: every(1),
          words: "dose alcohol",
        },
        {
          task: { kind: "test", parameters: ["nitrate", "phosphate"] },
          rule: every(3),
          words: "test nitrate and phosphate",
        },
      ];
    case "water changes": {
      const share = settings.share ?? 0;
      const words = `water change ${Number((100 * share).toFixed(1))} %`;
      return [
        {
          task: {
            kind: "event",
            event: "water change",
            amount: { best: share, unit: "fraction" },
            text: "",
            words,
          },
          rule: every(settings.days ?? 1),
          words,
        },
      ];
    }
    case "quarantine":
      return [
        {
          task: { kind: "words", words: "look at the animals: breathing, skin, fins, appetite" },
          rule: every(1),
          words: "look at the animals in quarantine",
        },
      ];
    case "salinity watch":
      return [
        {
          task: { kind: "words", words: "check the top-off: reservoir, float switch, level" },
          rule: every(3),
          words: "check the top-off",
        },
        { task: { kind: "test", parameters: ["salinity"] }, rule: every(7), words: "test salinity" },
      ];
  }
}
