import type { Parameter } from "../log/parameters.ts";
import type { Instrument } from "./readings.ts";

/** A maker's "plus or minus" is taken as two standard deviations. Source: assumption. */
const SDS_IN_PLUS_OR_MINUS = 2;
/** Scatter in proportion to the level where the error is known, and where it is not. Source: assumption. */
const KNOWN_LEVEL_SD = 0.02;
const UNKNOWN_LEVEL_SD = 0.12;
/** Fixed scatter where nothing is known: a share of the least that is told from nothing, or of the middle of
 *  what is possible. Source: assumption. */
const SHARE_OF_LEAST = 0.5;
const SHARE_OF_POSSIBLE = 0.002;

/** How far a meter, or a test of an unknown kind, may be off. */
export function meterFor(id: string, parameter: Parameter, plusOrMinus: number | undefined): Instrument {
  const { notDetectedBelow, possible } = parameter;
  const unknownSd =
    notDetectedBelow === undefined
      ? SHARE_OF_POSSIBLE * (possible.max - possible.min)
      : SHARE_OF_LEAST * notDetectedBelow;
  return {
    id,
    kind: "meter",
    fixedSd: plusOrMinus === undefined ? unknownSd : plusOrMinus / SDS_IN_PLUS_OR_MINUS,
    levelSd: plusOrMinus === undefined ? UNKNOWN_LEVEL_SD : KNOWN_LEVEL_SD,
    ...(notDetectedBelow === undefined || plusOrMinus !== undefined ? {} : { lowest: notDetectedBelow }),
  };
}
