import type { PumpOffFlood } from "../../src/core/plant/pump-off-flood.ts";
import type { SystemSheet } from "../../src/core/plant/system-sheet.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { sayHours } from "../../src/kit/plant-words.ts";
import type { SystemSpec } from "../../src/kit/system-spec.ts";

type Fact = SystemSpec["facts"][number];

/** The figures of a system, one line each: what is unknown says so. */
export function sheetFacts(sheet: SystemSheet): readonly Fact[] {
  const { net, residence, flood, outage, floor, running } = sheet;
  const fact = (name: string, value: string | undefined, isAlarming = false): Fact => ({
    name,
    value: value ?? "not known yet",
    isAlarming,
  });
  return [
    fact("water in all", showEstimate(net.totalL, "L", { significant: 3 })),
    fact(
      "turnover",
      residence && showEstimate(residence.systemTurnoverPerHour, "times an hour", { significant: 2 }),
    ),
    fact("once around", residence && showEstimate(residence.totalMinutes, "min", { significant: 2 })),
    fact(
      "pump off",
      flood && sayVerdict(flood.pumpOff.verdict),
      flood !== undefined && flood.pumpOff.verdict.outcome !== "fits",
    ),
    fact("power cut, oxygen alarm", outage && sayHours(outage.still.toAlarmH)),
    fact("power cut, emergency", outage && sayHours(outage.still.toEmergencyH)),
    fact("display to the brim", floor && showEstimate(floor.massKg, "kg", { significant: 3 })),
    fact("on its floor", floor && showEstimate(floor.psf, "psf", { significant: 3 })),
    fact("power, mean", running && showEstimate(running.meanW, "W", { significant: 3 })),
    fact(
      "largest spill",
      flood?.spill &&
        `${showEstimate(flood.spill.litres, "L", { significant: 3 })} at ${flood.spill.container}`,
    ),
  ];
}

/** "41 mm left in pump box", or by how much it runs over. */
function sayVerdict({ outcome, container, leftMm }: PumpOffFlood["verdict"]): string {
  return outcome === "floods"
    ? `${container} over by ${showEstimate(
        mapEstimate(leftMm, (mm) => -mm),
        "mm",
        { significant: 2 },
      )}`
    : `${outcome === "may flood" ? "may flood: " : ""}${showEstimate(leftMm, "mm", { significant: 2 })} left in ${container}`;
}
