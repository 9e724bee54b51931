import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { UserError } from "../../../src/kit/user-error.ts";
import type { ClubId } from "../../../src/records/ids.ts";
import { openStore, type Store } from "../../../src/sqlite/index.ts";
import { memberId } from "../../support/club.ts";

const NOW = "2026-03-04T12:00:00.000Z";
const ines = memberId("ines");
const bruno = memberId("bruno");
const club = "test:club" as ClubId;

function withTank(): { store: Store; tankId: number } {
  const store = openStore(":memory:", NOW);
  store.records.members.member(ines, club);
  store.records.members.member(bruno, club);
  return { store, tankId: newTank(store, "Lagoon") };
}

function newTank({ records }: Store, name: string): number {
  return records.tanks.create({
    owner: ines,
    name,
    kind: "marine",
    containers: [],
    containersTyped: "typed",
    now: NOW,
  }).id;
}

const reading = (best: number, at = NOW) => ({
  parameter: "nitrate",
  best,
  low: best,
  high: best,
  typed: `no3 ${best}`,
  readAs: `nitrate ${best}`,
  at,
});

describe("ownership", () => {
  it("keeps every change of a tank to its owner", () => {
    const { store, tankId } = withTank();
    const { tanks, log } = store.records;
    for (const change of [
      () => tanks.replaceContainers(bruno, tankId, [], "mine now"),
      () => tanks.setNotes(bruno, tankId, { food: "none" }),
      () => tanks.rename(bruno, tankId, "Mine"),
      () => tanks.addAlias(bruno, tankId, "Mine"),
      () => tanks.removeAlias(bruno, tankId, "Lagoon"),
      () => tanks.setDefault(bruno, tankId),
      () => tanks.share(bruno, tankId, { reader: { kind: "club", id: club } }),
      () => tanks.unshare(bruno, tankId, { kind: "club", id: club }),
      () => tanks.remove(bruno, tankId),
      () => log.add({ owner: bruno, tankId, line: "x", readings: [reading(1)], events: [], now: NOW }),
      () => log.undoLast(bruno, tankId, NOW),
    ])
      expect(change).toThrow(UserError);
    expect(tanks.own(ines).map(({ name, containersTyped }) => [name, containersTyped])).toEqual([
      ["Lagoon", "typed"],
    ]);
  });

  it("shows another's readings to nobody who does not name the owner", () => {
    const { store, tankId } = withTank();
    const { log } = store.records;
    log.add({ owner: ines, tankId, line: "x", readings: [reading(20)], events: [], now: NOW });
    expect(log.recent(bruno, tankId, 10)).toEqual([]);
    expect(log.find(bruno, 1)).toBeUndefined();
    expect(() => log.correct(bruno, 1, reading(1), NOW)).toThrow(UserError);
  });

  it("gives an exchange to the member who asked, and to others only once it is public", () => {
    const { store } = withTank();
    const request = { member: ines, isSteward: false, path: "help", options: {}, answers: {} };
    const outcome = {
      kind: "reply",
      ok: true,
      title: "t",
      body: [],
      cautions: [],
      audience: "asker",
    } as const;
    store.exchanges.keep({ id: "a", request, outcome, at: NOW }, false);
    expect(store.exchanges.find("a", bruno)).toBeUndefined();
    expect(store.exchanges.findPublic("a")).toBeUndefined();
    expect(store.exchanges.publish("a", bruno)).toBe(false);
    expect(store.exchanges.publish("a", ines)).toBe(true);
    expect(store.exchanges.findPublic("a")).toEqual({ id: "a", request, outcome, at: NOW });
    store.clearBefore("2026-03-04T12:00:00.001Z");
    expect(store.exchanges.find("a", ines)).toBeUndefined();
  });
});

describe("limits", () => {
  it("stop at fifty tanks, ten aliases and a hundred instruments, in a sentence", () => {
    const { store, tankId } = withTank();
    for (let n = 1; n < 50; n++) newTank(store, `tank ${n}`);
    expect(() => newTank(store, "one more")).toThrow("You already keep 50 tanks here");
    for (let n = 0; n < 10; n++) store.records.tanks.addAlias(ines, tankId, `word ${n}`);
    expect(() => store.records.tanks.addAlias(ines, tankId, "one more")).toThrow(
      "Lagoon already has 10 aliases",
    );
    const instrument = (n: number) => ({ name: `kit ${n}`, parameter: "nitrate", steps: [] });
    for (let n = 0; n < 100; n++) store.records.instruments.put(ines, instrument(n));
    expect(() => store.records.instruments.put(ines, instrument(100))).toThrow("100 instruments");
    store.records.instruments.put(ines, instrument(99));
  });
});

describe("numbers", () => {
  it("of tanks and readings are never given twice", () => {
    const { store, tankId } = withTank();
    const { log, tanks } = store.records;
    const add = (to: number) =>
      log.add({ owner: ines, tankId: to, line: "x", readings: [reading(20)], events: [], now: NOW });
    add(tankId);
    tanks.remove(ines, tankId);
    const next = newTank(store, "Lagoon");
    add(next);
    expect(next).toBeGreaterThan(tankId);
    expect(log.find(ines, 1)).toBeUndefined();
    expect(log.find(ines, 2)?.best).toBe(20);
  });

  it("keep open bounds and every figure as it was", () => {
    const { store, tankId } = withTank();
    const beyond = { ...reading(160), high: Number.POSITIVE_INFINITY, censored: "above" as const };
    const fine = reading(1 / 3);
    store.records.log.add({
      owner: ines,
      tankId,
      line: "x",
      readings: [beyond, fine],
      events: [],
      now: NOW,
    });
    expect(store.records.log.find(ines, 1)).toEqual({ ...beyond, id: 1, tankId });
    expect(store.records.log.find(ines, 2)?.best).toBe(1 / 3);
  });
});

describe("the log", () => {
  it("writes a line whole or not at all", () => {
    const { store, tankId } = withTank();
    const broken = { ...reading(1), best: Number.NaN };
    expect(() =>
      store.records.log.add({
        owner: ines,
        tankId,
        line: "x",
        readings: [reading(20), broken],
        events: [],
        now: NOW,
      }),
    ).toThrow();
    expect(store.records.log.recent(ines, tankId, 10)).toEqual([]);
    expect(store.records.log.undoLast(ines, tankId, NOW)).toBeUndefined();
  });

  it("finds the newest by the time read, not by the time entered", () => {
    const { store, tankId } = withTank();
    for (const [best, at] of [
      [20, "2026-03-04T10:00:00.000Z"],
      [22, "2026-03-01T10:00:00.000Z"],
    ] as const)
      store.records.log.add({
        owner: ines,
        tankId,
        line: "x",
        readings: [reading(best, at)],
        events: [],
        now: NOW,
      });
    expect(store.records.log.latest(ines, tankId, "nitrate")?.best).toBe(20);
  });
});

describe("two processes on one file", () => {
  it("see each other's writing, take each step of the schema once, and share what is news", () => {
    const folder = mkdtempSync(join(tmpdir(), "standpipe-"));
    const file = join(folder, "club.sqlite");
    const [one, two] = [openStore(file, NOW), openStore(file, NOW)];
    one.records.members.member(ines, club);
    newTank(one, "Lagoon");
    expect(two.records.tanks.own(ines).map(({ name }) => name)).toEqual(["Lagoon"]);
    expect([one.isNews("event", NOW), two.isNews("event", NOW)]).toEqual([true, false]);
    one.close();
    two.close();
    rmSync(folder, { recursive: true });
  });
});
