import { commands } from "../commands/index.ts";
import { createApp } from "../src/app.ts";
import { parseLine } from "../src/console/parse-line.ts";
import { allCommands } from "../src/kit/command.ts";
import type { ClubId, MemberId } from "../src/records/ids.ts";
import { openStore } from "../src/sqlite/index.ts";
import { atMost, given, percentile, type Row } from "./report.ts";

const RUNS = 15;
const GOAL_MS = 5;
/** Two hundred runs of a cycling filter, with their spread. */
const SIMULATION = { path: "cycle curve", ms: 150 };
const NOW = Date.UTC(2026, 2, 4, 12);

/** Every command's own example, whole: text read, answer computed, reply kept. The slowest are named. */
export async function coreRows(): Promise<readonly Row[]> {
  const store = openStore(":memory:", new Date(NOW).toISOString());
  let ids = 0;
  const app = createApp({
    commands,
    records: store.records,
    exchanges: store.exchanges,
    clock: () => NOW,
    newId: () => `bench${ids++}`,
    report: (reference, error) => console.error(reference, error),
  });
  const asked = {
    member: "bench:keeper" as MemberId,
    club: "bench:club" as ClubId,
    isSteward: false,
    answers: {},
  };
  const say = (line: string) => app.answer({ ...asked, ...parseLine(line, commands) });
  for (const line of SET_UP) await say(line);
  const slowest: { readonly path: string; readonly ms: number }[] = [];
  for (const { path, command } of allCommands(commands)) {
    const [example] = command.examples;
    if (example === undefined || CHANGES_RECORDS.test(path)) continue;
    await say(example);
    const times: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const start = performance.now();
      await say(example);
      times.push(performance.now() - start);
    }
    slowest.push({
      path,
      ms: percentile(
        times.sort((a, b) => a - b),
        0.5,
      ),
    });
  }
  store.close();
  slowest.sort((a, b) => b.ms - a.ms);
  const within = slowest.filter(({ ms }) => ms <= GOAL_MS).length;
  return [
    given("commands whose example is answered within 5 ms, median", `${within} of ${slowest.length}`),
    ...slowest
      .slice(0, 8)
      .map(({ path, ms }) =>
        atMost(`/${path}, median`, ms, path === SIMULATION.path ? SIMULATION.ms : GOAL_MS, "ms"),
      ),
  ];
}

/** What these do is not asked twice. */
const CHANGES_RECORDS = /^(tank (add|remove|name)|erase|import|correct|log|undo)/;

const SET_UP = [
  "/settings gallon:US gravity:25/25 °C",
  "/tank add name:Lagoon kind:marine containers:display 240x100x70 cm inside, level 62 cm, rock 180 kg; 4 x drum 90 L measured",
  "/tank note livestock:1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn 3 times a week media:300 L moving bed salinity:34 ppt temperature:26 °C flow:6000 L/h",
  "/log no3 20, alk 7.4 dKH, ph 8.1, temp 25.5 °C",
];
