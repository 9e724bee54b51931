import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { commands } from "../commands/index.ts";
import { createApp } from "../src/app.ts";
import type { Fact } from "../src/core/breeding/ledger/facts.ts";
import type { ClubId, MemberId } from "../src/records/ids.ts";
import { openStore } from "../src/sqlite/index.ts";
import { atMost, given, percentile, type Row } from "./report.ts";

const GROUPS = 10;
const YEARS = 5;
const EVENTS_A_WEEK = 200;
const WEEKS = YEARS * 52;
const START = Date.UTC(2021, 0, 4, 12);
const DAY_MS = 86_400_000;
const RUNS = 60;
const BATCH_WEEKS = 10;

const CARDS: readonly (readonly [what: string, path: string, options: Readonly<Record<string, string>>])[] = [
  ["tonight's card", "rota tonight", {}],
  ["the week's rota", "rota week", {}],
  ["one batch with its curve", "batch show", { batch: `B${WEEKS - 2}` }],
  ["one culture", "culture show", { culture: "rotifers A" }],
  ["may I pair these two", "pedigree check", { first: "A40", second: "A41" }],
  ["one pedigree", "pedigree show", { animal: "A59" }],
  ["the month's page", "group month", {}],
  ["who owes whom", "cost balance", {}],
  ["the last entries", "group ledger", {}],
];

/** Ten groups that have bred for five years, two hundred entries a week: every card on top of that. */
export async function breedingRows(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), "standpipe-bench-"));
  const file = join(folder, "bench.sqlite");
  const now = START + WEEKS * 7 * DAY_MS;
  const owner = "bench:keeper" as MemberId;
  try {
    let store = openStore(file, new Date(START).toISOString());
    for (let group = 0; group < GROUPS; group += 1) fill(store, clubOf(group), owner);
    const entries = store.records.breeding.state(clubOf(0))?.lastEvent ?? 0;
    store.close();
    // A process that has just begun holds nothing: the first card of each group reads its snapshot.
    store = openStore(file, new Date(now).toISOString());
    let ids = 0;
    const app = createApp({
      commands,
      records: store.records,
      exchanges: store.exchanges,
      clock: () => now,
      newId: () => `bench${ids++}`,
      report: (_reference, error) => {
        throw error;
      },
    });
    const ask = async (group: number, path: string, options: Readonly<Record<string, string>>) => {
      const begun = performance.now();
      const { outcome } = await app.answer({
        member: owner,
        club: clubOf(group),
        isSteward: false,
        path,
        options,
        answers: {},
      });
      const took = performance.now() - begun;
      if (outcome.kind !== "reply" || !outcome.ok) throw new Error(`${path}: ${JSON.stringify(outcome)}`);
      return took;
    };
    const begun = await ask(0, "help", {});
    const cold: number[] = [];
    for (let group = 0; group < GROUPS; group += 1) cold.push(await ask(group, "rota tonight", {}));
    const rows: Row[] = [given("entries in each of ten ledgers", entries.toLocaleString("en"))];
    rows.push(given("first request of a process, of whatever kind", `${begun.toFixed(1)} ms`));
    rows.push(atMost("first card of a group after a start, worst of ten", Math.max(...cold), 20, "ms"));
    for (const [what, path, options] of CARDS) {
      const times: number[] = [];
      for (let run = 0; run < RUNS; run += 1) times.push(await ask(run % GROUPS, path, options));
      rows.push(
        atMost(
          `${what}, p95`,
          percentile(
            times.sort((a, b) => a - b),
            0.95,
          ),
          20,
          "ms",
        ),
      );
    }
    const logging: number[] = [];
    for (let run = 0; run < RUNS; run += 1)
      logging.push(await ask(run % GROUPS, "batch deaths", { number: "1", batch: `B${WEEKS - 2}` }));
    rows.push(
      atMost(
        "log a death, p95",
        percentile(
          logging.sort((a, b) => a - b),
          0.95,
        ),
        20,
        "ms",
      ),
    );
    const corrected: number[] = [];
    for (let group = 0; group < GROUPS; group += 1)
      corrected.push(await ask(group, "group correct", { entry: String(entries + 1) }));
    rows.push(atMost("take back a late entry, worst of ten", Math.max(...corrected), 100, "ms"));
    store.close();
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function clubOf(group: number): ClubId {
  return `bench:club${group}` as ClubId;
}

function fill(store: ReturnType<typeof openStore>, club: ClubId, owner: MemberId): void {
  const { breeding } = store.records;
  let waiting: { fact: Fact; at: string; day: string }[] = [];
  const note = (at: number, facts: readonly Fact[]): void => {
    const iso = new Date(at).toISOString();
    waiting.push(...facts.map((fact) => ({ fact, at: iso, day: iso.slice(0, 10) })));
  };
  const write = (): void => {
    const facts = waiting;
    waiting = [];
    breeding.write(club, owner, facts.at(-1)?.at ?? "", ({ numberOf }) => {
      numberOf(owner, "Keeper");
      for (let person = 2; person <= 5; person += 1)
        numberOf(`bench:helper${person}` as MemberId, `Helper ${person}`);
      return { facts, result: undefined };
    });
  };
  const people = [1, 2, 3, 4, 5];
  note(START, [
    { kind: "group started", name: "Bench", zone: "UTC", currency: "€" },
    ...people.map(
      (person) => ({ kind: "role set", person, role: person === 1 ? "keeper" : "helper" }) as const,
    ),
    ...Array.from({ length: 12 }, (_, tank) => ({
      kind: "tank noted" as const,
      tank: `tank ${tank}`,
      litres: 100,
      water: `water ${tank % 4}`,
      zone: tank < 4 ? ("hatchery" as const) : ("grow-out" as const),
    })),
    ...Array.from({ length: 60 }, (_, animal) => ({
      kind: "animal noted" as const,
      animal: `A${animal}`,
      species: "clownfish",
      sex: animal % 2 === 0 ? ("male" as const) : ("female" as const),
      sires: animal < 10 ? [] : [`A${2 * Math.floor((animal - 10) / 4)}`],
      ...(animal < 10 ? {} : { dam: `A${2 * Math.floor((animal - 10) / 4) + 1}` }),
      origin: "bred" as const,
      owner: 1,
    })),
    ...["rotifers A", "rotifers B"].map(
      (culture) =>
        ({
          kind: "culture started",
          culture,
          organism: "rotifers",
          litres: 20,
          place: culture,
          keeper: 1,
        }) as const,
    ),
  ]);
  let duty = 0;
  for (let week = 0; week < WEEKS; week += 1) {
    const at = START + week * 7 * DAY_MS;
    const id = `B${week + 1}`;
    const count = (best: number) => ({ best, low: best, high: best, how: "exact" as const });
    const facts: Fact[] = [
      { kind: "spawned", batch: id, spawn: week + 1, species: "clownfish", tank: `tank ${week % 4}` },
      { kind: "stage reached", batch: id, stage: "hatched", count: count(5000) },
      {
        kind: "spent",
        what: "salt",
        cents: 1000,
        payer: 1 + (week % 5),
        shares: people.map((person) => ({ person, cents: 200 })),
      },
    ];
    for (let day = 0; day < 7; day += 1) {
      duty += 1;
      const date = new Date(at + day * DAY_MS).toISOString().slice(0, 10);
      facts.push({ kind: "duty planned", duty, day: date, slot: "evening", person: 1 + (duty % 5) });
      facts.push({ kind: "duty done", duty, person: 1 + (duty % 5) });
    }
    if (week >= BATCH_WEEKS)
      facts.push({ kind: "stage reached", batch: `B${week - BATCH_WEEKS + 1}`, stage: "lost" });
    note(at, facts);
    const daily = Math.floor((EVENTS_A_WEEK - facts.length) / 7);
    for (let day = 0; day < 7; day += 1)
      note(
        at + day * DAY_MS,
        Array.from({ length: daily }, (_, each): Fact => {
          const batch = `B${Math.max(1, week + 1 - (each % BATCH_WEEKS))}`;
          if (each === 0)
            return {
              kind: "culture counted",
              culture: "rotifers A",
              perML: { best: 200, low: 180, high: 220 },
            };
          if (each === 1)
            return {
              kind: "culture counted",
              culture: "rotifers B",
              perML: { best: 150, low: 130, high: 170 },
            };
          if (each === 2) return { kind: "culture harvested", culture: "rotifers A", litres: 4 };
          return each % 5 === 0 ? { kind: "lost", batch, number: 1 } : { kind: "died", batch, number: 1 };
        }),
      );
    if (week % 8 === 7) write();
  }
  write();
}
