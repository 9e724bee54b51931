/** Members in a hurry: sends slash commands at a pace and times the answers. */

import { performance } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import type { Platform } from "./platform.ts";
import type { SlashCall } from "./scene.ts";

/** Open: so many a second whatever the bot does. Closed: so many at a time, the next when one is answered. */
export type Pace = { readonly ratePerSecond: number } | { readonly inFlight: number };

export type LoadPlan = Pace & {
  readonly seconds: number;
  /** Sent in turn, each by another member. */
  readonly calls: readonly Omit<SlashCall, "user">[];
  /** Distinct members; 20 unless given. */
  readonly members?: number;
};

export interface Spread {
  readonly p50: number;
  readonly p90: number;
  readonly p99: number;
  readonly max: number;
}

export interface LoadResult {
  readonly sent: number;
  readonly answered: number;
  /** Without a first response when the window closed after the last one was sent. */
  readonly unanswered: number;
  readonly seconds: number;
  readonly answersPerSecond: number;
  /** Event written to the socket until the callback was received whole, in milliseconds. */
  readonly ackMs: Spread;
  /** The same until the member saw the answer: with a deferral, until its first edit. */
  readonly filledMs: Spread;
}

/** Runs a plan to its end and waits for what is still open. */
export async function runLoad(platform: Platform, plan: LoadPlan): Promise<LoadResult> {
  const acks: number[] = [];
  const fills: number[] = [];
  let sent = 0;
  let wake = () => {};
  const send = () => {
    const call = plan.calls[sent % plan.calls.length];
    if (call === undefined) throw new Error("A plan needs a call");
    const { interaction } = platform.sendSlash({ ...call, user: `member-${sent % (plan.members ?? 20)}` });
    const stop = interaction.onChange(() => {
      const { sentAt, answeredAt, filledAt } = interaction;
      if (sentAt === undefined || answeredAt === undefined || filledAt === undefined) return;
      stop();
      acks.push(answeredAt - sentAt);
      fills.push(filledAt - sentAt);
      wake();
    });
    sent += 1;
    if (sent % 500 === 0) platform.forgetFinished();
  };
  /** Until the next answer, or until the time is up. */
  const nextAnswer = (ms: number) =>
    new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, ms);
      wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });

  const start = performance.now();
  const elapsedS = () => (performance.now() - start) / 1000;
  while (elapsedS() < plan.seconds) {
    const isClosed = "inFlight" in plan;
    const due = isClosed
      ? plan.inFlight - (sent - acks.length)
      : Math.floor(elapsedS() * plan.ratePerSecond) - sent;
    for (let n = 0; n < due; n += 1) send();
    await (isClosed ? nextAnswer((plan.seconds - elapsedS()) * 1000) : sleep(1));
  }
  const seconds = elapsedS();
  const answeredInTime = acks.length;
  const end = performance.now() + platform.interactionWindowMs;
  while (acks.length < sent && performance.now() < end) await nextAnswer(end - performance.now());
  platform.forgetFinished();
  return {
    sent,
    answered: acks.length,
    unanswered: sent - acks.length,
    seconds,
    answersPerSecond: answeredInTime / seconds,
    ackMs: spreadOf(acks),
    filledMs: spreadOf(fills),
  };
}

/** Nearest-rank percentiles. */
export function spreadOf(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return { p50: at(0.5), p90: at(0.9), p99: at(0.99), max: at(1) };
}
