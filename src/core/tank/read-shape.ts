import { as, type Centimetres } from "../quantity/units.ts";
import type { Shape } from "./container.ts";
import { shapeFault } from "./shape-volume.ts";

/** The lengths a member gave for one container, before it is known what form they make. */
export interface GivenSides {
  readonly form: Shape["kind"] | undefined;
  /** In the order typed: "240 x 100 x 70". */
  readonly sidesCm: readonly Centimetres[];
  readonly diameterCm?: Centimetres | undefined;
  readonly heightCm?: Centimetres | undefined;
  readonly bowCm?: Centimetres | undefined;
  readonly cutCm?: readonly Centimetres[] | undefined;
}

/** The words each form goes by. The longer stand first. */
export const FORM_WORDS: readonly (readonly [Shape["kind"], string])[] = [
  [
    "horizontal drum",
    "(?:(?:drum|barrel|cylinder) )?(?:on (?:its|the|one) side|lying(?: down)?|horizontal)(?: (?:drum|barrel|cylinder))?",
  ],
  ["upright cylinder", "(?:upright |vertical )?(?:cylinder|cylindrical|round tank|round)"],
  ["bow front", "bow[ -]?front(?:ed)?"],
  ["quarter round", "quarter[ -]?(?:round|circle|cylinder)"],
  ["hexagon", "hexagon(?:al)?|hex"],
  ["L-shape", "l[ -]shaped?"],
  ["tapered tub", "tapered(?: tub)?"],
  ["box", "box|rectangular|cube"],
];

/** What each form needs, and in which order. */
const NEEDS: Record<Shape["kind"], string> = {
  box: "length x width x height, like “120 x 50 x 55 cm”",
  "upright cylinder": "diameter x height, like “cylinder 58 x 90 cm”",
  "horizontal drum": "diameter x length, like “drum on its side 58 x 90 cm”",
  "bow front": "length x end width x height and the bow, like “bow front 120 x 45 x 55 cm bow 12 cm”",
  "quarter round": "radius x height, like “quarter round 80 x 60 cm”",
  hexagon: "width between two flat sides x height, like “hexagon 70 x 60 cm”",
  "L-shape":
    "length x width x height and the corner cut out, like “L-shape 200 x 150 x 60 cm cut 120 x 90 cm”",
  "tapered tub":
    "floor length x floor width x rim length x rim width x height, like “tapered tub 80 x 50 x 100 x 70 x 45 cm”",
};

/** The shape these lengths make, or a sentence with what is missing. */
export function shapeFrom(given: GivenSides): Shape | { readonly missing: string } {
  const { sidesCm, diameterCm, heightCm, bowCm, cutCm } = given;
  const form =
    given.form ?? (diameterCm !== undefined ? "upright cylinder" : bowCm === undefined ? "box" : "bow front");
  const all = diameterCm === undefined ? [...sidesCm] : [diameterCm, ...sidesCm];
  if (heightCm !== undefined) all.push(heightCm);
  const shape = build(form, all, bowCm, cutCm ?? []);
  if (shape === undefined) {
    const hint = form === "box" && all.length === 2 ? ` If it is round: ${NEEDS["upright cylinder"]}.` : "";
    return { missing: `a ${form} needs ${NEEDS[form]}.${hint}` };
  }
  const fault = shapeFault(shape);
  return fault === undefined ? shape : { missing: `${fault}.` };
}

function build(
  form: Shape["kind"],
  [a, b, c, d, e, ...rest]: readonly Centimetres[],
  bowCm: Centimetres | undefined,
  [cutLengthCm, cutWidthCm, ...moreCuts]: readonly Centimetres[],
): Shape | undefined {
  if (a === undefined || b === undefined || rest.length > 0) return undefined;
  const isTwo = c === undefined;
  const isThree = c !== undefined && d === undefined;
  switch (form) {
    case "upright cylinder":
      return isTwo ? { kind: form, diameterCm: a, heightCm: b } : undefined;
    case "horizontal drum":
      return isTwo ? { kind: form, diameterCm: a, lengthCm: b } : undefined;
    case "quarter round":
      return isTwo ? { kind: form, radiusCm: a, heightCm: b } : undefined;
    case "hexagon":
      return isTwo ? { kind: form, acrossFlatsCm: a, heightCm: b } : undefined;
    case "box":
      return isThree ? { kind: form, lengthCm: a, widthCm: b, heightCm: c } : undefined;
    case "bow front":
      return isThree && bowCm !== undefined
        ? { kind: form, lengthCm: a, endWidthCm: b, heightCm: c, bowDepthCm: bowCm }
        : undefined;
    case "L-shape":
      return isThree && cutLengthCm !== undefined && cutWidthCm !== undefined && moreCuts.length === 0
        ? { kind: form, lengthCm: a, widthCm: b, heightCm: c, cutLengthCm, cutWidthCm }
        : undefined;
    case "tapered tub":
      return c !== undefined && d !== undefined && e !== undefined
        ? {
            kind: form,
            bottomLengthCm: a,
            bottomWidthCm: b,
            topLengthCm: c,
            topWidthCm: d,
            heightCm: as<Centimetres>(e),
          }
        : undefined;
  }
}
