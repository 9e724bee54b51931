import { askAgainHours, isUrgent } from "../core/plans/pairs.ts";
import { calendarOf } from "../kit/calendar.ts";
import { dutyWords } from "../kit/duty-words.ts";
import { eventTimes, readingsSince, tankLogOf } from "../kit/tank-log.ts";
import type { Records } from "../records/index.ts";
import type { Letter, PlanStep, ReminderRecords, RunningPlan } from "../records/plan.ts";
import { dueReminders } from "./due-reminders.ts";
import { quietUntil } from "./letter-text.ts";
import type { Posted, Poster } from "./poster.ts";

/** How often it looks. */
const LOOK_MS = 5_000;
/** Plans looked at before others get their turn. */
const PLANS_AT_ONCE = 20;
const LETTERS_AT_ONCE = 20;
/** A letter taken longer ago than this by nobody alive may be taken again. */
const LEASE_MS = 90_000;
const HOUR_MS = 3_600_000;
/** When a member who could not be reached is tried again. */
const AFTER_REFUSAL_MS = 6 * HOUR_MS;
const LONGEST_PAUSE_MS = 15 * 60_000;

export interface ClockworkParts {
  readonly records: Records;
  readonly reminders: ReminderRecords;
  /** Left out, plans fall due and nothing is sent: the terminal. */
  readonly poster?: Poster;
  readonly clock: () => number;
  /** A fresh unguessable key, at most 25 characters. */
  readonly newKey: () => string;
  readonly log: (line: string, error?: unknown) => void;
  readonly leaseMs?: number;
}

export interface Clockwork {
  /** Makes everything fall due that is due, and sends what is to be sent. */
  tick(): Promise<void>;
  start(): void;
  /** Waits for what is under way. */
  stop(): Promise<void>;
}

/** The small clockwork behind the reminders. All it knows stands in the database: it can stop at any point. */
export function createClockwork(parts: ClockworkParts): Clockwork {
  const { reminders, poster, clock, log } = parts;
  let running: Promise<void> | undefined;
  let timer: NodeJS.Timeout | undefined;

  async function tick(): Promise<void> {
    await makeFallDue(parts);
    if (poster === undefined) return;
    await writeLetters(poster);
    await send(poster);
  }

  async function writeLetters(to: Poster): Promise<void> {
    for (;;) {
      const now = clock();
      const written = reminders.writeLetters({
        prefix: to.prefix,
        now: iso(now),
        most: LETTERS_AT_ONCE,
        newKey: parts.newKey,
        holdUntil: (wishes, zone) => {
          const until = quietUntil(wishes, zone, now);
          return until === undefined ? undefined : iso(until);
        },
        isUrgent: ({ half, words }) => half === "back" && isUrgent(words.hours ?? 0),
        tellAgainAt: ({ half, words }) =>
          half === "back" ? iso(now + askAgainHours(words.hours ?? 0) * HOUR_MS) : undefined,
      });
      if (written === 0) return;
      await breath();
    }
  }

  async function send(to: Poster): Promise<void> {
    for (;;) {
      const letters = reminders.claim(to.prefix, iso(clock()), parts.leaseMs ?? LEASE_MS, LETTERS_AT_ONCE);
      if (letters.length === 0) return;
      await Promise.all(letters.map(async (letter) => put(letter, await to.post(letter))));
    }
  }

  function put(letter: Letter, posted: Posted): void {
    const now = clock();
    if (posted.kind === "sent") {
      reminders.sent(letter.id, posted.place, posted.messageId, iso(now));
    } else if (posted.kind === "refused") {
      log(`reminder ${letter.id} could not be delivered: ${posted.why}`);
      reminders.refused(letter.id, posted.why, iso(now + AFTER_REFUSAL_MS));
    } else {
      const pause = Math.min(LONGEST_PAUSE_MS, LOOK_MS * 2 ** Math.min(10, letter.attempts));
      log(`reminder ${letter.id} is tried again in ${pause / 1000} s: ${posted.why}`);
      reminders.uncertain(letter.id, iso(now + pause));
    }
  }

  function run(): void {
    if (running !== undefined) return;
    running = tick()
      .catch((error: unknown) => log("a look at the reminders failed", error))
      .finally(() => {
        running = undefined;
      });
  }

  return {
    tick,
    start() {
      run();
      timer = setInterval(run, LOOK_MS);
      timer.unref();
    },
    async stop() {
      clearInterval(timer);
      await running;
    },
  };
}

/** Looks at every plan that is due or has news, in small helpings so that nobody waits behind it. */
export async function makeFallDue(
  parts: Pick<ClockworkParts, "records" | "reminders" | "clock" | "log">,
): Promise<void> {
  const { records, reminders, clock, log } = parts;
  const failed = new Set<number>();
  for (;;) {
    const plans = reminders.toLookAt(iso(clock()), PLANS_AT_ONCE + failed.size);
    let put = 0;
    for (const plan of plans) {
      if (failed.has(plan.id)) continue;
      const now = clock();
      try {
        if (reminders.putStep(plan, stepOf(plan, records, now), iso(now))) put += 1;
      } catch (error) {
        // One plan that cannot be worked out must not keep the others from falling due.
        failed.add(plan.id);
        log(`plan ${plan.id} could not be looked at`, error);
      }
    }
    if (put === 0) return;
    await breath();
  }
}

function stepOf(plan: RunningPlan, records: Records, now: number): PlanStep {
  const tank = records.tanks.own(plan.owner).find(({ id }) => id === plan.tankId);
  if (tank === undefined) return { duties: [], state: "over", why: "its tank has gone" };
  const log = tankLogOf(tank, plan.createdAt, records);
  return dueReminders(plan, {
    now,
    calendar: calendarOf(plan.zone),
    log,
    followed: plan.rule.kind === "after" ? eventTimes(tank, plan.rule.event, records) : [],
    seen: plan.until === undefined ? [] : readingsSince(tank, plan.until.parameter, plan.createdAt, records),
    settle: () =>
      dutyWords(plan, tank, log, { records, now, member: records.members.member(plan.owner, undefined) }),
  });
}

/** Lets whatever else waits have its turn. */
function breath(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

function iso(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
