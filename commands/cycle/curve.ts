import { cycling } from "../../src/core/nitrogen/cycling.ts";
import type { CyclingReading } from "../../src/core/nitrogen/cycling-input.ts";
import { cyclingReadingOf, readCyclingReadings } from "../../src/core/nitrogen/read-cycling-readings.ts";
import { readSeed } from "../../src/core/nitrogen/read-seed.ts";
import { repeatableRandom } from "../../src/core/nitrogen/repeatable-random.ts";
import { readAlkalinity } from "../../src/core/quantity/alkalinity.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { cyclingChart } from "../../src/kit/cycling-chart.ts";
import {
  answerReply,
  askFor,
  type Context,
  choice,
  counted,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import { type KnownFigures, knownFigures } from "../../src/kit/known-figures.ts";
import { whenOption } from "../../src/kit/when-option.ts";
import { ammonia } from "../ammonia/shared.ts";
import { cell, readyLine } from "./curve-words.ts";

const TITLE = "A new filter";
/** The same question has the same answer: the courses looked at are always the same ones. */
const SEED = 20260301;
const MOST_LOGGED = 200;
/** Days the table shows at least; beyond, it ends with the day the filter is ready. */
const SHORTEST_TABLE = 28;

export default defineCommand({
  name: "curve",
  summary: "How a new filter will go: ammonia, nitrite, the day it is ready, with its doubt",
  isSlow: true,
  options: {
    dose: ammonia("Ammonia in the water after each dose, as your kit prints it"),
    seed: reading(
      "Where its bacteria come from: nothing, culture, live rock, or media with litres",
      "nothing",
      (text, { habits }) => readSeed(text, habits),
    ),
    again: optional(
      choice("Whether it is dosed again whenever it has nearly gone; yes if left out", ["yes", "no"]),
    ),
    readings: optional(
      reading(
        "What your kit showed since, by day from the first dose",
        "day 6 ammonia 2 mg/L as TAN; day 12 nitrite 1 mg/L",
        (text, { habits }) => readCyclingReadings(text, habits),
      ),
    ),
    started: optional(whenOption("When the first dose went in: your logged readings since are taken")),
    alkalinity: optional(
      reading("Of the water, when you know it", "8 dKH", (text, { habits }) => readAlkalinity(text, habits)),
    ),
    days: optional(quantity.count("How many days to look ahead; 120 if left out", "120")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    tank: optional(tankOption()),
  },
  examples: [
    "/cycle curve dose:2 mg/L as TAN seed:nothing volume:2700 L salinity:34 ppt temperature:25-27 °C",
    "/cycle curve dose:2 mg/L as TAN seed:30 L moving bed from sea water readings:day 3 ammonia 1 mg/L as TAN; day 4 nitrite 2 mg/L tank:Lagoon",
  ],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const volumeL = known.volume(input.volume);
    if (volumeL === undefined) return known.ask("volume", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const temperatureC = known.temperature(input.temperature);
    if (temperatureC === undefined) return known.ask("temperature", TITLE);
    if (input.started !== undefined && input.tank === undefined && known.tank === undefined)
      return askFor(
        context,
        { name: "tank", example: "Lagoon" },
        { title: TITLE, text: "Which tank's logged readings?" },
      );
    const readings = [...(input.readings ?? []), ...loggedSince(input.started, known, context)];
    const answer = cycling(
      {
        volumeL,
        salinity,
        temperatureC,
        seed: input.seed,
        ammonia: { kind: "dosed", to: input.dose.asNitrogen, isRepeated: input.again !== "no" },
        readings,
        ...(input.alkalinity === undefined ? {} : { alkalinity: input.alkalinity.estimate }),
        ...(input.days === undefined ? {} : { days: input.days.best }),
      },
      repeatableRandom(SEED),
    );
    return answerReply(answer, context, {
      title: known.titled(
        `${TITLE}, fed to ${showEstimate(input.dose.reading, "mg/L")} of ammonia as ${input.dose.form}`,
      ),
      headline: readyLine,
      body: (it) => [
        `Proven means: ${showNumber(it.proofMgPerL, 3)} mg/L ammonia nitrogen gone within a day, with its nitrite, twice running.`,
        `Nitrite should peak near ${showEstimate(it.nitritePeak, "mg/L as nitrogen", { significant: 2 })}, around day ${showEstimate(it.nitritePeakDay, "", { significant: 2 })}.`,
        readings.length === 0
          ? "The range is wide because every start differs: add readings: and it narrows."
          : `${counted(readings.length, "reading")} weighed in.`,
        "Never by the calendar: /cycle ready says whether it has proven itself.",
      ],
      table: (it) => ({
        columns: ["day", "ammonia N, mg/L", "nitrite N, mg/L", "nitrate N, mg/L"],
        rows: it.curve
          .filter(({ day }) => day % 7 === 0 && (day <= it.readyDay.high || day <= SHORTEST_TABLE))
          .slice(0, 18)
          .map((each) => [String(each.day), ...[each.ammonia, each.nitrite, each.nitrate].map(cell)]),
      }),
      chart: (it) =>
        cyclingChart({
          curve: it.curve,
          readings,
          lastDay: Math.min(it.curve.at(-1)?.day ?? 0, Math.max(SHORTEST_TABLE, Math.ceil(it.readyDay.high))),
          started: input.started,
          now: context.now,
          zone: context.member.zone,
          finding: readyLine(it),
        }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

/** The tank's own readings from the first dose on, and a word of them in `taken`. */
function loggedSince(
  started: string | undefined,
  { tank, assume }: KnownFigures,
  { records }: Context,
): readonly CyclingReading[] {
  if (started === undefined || tank === undefined) return [];
  const found = (["ammonia", "nitrite"] as const).flatMap((parameter) =>
    records.log
      .readings(tank.owner, tank.id, parameter, MOST_LOGGED)
      .flatMap((stored) => cyclingReadingOf({ parameter, estimate: stored, at: stored.at }, started) ?? []),
  );
  assume({
    name: "readings",
    from: `${tank.name}, logged since ${started.slice(0, 10)}`,
    readAs: String(found.length),
  });
  return found;
}
