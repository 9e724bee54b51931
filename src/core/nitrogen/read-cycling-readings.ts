import { quote } from "../quantity/clean.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { CyclingReading } from "./cycling-input.ts";
import { asNitrogen, type MgNPerL } from "./nitrogen-units.ts";
import { readList } from "./read-list.ts";
import { readAmmonia, readNitrite } from "./read-nitrogen.ts";

const EXAMPLES = "“day 6 ammonia 2 mg/L as TAN; day 12 ammonia 0.5 mg/L as TAN; day 12 nitrite 1 mg/L”";
const MS_PER_DAY = 86_400_000;

/** What a kit showed on which day; a part without a day belongs to the day before it in the list. */
export function readCyclingReadings(typed: string, habits: Habits): Read<readonly CyclingReading[]> {
  let day: number | undefined;
  return readList(typed, EXAMPLES, (part): Read<CyclingReading> => {
    const pieces =
      /^(?:(?:on )?(?:day|d) ?(\d{1,3}(?:\.\d)?) ?[:,=]? ?)?(total ammonia|ammonia|nh3|nh4|tan|nitrite|no2) ?[:=]? ?(.+)$/i.exec(
        part,
      );
    const [, dayText, name = "", figure = ""] = pieces ?? [];
    if (dayText !== undefined) day = Number(dayText);
    if (pieces === null || day === undefined)
      return {
        kind: "unreadable",
        message: `${quote(part)} needs a day, ammonia or nitrite, and a figure. Try ${EXAMPLES}.`,
      };
    const at = day;
    const isNitrite = /nitrite|no2/i.test(name);
    // "nh4 2" says by its name what it counts.
    const named =
      /^(?:nh3|nh4|tan)$/i.test(name) && !/\bas\b/i.test(figure)
        ? `${figure} as ${name.toUpperCase()}`
        : figure;
    const read = isNitrite ? readNitrite(figure, habits) : ammoniaOf(readAmmonia(named, habits));
    const kind = isNitrite ? ("nitrite" as const) : ("ammonia" as const);
    if (read.kind === "ask")
      return {
        ...read,
        choices: read.choices.map((each) => ({ ...each, text: `day ${at} ${kind} ${each.text}` })),
      };
    if (read.kind === "unreadable") return read;
    return {
      kind: "read",
      value: { day: at, kind, value: read.value },
      readAs: `day ${at}: ${kind} ${read.readAs}`,
    };
  });
}

function ammoniaOf(read: ReturnType<typeof readAmmonia>): Read<Estimate<MgNPerL>> {
  return read.kind === "read" ? { ...read, value: read.value.asNitrogen } : read;
}

/** A stored reading as the cycle counts it: days from the first ammonia, and nitrogen. Undefined before day 0. */
export function cyclingReadingOf(
  stored: { readonly parameter: "ammonia" | "nitrite"; readonly estimate: Estimate; readonly at: string },
  startedAt: string,
): CyclingReading | undefined {
  const day = (Date.parse(stored.at) - Date.parse(startedAt)) / MS_PER_DAY;
  if (!(day >= 0)) return undefined;
  const form = stored.parameter === "nitrite" ? "NO2" : "TAN";
  return {
    day,
    kind: stored.parameter,
    value: mapEstimate(stored.estimate, (value) => asNitrogen(value, form)),
  };
}
