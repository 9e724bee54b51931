import fc from "fast-check";
import { expect, it } from "vitest";
import { chartSvg } from "../../src/charts/svg.ts";
import type { Reply } from "../../src/kit/reply.ts";
import type { NewEvent, NewReading } from "../../src/records/log.ts";
import { memberId, openClub, START } from "../support/club.ts";

const DAY_MS = 86_400_000;
const TANK = "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm";
const PARAMETERS = ["nitrate", "phosphate", "ph", "alkalinity", "temperature"] as const;

const moment = fc
  .integer({ min: 0, max: 120 * 24 })
  .map((hours) => new Date(START - hours * (DAY_MS / 24)).toISOString());

const reading: fc.Arbitrary<NewReading> = fc
  .record({
    parameter: fc.constantFrom(...PARAMETERS),
    value: fc.oneof(
      fc.constantFrom(0, 5, 10, 20, 40, 80, 160),
      fc.integer({ min: 0, max: 50_000 }).map((hundredths) => hundredths / 100),
    ),
    width: fc.constantFrom(0, 0, 0, 1, 20),
    censored: fc.constantFrom(undefined, undefined, undefined, "below" as const, "above" as const),
    instrument: fc.constantFrom(undefined, "card", "probe", "gone"),
    at: moment,
  })
  .map(({ parameter, value, width, censored, instrument, at }) => ({
    parameter,
    best: value,
    low: censored === "below" ? 0 : value,
    high: censored === "above" ? 999 : value + width,
    ...(censored === undefined ? {} : { censored }),
    typed: String(value),
    readAs: `${parameter} ${value}`,
    ...(instrument === undefined ? {} : { instrument }),
    at,
  }));

const event: fc.Arbitrary<NewEvent> = fc
  .record({
    kind: fc.constantFrom("water change", "harvest", "feeding", "dose", "death", "note"),
    size: fc.constantFrom(
      undefined,
      ["fraction", 0.3],
      ["fraction", 1],
      ["L", 200],
      ["L", 1e6],
      ["kg", 1],
    ) as fc.Arbitrary<readonly [string, number] | undefined>,
    at: moment,
  })
  .map(({ kind, size, at }) => ({
    event: kind,
    ...(size === undefined ? {} : { unit: size[0], amount: size[1] }),
    text: "",
    typed: kind,
    readAs: kind,
    at,
  }));

it("any log gives an answer or a refusal, and a chart that can be drawn", { timeout: 60_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(reading, { maxLength: 40 }),
      fc.array(event, { maxLength: 15 }),
      async (readings, events) => {
        const club = openClub();
        await club.ask(TANK);
        await club.ask("/instrument add name:card for:nitrate steps:0 5 10 20 40 80 160");
        await club.ask("/instrument add name:probe for:ph error:0.1");
        const [tank] = club.store.records.tanks.own(memberId("ines"));
        if (tank === undefined) throw new Error("no tank");
        const now = new Date(START).toISOString();
        club.store.records.log.add({ owner: tank.owner, tankId: tank.id, line: "", readings, events, now });
        const replies: Reply[] = [];
        for (const parameter of PARAMETERS) replies.push(await club.ask(`/trend of:${parameter}`));
        replies.push(await club.ask("/trend of:nitrate since:harvest"), await club.ask("/digest"));
        club.store.close();
        for (const { ok, headline, body, chart } of replies) {
          expect(`${headline} ${body.join(" ")}`).not.toMatch(/NaN|Infinity|undefined days/);
          expect(ok ? headline !== undefined : body.length > 0).toBe(true);
          if (chart === undefined) continue;
          expect(JSON.parse(JSON.stringify(chart))).toEqual(chart);
          expect(chartSvg(chart)).not.toMatch(/NaN|Infinity/);
          expect(chart.altText.length).toBeGreaterThan(10);
        }
      },
    ),
    { numRuns: 25 },
  );
});
