import { exactly } from "../quantity/estimate.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate, showNumber } from "../quantity/show.ts";
import { as } from "../quantity/units.ts";
import type { BatteryInputs } from "./battery-runtime.ts";
import { readPart } from "./described-part.ts";
import type { Volts } from "./plant-units.ts";
import type { PowerCutInputs } from "./power-cut.ts";

const BATTERY = "“100 Ah, 12 V, lead-acid” or “50 Ah, 12 V, lithium iron phosphate, direct”";
const AIR = "“4 L/min at 50 cm”";

/** A battery without its load: capacity, voltage, kind, and whether an inverter stands between. */
export function readBattery(typed: string, habits: Habits): Read<Omit<BatteryInputs, "load">> {
  const facts = typed
    .replace(/ (?=\d+(?:\.\d+)? ?v(?:olts?)?\b)/gi, ", ")
    .replace(/(\bv(?:olts?)?) (?=[a-z])/gi, "$1, ")
    .replace(/,+ ?,*/g, ", ");
  return readPart(`battery: ${facts}`, BATTERY, habits, (part) => {
    const ampHours = part.take(/(?<q>\d+(?:\.\d+)?) ?(?:ah|amp[ -]?hours?)/)?.groups?.["q"];
    const volts = part.take(/(?<q>\d+(?:\.\d+)?) ?(?:v|volts?)/)?.groups?.["q"];
    const isLithium = part.has(/(?:lithium|li)(?:[ -].*)?|lifepo4|lfp/);
    const isLead = part.has(/(?:lead|agm|gel|sealed)(?:[ -].*)?/);
    const isDirect = part.has(/direct|dc|no inverter/);
    part.has(/(?:through |with )?(?:an )?inverter/);
    if (ampHours === undefined || volts === undefined)
      return part.refuse(`capacity and voltage are both needed. Try ${BATTERY}.`);
    if (isLithium === isLead)
      return part.refuse(`is it lead-acid or lithium iron phosphate? Try ${BATTERY}.`);
    const kind = isLithium ? "lithium iron phosphate" : "lead-acid";
    const through = isDirect ? "direct" : "inverter";
    return {
      value: { kind, ampHours: exactly(Number(ampHours)), volts: as<Volts>(Number(volts)), through },
      readAs: `${showNumber(Number(ampHours))} Ah, ${showNumber(Number(volts))} V, ${kind}, ${isDirect ? "direct" : "through an inverter"}`,
    };
  });
}

/** A battery air pump: its air, and how deep the stone hangs. */
export function readAirPump(typed: string, habits: Habits): Read<NonNullable<PowerCutInputs["airPump"]>> {
  return readPart(`air: ${typed}`, AIR, habits, (part) => {
    const both = part.take(/(?<q>.+?) (?:at|@)(?: a depth of)? (?<d>.+?)(?: deep)?/);
    const flowText = both?.groups?.["q"];
    const depthText = both?.groups?.["d"];
    if (flowText === undefined || depthText === undefined)
      return part.refuse(`the air it gives and the depth of the stone are both needed. Try ${AIR}.`);
    const perHour = part.flow(flowText);
    const deep = part.mm(depthText);
    const airLPerMin = { best: perHour.best / 60, low: perHour.low / 60, high: perHour.high / 60 };
    const depthCm = { best: deep.best / 10, low: deep.low / 10, high: deep.high / 10 };
    return {
      value: { airLPerMin, depthCm },
      readAs: `${showEstimate(airLPerMin, "L/min")} of air, ${showEstimate(depthCm, "cm")} deep`,
    };
  });
}
