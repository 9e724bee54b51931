import { unitText } from "../../src/core/log/parameters.ts";
import type { ChartSpec } from "../../src/kit/chart.ts";
import { type Context, listed } from "../../src/kit/index.ts";
import { endsOf } from "../../src/kit/trend-chart.ts";
import { type DatedEvent, momentOf } from "../../src/kit/trend-record.ts";
import type { Finding } from "./findings.ts";

/** As many small charts as one picture holds. */
const MOST_PANELS = 8;

/** As many small charts as there is room for, over the same days. */
export function digestChart(
  findings: readonly Finding[],
  out: readonly Finding[],
  dated: readonly DatedEvent[],
  from: number,
  days: number,
  { now, member }: Context,
): ChartSpec {
  // What left its range comes first when there is not room for all.
  const shown =
    findings.length <= MOST_PANELS ? findings : [...new Set([...out, ...findings])].slice(0, MOST_PANELS);
  const names = listed(shown.map(({ record }) => record.parameter.name));
  return {
    altText: `The last ${days} days of ${names}. ${out.length === 0 ? "Nothing is out of its range." : `Out of range: ${listed(out.map(({ record, place }) => `${record.parameter.name} (${place})`))}.`}`,
    from,
    until: now,
    now,
    zone: member.zone,
    events: dated
      .filter(({ at, event }) => event.kind === "water change" && momentOf(at) >= from)
      .map(({ at }) => ({ at: momentOf(at), label: "change" })),
    panels: shown.map(({ record, marks, wanted }) => {
      const unit = unitText(record.parameter);
      return {
        axisTitle: unit === "" ? record.parameter.name : `${record.parameter.name}, ${unit}`,
        series: [{ name: "readings", marks }],
        forecasts: [],
        ...(wanted === undefined ? {} : { target: endsOf(wanted) }),
      };
    }),
  };
}
