import type { Habits, Read } from "../quantity/read.ts";
import { showNumber } from "../quantity/show.ts";
import { as, type Metres } from "../quantity/units.ts";
import { countOf, type DescribedPart, readPart, readParts } from "./described-part.ts";
import type { Branch } from "./parallel-branches.ts";
import { type Fitting, type FittingCount, type NominalSize, SCHEDULE_40_BORE_MM } from "./pipe-data.ts";
import type { Device, PipeSegment } from "./pipe-run.ts";
import type { Millimetres } from "./plant-units.ts";

const EXAMPLE = "“riser: 2 in, 12 m, 4 elbows, ball valve, exit, chiller 0.4 m at 3000 L/h”";
const BRANCHES = "“algae tank height 0.4 m, 1 in, 3 m, 2 elbows; reactor height 0, 3/4 in, 2 m”";

/** The words each fitting goes by; the longer stand first. */
const FITTING_WORDS: readonly (readonly [Fitting, string])[] = [
  ["45° elbow", "45(?:°|deg| ?degree)? ?(?:elbow|bend)s?"],
  ["90° elbow", "(?:90(?:°|deg| ?degree)? ?)?(?:elbow|bend)s?"],
  ["tee, through the branch", "tees?(?: .*)?"],
  ["close return", "close returns?|u-?bends?"],
  ["projecting entry", "projecting (?:entry|entries|entrance)"],
  ["flush entry", "(?:flush )?(?:entry|entries|entrance)"],
  ["exit", "exits?|outlets?"],
  ["swing check valve", "(?:swing )?check valves?"],
  ["open ball valve", "(?:open )?(?:ball )?valves?"],
];

/** Takes the bore of a pipe: a nominal size in inches (schedule 40), or its inside diameter. */
export function takeBore(
  part: DescribedPart,
): { readonly mm: Millimetres; readonly said: string } | undefined {
  const inside =
    part.take(/(?:bore|inside|inner|id)(?: diameter)?:? (?<q>\d.*)/)?.groups?.["q"] ??
    part.take(/(?<q>\d.*?) (?:bore|inside|inner|id)/)?.groups?.["q"];
  if (inside !== undefined) {
    const mm = part.mm(inside).best;
    return { mm, said: `bore ${showNumber(mm)} mm` };
  }
  const inches = part.take(
    /(?:pipe )?(?<n>\d(?:[ -]\d\/\d)?|\d\/\d|\d\.\d+) ?(?:in|inch|inches|")(?: (?:pipe|pvc|nominal))?/,
  );
  if (inches !== undefined) {
    const size = (inches.groups?.["n"] ?? "").replace("-", " ");
    const nominal = ({ "1.25": "1 1/4", "1.5": "1 1/2", "0.75": "3/4" } as const)[size] ?? size;
    const mm = isNominal(nominal) ? SCHEDULE_40_BORE_MM[nominal] : undefined;
    if (mm === undefined)
      return part.refuse(
        `I know schedule 40 pipe of ${Object.keys(SCHEDULE_40_BORE_MM).join(", ")} in. For another give its inside: “bore 45 mm”.`,
      );
    return { mm, said: `${nominal} in schedule 40, bore ${showNumber(mm)} mm` };
  }
  const metric = part.take(/(?<n>\d+(?:\.\d+)?) ?mm(?: (?:pipe|pvc))?/);
  if (metric !== undefined)
    return part.refuse(
      `metric pipe is sold by its outside. Give the inside: “bore ${metric.groups?.["n"] ?? ""} mm” if that is what you measured.`,
    );
  return undefined;
}

function isNominal(size: string): size is NominalSize {
  return Object.hasOwn(SCHEDULE_40_BORE_MM, size);
}

/** Takes every fitting named. */
export function takeFittings(part: DescribedPart): readonly FittingCount[] {
  const found: FittingCount[] = [];
  for (const [fitting, words] of FITTING_WORDS) {
    const pattern = new RegExp(`(?:(?<n>\\d{1,3})(?: ?[x×] ?| ))?(?:${words})`);
    for (let match = part.take(pattern); match !== undefined; match = part.take(pattern))
      found.push({ fitting, count: countOf(match.groups?.["n"]) });
  }
  return found;
}

function takeDevices(part: DescribedPart): readonly Device[] {
  const devices: Device[] = [];
  const stated = /(?<name>[\p{L}][\p{L} -]*?) (?:loss )?(?<h>\d[^@]*?) (?:at|@) (?<q>\d.*)/u;
  for (let match = part.take(stated); match !== undefined; match = part.take(stated))
    devices.push({
      name: match.groups?.["name"] ?? "device",
      loss: {
        headM: part.metres(match.groups?.["h"] ?? "").best,
        atLPerH: part.flow(match.groups?.["q"] ?? "").best,
      },
    });
  const bare = /(?<name>(?:chiller|uv|filter|reactor|heater|manifold|skimmer|strainer)[\p{L} -]*)/u;
  for (let match = part.take(bare); match !== undefined; match = part.take(bare))
    devices.push({ name: match.groups?.["name"] ?? "device" });
  return devices;
}

function segmentOf(
  part: DescribedPart,
  fallbackName: string,
): { readonly value: PipeSegment; readonly readAs: string } {
  const name = part.name === "" ? fallbackName : part.name;
  const devices = takeDevices(part);
  const bore = takeBore(part) ?? part.refuse(`how wide is the pipe? Try ${EXAMPLE}.`);
  const fittings = takeFittings(part);
  const length = part.take(/(?:length |long )?(?<q>\d.*?)(?: long| of pipe)?/)?.groups?.["q"];
  const lengthM =
    length === undefined ? part.refuse(`how long is the pipe? Try ${EXAMPLE}.`) : part.metres(length).best;
  const side = /suction|intake/i.test(name) ? "suction" : /drain/i.test(name) ? "drain" : "pressure";
  return {
    value: { name, side, boreMm: bore.mm, lengthM, fittings, devices },
    readAs: [
      `${name}: ${bore.said}`,
      `${showNumber(lengthM)} m`,
      ...fittings.map(({ fitting, count }) => `${count} × ${fitting}`),
      ...devices.map((device) =>
        device.loss === undefined
          ? `${device.name}, loss not given`
          : `${device.name} ${showNumber(device.loss.headM)} m at ${showNumber(device.loss.atLPerH)} L/h`,
      ),
    ].join(", "),
  };
}

/** A run of pipe, bore after bore: "suction: 2 in, 1 m, entry; riser: 1 1/2 in, 6 m, 4 elbows, exit". */
export function readPipeRun(typed: string, habits: Habits): Read<readonly PipeSegment[]> {
  let count = 0;
  return readParts(typed, EXAMPLE, (text) => {
    count += 1;
    const hasNoName = /^\s*(?:bore|inside|inner|id|pipe|length)\b/i.test(text);
    return readPart(hasNoName ? `: ${text}` : text, EXAMPLE, habits, (part) =>
      segmentOf(part, count === 1 ? "the pipe" : `pipe ${count}`),
    );
  });
}

/** Branches that leave one node: each with the height of its end over the pump's water, and its pipe. */
export function readBranches(typed: string, habits: Habits): Read<readonly Branch[]> {
  return readParts(typed, BRANCHES, (text) =>
    // The name ends where its height begins.
    readPart(
      text.replace(/^([^:=,]*?[^:=,\s]) +(?=(?:height|lift|rises?)\b)/i, "$1: "),
      BRANCHES,
      habits,
      (part) => {
        const name = part.name === "" ? part.refuse(`give the branch a name. Try ${BRANCHES}.`) : part.name;
        const height = part.take(/(?:height|lift|up|rise)s? (?<q>\d.*)/)?.groups?.["q"];
        if (height === undefined)
          return part.refuse(`how high does it end over the pump's water? Try ${BRANCHES}.`);
        const staticHeadM = /^0+(?:\.0+)?$/.test(height) ? as<Metres>(0) : part.metres(height).best;
        const segment = segmentOf(part, name);
        return {
          value: { name, staticHeadM, run: [segment.value] },
          readAs: `${segment.readAs}, ending ${showNumber(staticHeadM)} m up`,
        };
      },
    ),
  );
}
