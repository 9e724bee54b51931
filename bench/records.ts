import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { MemberId } from "../src/records/ids.ts";
import { openStore } from "../src/sqlite/index.ts";
import { atMost, given, percentile, type Row, timed } from "./report.ts";

const READINGS = 1_000_000;
const TANKS = 20;
const BATCH = 5_000;
const PARAMETERS = ["nitrate", "salinity", "temperature", "alkalinity", "ph"];
const START = Date.UTC(2020, 0, 1);

/** A million readings in the file: listing and logging on top of them. */
export function recordsRows(): readonly Row[] {
  const folder = mkdtempSync(join(tmpdir(), "standpipe-bench-"));
  const store = openStore(join(folder, "bench.sqlite"), new Date(START).toISOString());
  const { log, tanks, members } = store.records;
  const owner = "bench:keeper" as MemberId;
  try {
    members.member(owner, undefined);
    const ids = Array.from({ length: TANKS }, (_, index) =>
      tanks.create({
        owner,
        name: `tank ${index}`,
        kind: "marine",
        containers: [],
        containersTyped: "",
        now: new Date(START).toISOString(),
      }),
    ).map(({ id }) => id);
    const reading = (n: number) => ({
      parameter: PARAMETERS[n % PARAMETERS.length] ?? "nitrate",
      best: n % 100,
      low: n % 100,
      high: n % 100,
      typed: "no3 20",
      readAs: "nitrate 20 mg/L",
      at: new Date(START + n * 60_000).toISOString(),
    });
    const now = new Date(START + READINGS * 60_000).toISOString();
    for (let n = 0; n < READINGS; n += BATCH)
      log.add({
        owner,
        tankId: ids[(n / BATCH) % TANKS] ?? 0,
        line: "bench",
        readings: Array.from({ length: BATCH }, (_, k) => reading(n + k)),
        events: [],
        now,
      });
    const tank = (run: number): number => ids[run % TANKS] ?? 0;
    const listing = timed(400, (run) => log.recent(owner, tank(run), 15));
    const ofOne = timed(400, (run) => log.readings(owner, tank(run), "nitrate", 15));
    const logging = timed(400, (run) =>
      log.add({ owner, tankId: tank(run), line: "no3 20", readings: [reading(run)], events: [], now }),
    );
    return [
      given("readings in the file", READINGS.toLocaleString("en")),
      atMost("list the latest 15, p99", percentile(listing, 0.99), 5, "ms"),
      atMost("list 15 of one parameter, p99", percentile(ofOne, 0.99), 5, "ms"),
      atMost("log one line, p99", percentile(logging, 0.99), 5, "ms"),
    ];
  } finally {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
