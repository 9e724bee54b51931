import type { CautionCode, CautionLevel } from "../result.ts";
import type { SourceId } from "../sources.ts";
import type { CloudyCautions } from "./cautions.ts";
import type { CloudyWhen } from "./questions.ts";

/** What the answers make likely, on whose word, and what is safe to do about it. */
export interface CloudyFinding {
  readonly name: string;
  readonly when: CloudyWhen;
  /** What it most likely is, in a sentence or two. */
  readonly says: string;
  readonly source: Extract<SourceId, "boyd-tucker-1998" | "ebeling-2006" | "common-practice">;
  readonly tests: readonly string[];
  readonly actions: readonly string[];
  readonly caution?: readonly [code: Extract<CautionCode, keyof CloudyCautions>, level: CautionLevel];
}

const WHITE = ["white or grey haze"] as const;

/** Every test a doubt about the water begins with. */
export const FIRST_TESTS = ["ammonia", "nitrite", "pH", "temperature", "salinity, in salt water"] as const;

/** Done at once when animals are in trouble, in this order; worded for someone in a hurry. Source: common-practice. */
export const URGENT_ACTIONS = [
  "Air first: run an air stone in every container with animals, or point a pump at the surface so that it breaks. Lift the lid.",
  "Stop feeding, and stop every dosing pump.",
  "Take out dead animals and rotting food. Do not stir the sand.",
  "Test ammonia, nitrite, pH, temperature and, if you can, oxygen. Keep a litre of the old water for the vet.",
  "Change about a quarter of the water with clean water that matches in temperature and salinity and holds no chlorine; check it with /change match. Repeat in an hour if they are no better.",
  "If ammonia shows and the new water has a much higher pH, change less at a time: the rise makes ammonia more poisonous.",
  "Call a vet who treats fish.",
] as const;

/** The findings, most pressing first. Each stands on the source it names. */
export const CLOUDY_FINDINGS: readonly CloudyFinding[] = [
  {
    name: "Hydrogen sulphide",
    when: { smell: ["rotten eggs"] },
    says: "Somewhere without oxygen, in deep sand or a filter that stood still, bacteria make hydrogen sulphide. It poisons fish at traces.",
    source: "boyd-tucker-1998",
    tests: ["oxygen"],
    actions: [
      "Air hard, and air the room.",
      "Leave the sand and any filter that stood still closed off from the tank until they are flushed to waste.",
      "Change water in moderate steps, matched in temperature and salinity.",
    ],
    caution: ["sulphide-in-the-sand", "danger"],
  },
  {
    name: "Chlorine from tap water",
    when: { smell: ["chlorine"] },
    says: "Tap water with chlorine may have got in. It burns gills and kills filter bacteria.",
    source: "common-practice",
    tests: ["chlorine, total and free", "ammonia daily for two weeks"],
    actions: [
      "Let in no more tap water, by hand or by the automatic top-off.",
      "Air hard: free chlorine slowly leaves with it. Bound chlorine does not.",
      "Change water only with water that tested free of chlorine.",
    ],
  },
  {
    name: "Bacteria fed by a carbon source",
    when: { look: WHITE, lately: ["carbon source dosed"] },
    says: "Bacteria multiply on the carbon faster than on anything else in the water, show as white haze, and use up oxygen.",
    source: "ebeling-2006",
    tests: ["oxygen, before the lights come on", "nitrate"],
    actions: [
      "Stop the dose today.",
      "Air day and night until the water is clear.",
      "Start again at half the dose at most.",
    ],
    caution: ["stop-carbon-now", "danger"],
  },
  {
    name: "Something rots",
    when: { feeding: ["food or an animal was left to rot"] },
    says: "What rots feeds bacteria, which cloud the water and use up oxygen, and it gives off ammonia.",
    source: "common-practice",
    tests: ["oxygen, before the lights come on"],
    actions: [
      "Find it and take it out: behind rock, in the overflow, in the filter.",
      "Change a quarter of the water, matched in temperature and salinity.",
      "Feed nothing for a day, then half.",
    ],
  },
  {
    name: "Something rots out of sight",
    when: { smell: ["foul"] },
    says: "A foul smell comes from something dead, or from a filter or pipe where the water stood still.",
    source: "common-practice",
    tests: ["oxygen, before the lights come on"],
    actions: [
      "Count the animals, and look into the overflow, the pipes and the filter.",
      "Flush a filter that stood still to waste before it runs again.",
    ],
  },
  {
    name: "The filter lost bacteria",
    when: { lately: ["filter cleaned, changed or off"] },
    says: "A filter that was cleaned hard, renewed or without flow does less for days or weeks: ammonia may rise, and free bacteria cloud the water.",
    source: "common-practice",
    tests: ["ammonia and nitrite daily for two weeks"],
    actions: [
      "Feed a third until ammonia and nitrite stay at nothing.",
      "Clean no further part of the filter for four weeks, and rinse only in tank water.",
      "Change water when ammonia shows, matched in temperature and salinity.",
    ],
  },
  {
    name: "A medicine or chemical at work",
    when: { lately: ["medicine or another chemical"] },
    says: "It may have killed bacteria or algae, whose remains cloud the water, or have harmed the filter.",
    source: "common-practice",
    tests: ["ammonia and nitrite daily for two weeks", "oxygen"],
    actions: ["Air day and night.", "Ask whoever prescribed it before you change water or dose again."],
    caution: ["medicine-is-for-a-vet", "warning"],
  },
  {
    name: "Lime fallen out",
    when: { look: WHITE, lately: ["alkalinity or calcium dosed"] },
    says: "Dosed too much, too fast or too close together, alkalinity and calcium fall out as white lime. It harms little, but both are lost.",
    source: "common-practice",
    tests: ["alkalinity", "calcium", "magnesium"],
    actions: [
      "Dose neither until it is clear and both are measured.",
      "Later, dose them apart, slowly, where the water runs fast.",
      "Look over pumps and heater for a crust.",
    ],
  },
  {
    name: "Dust of new sand or rock",
    when: { lately: ["new sand or rock"] },
    says: "Fine dust stays afloat for hours to days and then settles. It is ugly rather than harmful.",
    source: "common-practice",
    tests: [],
    actions: [
      "Let the water run through fine filter wool, and rinse that daily.",
      "Stir nothing for two days.",
    ],
  },
  {
    name: "Fed more than it can take",
    when: { look: ["white or grey haze", "green"], feeding: ["more than usual"] },
    says: "Bacteria grow on spare food faster than the filter's own, and algae on what is left of it.",
    source: "ebeling-2006",
    tests: ["nitrate", "phosphate"],
    actions: ["Feed half, and only what is eaten in two minutes.", "Siphon off what lies about."],
  },
  {
    name: "A young tank finding its balance",
    when: { look: WHITE, age: ["under 6 weeks"] },
    says: "In the first weeks free bacteria often cloud the water for some days, before those of the filter have settled.",
    source: "common-practice",
    tests: ["ammonia and nitrite every second day"],
    actions: [
      "Wait: it mostly clears within two weeks. Air well.",
      "Put in no more animals until ammonia and nitrite stay at nothing.",
      "Leave the filter alone.",
    ],
  },
  {
    name: "Free-floating algae",
    when: { look: ["green"] },
    says: "Tiny algae float in the water. By day they make oxygen, by night they use it up; towards morning it runs lowest.",
    source: "boyd-tucker-1998",
    tests: ["nitrate", "phosphate", "oxygen, before the lights come on"],
    actions: [
      "Run air through the night.",
      "Light six hours a day for two weeks.",
      "Change water every few days, matched in temperature and salinity.",
    ],
    caution: ["bloom-must-not-die-at-once", "warning"],
  },
  {
    name: "More light than before",
    when: { look: ["green"], light: ["longer or brighter than before", "sunlight falls on it"] },
    says: "Algae that float grow with the light they get, and sunlight outdoes any lamp.",
    source: "boyd-tucker-1998",
    tests: [],
    actions: ["Shade it from the sun, and go back to the light it had."],
  },
  {
    name: "Stained, not cloudy",
    when: { look: ["brown or yellow but clear"] },
    says: "Wood, leaves, food and the animals give off colour, which builds up between water changes. It harms little by itself.",
    source: "common-practice",
    tests: ["nitrate", "alkalinity"],
    actions: [
      "Change a quarter of the water, matched in temperature and salinity, and see whether it stays away.",
    ],
  },
  {
    name: "Dirt stirred up",
    when: { look: ["specks that settle"] },
    says: "Specks that sink are dirt a pump, an animal or your hand has stirred up, or what a filter let through.",
    source: "common-practice",
    tests: [],
    actions: ["Siphon it off as it settles.", "Look whether filter wool is torn, or water runs past it."],
  },
  {
    name: "Air in a pump",
    when: { look: ["fine bubbles"] },
    says: "A pump draws in air: its water is too low, or a joint on the suction side leaks. It looks worse than it is.",
    source: "common-practice",
    tests: [],
    actions: [
      "Top up the pump's chamber with fresh water.",
      "Switch the pump off at the wall before you reach in, and look over its suction side.",
    ],
  },
  {
    name: "White with no cause in sight",
    when: {
      look: WHITE,
      age: ["6 weeks to 6 months", "over 6 months"],
      feeding: ["as usual"],
      lately: ["nothing"],
    },
    says: "An older tank clouds for a reason: mostly something dead out of sight, or a pump or filter that stopped.",
    source: "common-practice",
    tests: ["oxygen, before the lights come on"],
    actions: [
      "Count the animals, and look over every pump and filter for flow.",
      "Change a quarter of the water, matched in temperature and salinity.",
      "Feed half until it is clear.",
    ],
  },
];
