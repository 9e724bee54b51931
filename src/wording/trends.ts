import type { TrendsCautions, TrendsRefusals } from "../core/trends/cautions.ts";
import type { Wording } from "./wording.ts";

/** Two figures at most: a chart deserves no more. */
function about(value: number): string {
  return Number(value.toPrecision(2)).toString();
}

function daysAgo(days: number): string {
  const whole = Math.round(days);
  if (whole <= 0) return "today";
  return whole === 1 ? "yesterday" : `${whole} days ago`;
}

function signedPercent(percent: number): string {
  return `${percent < 0 ? "−" : "+"}${Math.abs(Math.round(percent))} %`;
}

/** The sentence for each caution of the trends room. */
export const trendsCautionWording: Wording<TrendsCautions> = {
  "trend-readings-doubted": ({ readings }) => {
    const which = readings.map(({ value, daysAgo: days }) => `${value} (${daysAgo(days)})`).join(", ");
    return `This does not fit the tests around it and counted for little: ${which}. Test again if you can.`;
  },
  "trend-unlogged-change": ({ fromDaysAgo, toDaysAgo }) =>
    `Between ${Math.round(toDaysAgo)} and ${Math.round(fromDaysAgo)} days ago the level fell more than your log explains. Did you change water then? If so, log it.`,
  "trend-kits-differ": ({ instrument, against, percentLow, percentHigh }) =>
    `${instrument} reads ${signedPercent(percentLow)} to ${signedPercent(percentHigh)} against ${against}; that was allowed for. Testing one water with both would settle it.`,
  "trend-unit-slip": ({ instrument, other, factor }) =>
    `${other} reads about ${about(factor)} times ${instrument}: that is the factor between "as N" and the whole ion. Check which unit each one shows.`,
  "trend-last-at-top": ({ atLeast }) =>
    `The last test is off the top of the chart: it only says at least ${about(atLeast)}. Mix one part tank water with three parts pure water, test that, and multiply by four.`,
  "trend-new-water-above-limit": ({ newWater, limit }) =>
    `The new water holds ${about(newWater)} itself, so no water changes can keep the tank under ${about(limit)}.`,
  "trend-plan-assumed": ({ everyDays, percent }) =>
    `"Your plan" is taken from your log: about ${about(percent)} % every ${about(everyDays)} days.`,
  "trend-sawtooth": () =>
    "A flat line through tests with water changes between them says nothing about how much the tank makes.",
};

/** The sentence for each refusal of the trends room. */
export const trendsRefusalWording: Wording<TrendsRefusals> = {
  "trend-no-readings": () => "There is no test to go by yet: log one today and another in a week.",
  "trend-too-few": ({ readings, days, waitDays }) =>
    `${readings} ${readings === 1 ? "test" : "tests"} over ${Math.round(days)} days cannot show a rate: log two more, about ${Math.round(waitDays)} days apart, one of them just before your next water change.`,
  "trend-at-top": ({ atLeast }) =>
    `Nearly all tests are off the top of the chart: the level is at least ${about(atLeast)}, and how fast it moves cannot be seen. Mix one part tank water with three parts pure water, test that, and multiply by four.`,
  "trend-at-bottom": ({ below, productionUnder }) =>
    `Every test is in the lowest colour: the level is below ${about(below)}, so the tank makes less than about ${about(productionUnder)} a day. A finer test would be needed to say more.`,
  "trend-too-old": ({ days }) =>
    `The last test is ${Math.round(days)} days old, too long to say what happens now: test today and again in a week.`,
  "trend-contradictory": ({ readings }) =>
    `These ${readings} tests and your log contradict each other: no production, however uneven, leads from one to the next. Check their dates, values and units, and whether a water change is missing; then test twice this week.`,
  "trend-too-vague": ({ low, high, levelLow, levelHigh, waitDays }) =>
    `These tests fit anything from ${about(low)} to ${about(high)} a day (the level now is about ${about(levelLow)} to ${about(levelHigh)}). Test just before and just after your next water change, and once more about ${Math.round(waitDays)} days later.`,
  "trend-event-too-little": ({ what, looksBefore, looksAfter }) =>
    `Too little stands beside "${what}" to weigh it: ${looksBefore} tests before and ${looksAfter} after. Three over ten days on each side would do.`,
  "trend-one-time": ({ readings }) =>
    `${readings} ${readings === 1 ? "reading" : "readings"} at one moment cannot show a trend: log another on a later day.`,
};
