import type { CarbonConditions, CarbonRoute } from "../../src/core/dosing/carbon-safety.ts";
import { askFor, type Context, choice, fills, optional, type Question } from "../../src/kit/index.ts";

const TODAY = ["all runs, fish eat", "pumps off", "aeration off", "skimmer off", "fish not eating"] as const;
const ROUTES = ["open water", "slow box"] as const;

/** What every carbon sum has to know before it names a dose. */
export const todayOptions = {
  today: optional(choice("Whether everything runs and the fish eat, today", TODAY)),
  alcohol: optional(choice("Whether the alcohol has additives in it", ["no additives", "denatured"])),
};

export const routeOption = optional(
  choice("Where it works: in the open water with a skimmer, or in a slow box without oxygen", ROUTES),
);

/** The route chosen; on a day that forbids both, either leads to the same refusal without a question more. */
export function routeOf(input: {
  readonly route?: (typeof ROUTES)[number] | undefined;
  readonly today?: (typeof TODAY)[number] | undefined;
}): CarbonRoute | undefined {
  if (input.route === "open water") return "aerobic assimilation";
  const isForbidden = input.today !== "all runs, fish eat" && input.today !== "skimmer off";
  return input.route === "slow box" || isForbidden ? "anoxic denitrification" : undefined;
}

/** What must be so before any carbon goes in; undefined until the member has said. */
export function conditionsOf(input: {
  readonly today?: (typeof TODAY)[number] | undefined;
  readonly alcohol?: "no additives" | "denatured" | undefined;
}): CarbonConditions | undefined {
  const { today } = input;
  if (today === undefined) return undefined;
  return {
    arePumpsRunning: today !== "pumps off",
    isAerationRunning: today !== "aeration off",
    isSkimmerRunning: today !== "skimmer off",
    areFishEating: today !== "fish not eating",
    isDenatured: input.alcohol === "denatured",
  };
}

export function askToday(context: Context, title: string): Question {
  return askFor(
    context,
    { name: "today", example: TODAY[0] },
    {
      title,
      text: "First: do pumps, aeration and skimmer all run today, and do the fish eat?",
      choices: TODAY.map((each) => fills(each, "today", each)),
    },
  );
}

export function askRoute(context: Context, title: string): Question {
  return askFor(
    context,
    { name: "route", example: ROUTES[0] },
    {
      title,
      text: "Where shall it work: in the open water, where the skimmer takes out what grows, or in a slow box without oxygen?",
      choices: ROUTES.map((each) => fills(each, "route", each)),
    },
  );
}
