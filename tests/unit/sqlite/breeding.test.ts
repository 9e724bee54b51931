import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Fact } from "../../../src/core/breeding/ledger/facts.ts";
import type { ClubId, MemberId } from "../../../src/records/ids.ts";
import { openStore, type Store } from "../../../src/sqlite/index.ts";
import { DAY, openBreedingClub } from "../../support/breeding-club.ts";
import { type Club, HOME_CLUB, textOf } from "../../support/club.ts";

const AT = "2026-03-04T12:00:00.000Z";
const CLUB = "test:club" as ClubId;
const [INES, BRUNO] = ["test:ines", "test:bruno"] as MemberId[] as [MemberId, MemberId];

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-breeding-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function write(store: Store, by: MemberId, facts: readonly Fact[]): void {
  store.records.breeding.write(CLUB, by, AT, ({ numberOf }) => {
    numberOf(by, by.slice(5));
    return { facts: facts.map((fact) => ({ fact, at: AT, day: "2026-03-04" })), result: undefined };
  });
}

const START: readonly Fact[] = [
  { kind: "group started", name: "Lagoon", zone: "UTC", currency: "€" },
  { kind: "role set", person: 1, role: "keeper" },
  { kind: "role set", person: 2, role: "keeper" },
  { kind: "tank noted", tank: "tank 3", litres: 40, water: "tank 3", zone: "hatchery" },
  { kind: "spawned", batch: "B1", spawn: 1, species: "clownfish", tank: "tank 3" },
  {
    kind: "stage reached",
    batch: "B1",
    stage: "hatched",
    count: { best: 1000, low: 1000, high: 1000, how: "exact" },
  },
];

it("corrections reach behind any snapshot, near or far, and another process sees them", () => {
  const file = join(folder, "club.sqlite");
  const [one, two] = [openStore(file, AT), openStore(file, AT)];
  write(one, INES, START);
  for (let n = 0; n < 690; n += 1) write(one, INES, [{ kind: "died", batch: "B1", number: 1 }]);
  expect(two.records.breeding.state(CLUB)?.batches["=b1"]?.alive?.best).toBe(310);
  // Entries 7 to 696 are single deaths: one long ago, one of late, one in between.
  for (const [index, event] of [10, 695, 420].entries()) {
    write(one, INES, [{ kind: "corrected", event }]);
    expect(one.records.breeding.state(CLUB)?.batches["=b1"]?.alive?.best).toBe(311 + index);
    expect(two.records.breeding.state(CLUB)?.batches["=b1"]?.alive?.best).toBe(311 + index);
  }
  write(two, BRUNO, [{ kind: "died", batch: "B1", number: 1 }]);
  one.close();
  two.close();
  const fresh = openStore(file, AT);
  expect(fresh.records.breeding.state(CLUB)?.batches["=b1"]?.alive?.best).toBe(312);
  fresh.close();
});

describe("many hands on one ledger", () => {
  it("interleaved writers from two processes lose nothing, and both see the same", () => {
    const file = join(folder, "club.sqlite");
    const [one, two] = [openStore(file, AT), openStore(file, AT)];
    write(one, INES, START);
    for (let n = 0; n < 150; n += 1) {
      // Each writes on top of what the other has just written, with its own state held from before.
      write(n % 2 === 0 ? one : two, n % 2 === 0 ? INES : BRUNO, [{ kind: "died", batch: "B1", number: 1 }]);
      if (n % 7 === 0) write(two, BRUNO, [{ kind: "lost", batch: "B1", number: 1 }]);
    }
    // 150 deaths and 22 losses (0, 7, … 147) of 1000.
    const states = [one, two].map((store) => store.records.breeding.state(CLUB));
    expect(states[0]?.batches["=b1"]?.alive?.best).toBe(1000 - 150 - 22);
    expect(states[1]).toEqual(states[0]);
    const numbers = one.records.breeding.everything(CLUB).map(({ number }) => number);
    expect(numbers).toEqual(Array.from({ length: START.length + 172 }, (_, index) => index + 1));
    one.close();
    two.close();
  });

  it("what one decides rests on what the other wrote a moment before", () => {
    const file = join(folder, "club.sqlite");
    const [one, two] = [openStore(file, AT), openStore(file, AT)];
    write(one, INES, START);
    one.records.breeding.state(CLUB);
    two.records.breeding.state(CLUB);
    write(one, INES, [{ kind: "died", batch: "B1", number: 10 }]);
    const seen = two.records.breeding.write(CLUB, BRUNO, AT, ({ state }) => ({
      facts: [],
      result: state.batches["=b1"]?.alive?.best,
    }));
    expect(seen).toBe(990);
    one.close();
    two.close();
  });

  it("a decision that throws leaves nothing behind, not even in what is held", () => {
    const store = openStore(":memory:", AT);
    write(store, INES, START);
    expect(() =>
      store.records.breeding.write(CLUB, INES, AT, () => {
        throw new Error("no");
      }),
    ).toThrow("no");
    expect(store.records.breeding.state(CLUB)?.lastEvent).toBe(START.length);
    store.close();
  });

  it("a state from a snapshot is the state of the whole ledger, corrections and all", () => {
    const file = join(folder, "club.sqlite");
    const one = openStore(file, AT);
    write(one, INES, START);
    for (let n = 0; n < 240; n += 1) write(one, INES, [{ kind: "died", batch: "B1", number: 1 }]);
    write(one, INES, [{ kind: "corrected", event: 100 }]);
    write(one, INES, [{ kind: "died", batch: "B1", number: 2 }]);
    const held = one.records.breeding.state(CLUB);
    one.close();
    const two = openStore(file, AT);
    expect(two.records.breeding.state(CLUB)).toEqual(held);
    expect(held?.batches["=b1"]?.alive?.best).toBe(1000 - 239 - 2);
    two.close();
  });
});

it("the ledger cannot be changed or shortened, by any statement", () => {
  const file = join(folder, "club.sqlite");
  const store = openStore(file, AT);
  write(store, INES, START);
  store.close();
  const db = new SqliteDatabase(file);
  expect(() => db.prepare("UPDATE breeding_event SET day = '2026-01-01'").run()).toThrow("never changed");
  expect(() => db.prepare("DELETE FROM breeding_event").run()).toThrow("never removed");
  db.close();
});

describe("/erase", () => {
  async function withHistory(): Promise<Club> {
    const club = await openBreedingClub(join(folder, "club.sqlite"));
    await club.ask("/spawn eggs tank:tank 3", "bruno");
    club.now += 8 * DAY;
    await club.ask("/spawn hatched batch:B1 count:100", "bruno");
    await club.ask("/batch deaths number:2 batch:B1 note:Bruno's private words", "bruno");
    await club.ask("/cost add what:salt amount:30", "bruno");
    await club.ask("/juveniles want species:clownfish number:4 ready:yes", "bruno");
    await club.ask("/rota plan days:6");
    return club;
  }

  it("takes name, notes, duties and wishes; every total of the group stays", async () => {
    const club = await withHistory();
    await club.say("/erase", "bruno");
    expect(textOf(await club.pick("Erase everything", "bruno"))).toContain("its totals hold");
    expect(textOf(await club.ask("/batch list"))).toContain("98, counted");
    const ledger = textOf(await club.ask("/group ledger last:60"));
    expect(ledger).toContain("B1: 2 dead");
    expect(ledger).toContain("a former member (no. 2)");
    expect(ledger).not.toContain("private words");
    expect(textOf(await club.ask("/rota week")).match(/open to all/g)).toHaveLength(2);
    expect(textOf(await club.ask("/juveniles share batch:B1"))).toContain("Nobody has asked");
    // 30.00 paid by one of three: the others owe 10.00 each, and the sum is nothing.
    const balances = (await club.ask("/cost balance")).table?.rows.map(([, cents]) => Number(cents)) ?? [];
    expect(balances.reduce((sum, each) => sum + each, 0)).toBe(0);
    expect(Math.max(...balances)).toBe(20);
  });

  it("leaves neither the member's id nor their name nor their words in the tables of the group", async () => {
    const club = await withHistory();
    await club.say("/erase", "bruno");
    await club.pick("Erase everything", "bruno");
    club.store.close();
    const db = new SqliteDatabase(join(folder, "club.sqlite"), { readonly: true });
    for (const table of ["breeding_person", "breeding_event", "breeding_note", "breeding_snapshot"])
      expect(JSON.stringify(db.prepare(`SELECT * FROM ${table}`).all()).toLowerCase()).not.toContain("bruno");
    db.close();
  });

  it("never leaves a group without a keeper while anybody is in it", async () => {
    const club = await openBreedingClub();
    await club.say("/erase");
    await club.pick("Erase everything");
    expect(textOf(await club.ask("/group show", "bruno"))).toContain("Bruno: keeper");
    expect(club.store.records.breeding.state(HOME_CLUB)?.people["1"]?.isHere).toBe(false);
  });
});
