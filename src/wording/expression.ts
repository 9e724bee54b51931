import type { ExpressionCautions, ExpressionRefusals } from "../core/expression/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the expression room. */
export const expressionCautionWording: Wording<ExpressionCautions> = {
  "ppm-taken-as-mg-per-litre": () =>
    "Here ppm was taken as mg/L, as kits print it. By weight, a litre of sea water is about 1.02 kg.",
};

const JOINED = {
  add: "be added to",
  "take away": "be taken away from",
  compare: "be compared with",
} as const;

/** The sentence for each refusal of the expression room. */
export const expressionRefusalWording: Wording<ExpressionRefusals> = {
  "sum-not-understood": () =>
    "I could not take that sum apart. Write it with fewer brackets, or in two steps.",
  "sum-mixes-kinds": ({ doing, left, right }) => {
    const [first, second] = doing === "take away" ? [right, left] : [left, right];
    return `${first} cannot ${JOINED[doing]} ${second}. Look whether a unit is missing or a bracket is out of place.`;
  },
  "sum-needs-plain-number": ({ where, found }) =>
    `${where} takes a plain number, and this is ${found}. Divide by one of its unit first, as in “2300 L / 1 L”.`,
  "sum-divides-by-nothing": () => "Somewhere this divides by zero, so there is no answer.",
  "sum-too-large": () =>
    "On the way this grows past any figure I can work with. Look whether a power or a bracket is out of place.",
  "sum-outside-function": ({ name, takes }) => `${name} takes ${takes}, and here it is given something else.`,
  "sum-has-no-root": ({ found }) =>
    `${found} has no square root here: that takes a figure from zero up whose unit is a square, as m² is.`,
  "sum-of-temperatures": () =>
    "Two temperatures can be subtracted or averaged; added or multiplied they mean nothing. Write a rise or fall in kelvins: “26 °C + 2 K”.",
  "sum-makes-no-quantity": ({ units }) =>
    `The units come out as ${units}, which is no quantity I know. Look whether a × should be a ÷, or a unit is missing.`,
};
