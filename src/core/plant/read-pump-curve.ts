import { readFlow } from "../quantity/flow.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showNumber } from "../quantity/show.ts";
import { type DescribedPart, readPart, readParts } from "./described-part.ts";
import { type CurvePoint, type PumpCurve, refuseCurve } from "./pump-curve.ts";

const EXAMPLE = "“0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m” or “most 5 m, most 14000 L/h”";

/** A pump: points of its printed curve, or only its greatest head and greatest flow. */
export function readPumpCurve(typed: string, habits: Habits): Read<PumpCurve> {
  const ends = /^\s*(?:max(?:imum)?|most|up to)\b/i.test(typed);
  if (ends) return readEnds(typed, habits);
  const points = readParts(typed, EXAMPLE, (part) =>
    readPart(`point: ${part}`, EXAMPLE, habits, (described) => {
      const match = described.take(/(?<a>.+?) ?(?:at|@|=|→|,) ?(?<b>.+)/);
      if (match === undefined) return described.refuse(`a point is a flow and a head. Try ${EXAMPLE}.`);
      const [a = "", b = ""] = [match.groups?.["a"], match.groups?.["b"]];
      const isFlowFirst = readFlow(a, habits).kind !== "unreadable";
      const value: CurvePoint = {
        flowLPerH: described.flow(isFlowFirst ? a : b).best,
        headM: described.metres(isFlowFirst ? b : a).best,
      };
      return { value, readAs: `${showNumber(value.flowLPerH)} L/h at ${showNumber(value.headM)} m` };
    }),
  );
  if (points.kind !== "read") return points;
  const sorted = [...points.value].sort((a, b) => a.flowLPerH - b.flowLPerH);
  return checked({ kind: "points", points: sorted }, points.readAs);
}

function readEnds(typed: string, habits: Habits): Read<PumpCurve> {
  const read = readPart<PumpCurve>(
    `pump: ${typed.replace(/ and /g, ", ").replace(/;/g, ",")}`,
    EXAMPLE,
    habits,
    (part) => {
      const [first, second] = [nextMost(part), nextMost(part)];
      const isFlowFirst = readFlow(first, habits).kind !== "unreadable";
      const maxFlowLPerH = part.flow(isFlowFirst ? first : second).best;
      const shutOffHeadM = part.metres(isFlowFirst ? second : first).best;
      return {
        value: { kind: "two figures", shutOffHeadM, maxFlowLPerH },
        readAs: `at most ${showNumber(shutOffHeadM)} m and ${showNumber(maxFlowLPerH)} L/h`,
      };
    },
  );
  return read.kind === "read" ? checked(read.value, read.readAs) : read;
}

function nextMost(part: DescribedPart): string {
  const figure = part.take(/(?:(?:max(?:imum)?|most|up to)(?: (?:head|flow))? )?(?<q>\d.*)/)?.groups?.["q"];
  return figure ?? part.refuse(`the greatest head and the greatest flow are both needed. Try ${EXAMPLE}.`);
}

/** A curve that no pump has is told at once, not when it is used. */
function checked(curve: PumpCurve, readAs: string): Read<PumpCurve> {
  const refused = refuseCurve(curve);
  if (refused === undefined) return { kind: "read", value: curve, readAs };
  const { reason } = refused;
  const problem =
    reason.code === "pump-curve-unreadable" ? reason.figures.problem : "it is not one a pump can have";
  return { kind: "unreadable", message: `That pump curve cannot be used: ${problem}. Try ${EXAMPLE}.` };
}
