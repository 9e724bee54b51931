import { coverOf, type Judged, METHODS, type Method } from "./evaluate.ts";
import { chargeOf, meanScores, type Scores } from "./score.ts";
import { REGIMES } from "./shapes.ts";
import { speeds } from "./speed.ts";

const percent = (share: number) => `${(100 * share).toFixed(1)}`;

/** The measured quality as Markdown: one row per regime, weak ones included, then the whole. */
export function reportOf(rows: readonly Judged[], seed: number): string {
  const speed = speeds(seed);
  const charge = chargeOf(rows);
  const lines = [
    `Seed ${seed}, ${rows.length} records. Coverage of the records answered, %; aims: 77–85 for 80 %, 93–98 for 95 %.`,
    "",
    "| regime | records | answered | production 80 | 95 | forecast 80 | 95 | opposite | refused though enough | answered though not |",
    "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |",
    ...REGIMES.map((regime) =>
      coverageLine(
        regime,
        rows.filter((r) => r.regime === regime),
      ),
    ),
    coverageLine("**all**", rows),
    "",
    "Mean interval score (small is good; refusals charged), production 80 / 95, forecast 80 / 95.",
    "",
    `| regime | ${METHODS.join(" | ")} |`,
    `| --- | ${METHODS.map(() => "---").join(" | ")} |`,
    ...REGIMES.map((regime) =>
      scoreLine(
        regime,
        rows.filter((r) => r.regime === regime),
        charge,
      ),
    ),
    scoreLine("**all**", rows, charge),
    "",
    ...METHODS.slice(1).map((method) => gainLine(rows, method, charge)),
    "",
    ...METHODS.slice(1).map((method) => {
      const cover = coverOf(rows, method);
      const answered = rows.filter((r) => r.estimates[method]).length;
      return `- ${method}: answered ${answered}; covers ${percent(cover.net80)} / ${percent(cover.net95)} (production), ${percent(cover.forecast80)} / ${percent(cover.forecast95)} (forecast).`;
    }),
    "",
    eventLine(rows),
    "",
    `One answer, warm (median processor time): five years of weekly tests ${speed.fiveYears.toFixed(1)} ms, 100,000 readings ${speed.hundredThousand.toFixed(0)} ms.`,
  ];
  return `${lines.join("\n")}\n`;
}

function coverageLine(name: string, rows: readonly Judged[]): string {
  const answered = rows.filter((r) => r.estimates.engine);
  const enough = rows.filter((r) => r.hasEnough);
  const without = rows.filter((r) => !r.hasEnough);
  const cover = coverOf(rows, "engine");
  const opposite = rows.filter((r) => r.opposite > 0).length;
  const cells = [
    name,
    rows.length,
    answered.length,
    percent(cover.net80),
    percent(cover.net95),
    percent(cover.forecast80),
    percent(cover.forecast95),
    opposite,
    `${enough.filter((r) => !r.estimates.engine).length} of ${enough.length}`,
    `${without.filter((r) => r.estimates.engine).length} of ${without.length}`,
  ];
  return `| ${cells.join(" | ")} |`;
}

function show(scores: Scores): string {
  return [
    scores.net80.toFixed(2),
    scores.net95.toFixed(2),
    scores.forecast80.toFixed(1),
    scores.forecast95.toFixed(1),
  ].join(" / ");
}

function scoreLine(name: string, rows: readonly Judged[], charge: Scores): string {
  return `| ${name} | ${METHODS.map((method) => show(meanScores(rows, method, charge))).join(" | ")} |`;
}

function gainLine(rows: readonly Judged[], method: Method, charge: Scores): string {
  const gains = (set: readonly Judged[]) => {
    const mine = meanScores(set, "engine", charge);
    const other = meanScores(set, method, charge);
    const keys = ["net80", "net95", "forecast80", "forecast95"] as const;
    return keys.map((key) => percent(1 - mine[key] / other[key])).join(" / ");
  };
  const both = rows.filter((r) => r.estimates.engine && r.estimates[method]);
  return `- Better than ${method} by ${gains(rows)} % (refusals charged), ${gains(both)} % on the ${both.length} records both answered.`;
}

function eventLine(rows: readonly Judged[]): string {
  const count = (verdict: Judged["event"]) => rows.filter((r) => r.event === verdict).length;
  return (
    `Dated events weighed: real ones found ${count("found")}, not shown ${count("missed")}, ` +
    `called the wrong way ${count("wrong way")}; events of no effect left alone ${count("rightly silent")}, ` +
    `called an effect ${count("false call")}.`
  );
}
