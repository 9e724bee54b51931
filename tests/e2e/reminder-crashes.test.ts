import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import SqliteDatabase from "better-sqlite3";
import { DefaultRestOptions } from "discord.js";
import { afterEach, beforeEach, expect, it } from "vitest";
import { reminderPoster } from "../../src/discord/send-reminder.ts";
import { calendarOf } from "../../src/kit/calendar.ts";
import { newPlan } from "../../src/kit/plan-change.ts";
import type { MemberId } from "../../src/records/ids.ts";
import type { LetterItem, ReminderRecords } from "../../src/records/plan.ts";
import { createClockwork } from "../../src/reminders/clockwork.ts";
import { openStore } from "../../src/sqlite/index.ts";
import { type Message, type Platform, startPlatform } from "../support/loopback/index.ts";
import type { ChildOrder } from "../support/reminder-child.ts";

const MEMBERS = 8;
const SIMULATED_KILLS = 188;
const REAL_KILLS = 12;
const MINUTE = 60_000;
const DAY = 86_400_000;
const START = Date.UTC(2027, 2, 3, 10);
const CHILD = fileURLToPath(new URL("../support/reminder-child.ts", import.meta.url));

let folder: string;
let file: string;
let platform: Platform;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-crash-"));
  file = join(folder, "club.sqlite");
  platform = await startPlatform({ globalPerSecond: 10_000, latencyMs: 2 });
  platform.advance(START - platform.world.now());
  keepDailyPlans();
});
afterEach(async () => {
  await platform.close();
  rmSync(folder, { recursive: true });
});

/** Every member feeds at noon, each day, by the clock of UTC; two cannot be written to directly. */
function keepDailyPlans(): void {
  const store = openStore(file, iso());
  for (let n = 0; n < MEMBERS; n++) {
    const user = platform.user(`member-${n}`);
    user.refusesDms = n < 2;
    const id = `discord:${user.id}` as MemberId;
    store.records.members.member(id, undefined);
    const tank = store.records.tanks.create({
      owner: id,
      name: `Tank ${n}`,
      kind: "fresh",
      containers: [],
      containersTyped: "",
      now: iso(),
    });
    store.records.plans.setWishes(id, {
      place: "dm",
      fallback: platform.channel.id,
      quietFrom: 0,
      quietUntil: 0,
    });
    const today = Math.floor(platform.world.now() / DAY);
    store.records.plans.add(
      id,
      newPlan(
        {
          tankId: tank.id,
          task: { kind: "words", words: "clean the glass" },
          rule: { kind: "every", days: 1, from: today, minute: 12 * 60 },
          typed: "clean the glass",
        },
        platform.world.now(),
        calendarOf("UTC"),
      ),
      iso(),
    );
  }
  store.close();
}

/** Noons from the first day until now: what every member must have been told, each once. */
function noonsSoFar(): number {
  const first = Date.UTC(2027, 2, 3, 12);
  return Math.floor((platform.world.now() - first) / DAY) + 1;
}

/** All that the bot posted, in every channel and conversation. */
function posted(): readonly Message[] {
  return [...platform.world.channels.values()].flatMap((channel) =>
    [...channel.messages.values()].filter(({ author }) => author === platform.world.bot),
  );
}

/** Lets it run undisturbed until all is quiet. */
async function settle(): Promise<void> {
  platform.faults.clear();
  // Until six in the evening: no clock that was wrong by an hour has mistaken a noon by then.
  platform.advance(DAY - ((platform.world.now() - 18 * 60 * MINUTE) % DAY));
  for (let pass = 0; pass < 8; pass++) {
    platform.advance(20 * MINUTE);
    const store = openStore(file, iso());
    await createClockwork({
      records: store.records,
      reminders: store.reminders,
      poster: reminderPoster({
        apiUrl: platform.apiUrl,
        token: platform.token,
        clock: () => platform.world.now(),
        // The platform's limits are tried elsewhere.
        requestsPerSecond: 10_000,
      }),
      clock: () => platform.world.now(),
      newKey: () => `settle${pass}-${settled++}`,
      log: () => undefined,
    }).tick();
    store.close();
  }
}
let settled = 0;

/** Each due time was told in exactly one message, as due or as missed, and no message stands there twice. */
function expectEachToldOnce(): void {
  const db = new SqliteDatabase(file, { readonly: true });
  const letters = db.prepare("SELECT key, items, state FROM letter").all() as {
    key: string;
    items: string;
    state: string;
  }[];
  const duties = db.prepare("SELECT id, due_at FROM duty").all() as { id: number; due_at: string }[];
  const wholeDays = db
    .prepare("SELECT count(*) FROM (SELECT DISTINCT member_id, due_at FROM duty)")
    .pluck()
    .get();
  db.close();
  expect(duties).toHaveLength(MEMBERS * noonsSoFar());
  expect(wholeDays).toBe(MEMBERS * noonsSoFar());

  const messages = posted();
  const keyOf = (message: Message): string => message.buttons[0]?.customId?.split(":")[2] ?? "";
  const keys = messages.map(keyOf);
  expect(new Set(keys).size).toBe(keys.length);
  expect([...keys].sort()).toEqual(
    letters
      .filter(({ state }) => state === "sent")
      .map(({ key }) => key)
      .sort(),
  );
  expect(letters.filter(({ state }) => state !== "sent")).toEqual([]);

  // What the members can read: one "Due" or one place in "Missed before it" for every noon.
  const told = messages
    .map(({ text }) => text)
    .flatMap((text) => [
      ...(text.match(/Due [^.]*12:00/g) ?? []),
      ...(/Missed before it: ([^.]*)\./.exec(text)?.[1]?.match(/12:00/g) ?? []),
    ]);
  expect(told).toHaveLength(MEMBERS * noonsSoFar());
  const items = letters.flatMap(({ items: json }) => JSON.parse(json) as LetterItem[]);
  expect(items.length + items.flatMap(({ missed }) => missed).length).toBe(MEMBERS * noonsSoFar());
}

function iso(): string {
  return new Date(platform.world.now()).toISOString();
}

/** A small generator of repeatable chance (mulberry32), so that a failing run can be run again. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** How long the power is out: hardly, within the platform's memory of a nonce, beyond it, two days. */
const GAPS = [0, 20_000, 2 * MINUTE, 15 * MINUTE, DAY, 2 * DAY];

/** By how much the bot's own clock may be wrong in one life, and right again in the next. */
const WRONG_BY = [0, 0, 0, 60 * MINUTE, -60 * MINUTE, -15 * MINUTE];

function letSomethingGoWrong(random: () => number): void {
  const route = /^\/channels\/\d+\/messages$/;
  const kind = (["reset-after", "reset-before", "close-after", "5xx", "429", "none", "none"] as const)[
    Math.floor(random() * 7)
  ];
  if (kind === "none" || kind === undefined) return;
  platform.faults.add({
    kind,
    route,
    method: "POST",
    ...(kind === "429" ? { retryAfterS: 0.02 } : {}),
  } as never);
}

/** One life of the process, ended for good at its `lastStep`-th step; false when it came to its end before. */
async function live(lastStep: number, life: number, wrongBy: number): Promise<boolean> {
  const clock = (): number => platform.world.now() + wrongBy;
  const store = openStore(file, iso());
  let steps = 0;
  let isDead = false;
  const left: Promise<unknown>[] = [];
  let die = (): void => undefined;
  const died = new Promise<void>((resolve) => {
    die = resolve;
  });
  const step = (): void => {
    steps += 1;
    if (steps < lastStep) return;
    isDead = true;
    die();
  };
  /** A dead process neither goes on nor fails: it is simply not there any more. */
  const never = new Promise<never>(() => undefined);
  const dying: ReminderRecords = new Proxy(store.reminders, {
    get(target, name) {
      const method = Reflect.get(target, name) as (...args: unknown[]) => unknown;
      return (...args: unknown[]) => {
        if (isDead) throw new Error("dead");
        step();
        if (isDead) throw new Error("dead");
        const result = method.apply(target, args);
        step();
        if (isDead) throw new Error("dead");
        return result;
      };
    },
  });
  const clockwork = createClockwork({
    records: store.records,
    reminders: dying,
    poster: reminderPoster({
      apiUrl: platform.apiUrl,
      token: platform.token,
      clock,
      requestsPerSecond: 10_000,
      async makeRequest(url, init) {
        if (isDead) return never;
        step();
        if (isDead) return never;
        const sent = DefaultRestOptions.makeRequest(url, init);
        left.push(sent);
        const answer = await sent;
        if (isDead) return never;
        step();
        return isDead ? never : answer;
      },
    }),
    clock,
    newKey: () => `life${life}-${settled++}`,
    log: () => undefined,
  });
  const ticking = clockwork.tick().catch((error: unknown) => {
    if (!isDead) throw error;
  });
  await Promise.race([ticking, died]);
  // Requests that had left when it died are carried out by the platform all the same, before more time passes.
  await Promise.allSettled(left);
  store.close();
  return isDead;
}

it(`is killed ${SIMULATED_KILLS} times between any two steps: each reminder once, or once as late`, {
  timeout: 120_000,
}, async () => {
  const random = chance(20_270_303);
  let kills = 0;
  for (let life = 0; kills < SIMULATED_KILLS; life++) {
    letSomethingGoWrong(random);
    platform.advance(GAPS[Math.floor(random() * GAPS.length)] ?? 0);
    const wrongBy = WRONG_BY[Math.floor(random() * WRONG_BY.length)] ?? 0;
    if (await live(1 + Math.floor(random() * 50), life, wrongBy)) kills += 1;
    else platform.advance(DAY);
  }
  await settle();
  expect(kills).toBe(SIMULATED_KILLS);
  expectEachToldOnce();
});

it(`is killed ${REAL_KILLS} times by the system, in the midst of sending: each reminder once, or once as late`, {
  timeout: 120_000,
}, async () => {
  const random = chance(25);
  let interrupted = 0;
  let next = startChild();
  for (let kill = 0; kill < REAL_KILLS; kill++) {
    const child = await next;
    if (kill + 1 < REAL_KILLS) next = startChild();
    letSomethingGoWrong(random);
    // A day on there are new letters; two minutes on there are those whose end nobody saw.
    platform.advance(kill % 2 === 0 ? DAY : 2 * MINUTE);
    const order: ChildOrder = {
      file,
      apiUrl: platform.apiUrl,
      token: platform.token,
      aheadMs: platform.world.now() - Date.now(),
    };
    const wanted = platform.requests.length + 1 + Math.floor(random() * 14);
    child.send(order);
    await platform.until(() => platform.requests.length >= wanted, 2000).catch(() => undefined);
    child.kill("SIGKILL");
    await once(child, "exit");
    await new Promise((resolve) => setTimeout(resolve, 50));
    if (openLetters() > 0) interrupted += 1;
  }
  await settle();
  // Kills that hit nothing would prove nothing.
  expect(interrupted).toBeGreaterThan(2);
  expectEachToldOnce();
});

async function startChild(): Promise<ChildProcess> {
  const child = fork(CHILD, { execArgv: ["--import", "tsx"] });
  await once(child, "message");
  return child;
}

function openLetters(): number {
  const db = new SqliteDatabase(file, { readonly: true });
  const count = db.prepare("SELECT count(*) FROM letter WHERE state IN ('waiting', 'trying')").pluck().get();
  db.close();
  return Number(count);
}
