import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type PracticalSalinity, type SpecificGravity } from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { CONDUCTIVITY_FITTED } from "./conductivity.ts";
import { DENSITY_FITTED } from "./density.ts";
import { figure } from "./figure.ts";
import { ACRYLIC_EXPANSION, GLASS_EXPANSION, type PerDegreeC } from "./hydrometer.ts";
import { BRINE_DOUBT, type Instrument, ruleFor } from "./instruments.ts";
import { specificGravity } from "./specific-gravity.ts";
import {
  type Checked,
  cut,
  firstNotCredible,
  fittedRange,
  keptPossible,
  type Limits,
  TEMPERATURE,
} from "./usable.ts";

export interface ReadSalinity {
  readonly salinity: Estimate<PracticalSalinity>;
  /** What a correct hydrometer for 25/25 °C would show. */
  readonly gravity25at25: Estimate<SpecificGravity>;
}

const GRAVITY: Limits = { unit: "SG", min: 0.98, max: 1.1 };
const CONDUCTIVITY: Limits = { unit: "mS/cm", min: 0, max: 200 };
const BRINE_SCALE: Limits = { unit: "ppt", min: 0, max: 42 };
const PERCENT_PER_C: Limits = { unit: "% per °C", min: 0, max: 5 };
const AT_25 = exactly(as<DegreesC>(25));

/** The salinity behind a reading, with the instrument's own temperature effects taken out. */
export function instrumentReading(instrument: Instrument): Answer<ReadSalinity> | NoAnswer {
  const sample = instrument.kind === "refractometer" ? AT_25 : instrument.sample;
  const unusable = firstNotCredible([
    ["reading", instrument.reading, limitsOf(instrument)],
    ["sample temperature", sample, TEMPERATURE],
    ...calibrationChecks(instrument),
  ]);
  if (unusable !== undefined) return unusable;
  const { compute, method, working, constants, sources, assumptions, cautions } = ruleFor(instrument);

  const { estimates, drivers } = propagate(
    {
      reading: cut<number>(instrument.reading, limitsOf(instrument)),
      "sample temperature": cut(sample, TEMPERATURE),
      "expansion of the float": expansionOf(instrument),
      "offset of the scale":
        instrument.kind === "refractometer" && instrument.scale === "table salt"
          ? between(-BRINE_DOUBT, BRINE_DOUBT)
          : exactly(0),
    },
    (v) => {
      const salinity = orNone(() =>
        compute(v.reading, v["sample temperature"], v["expansion of the float"], v["offset of the scale"]),
      );
      const gravity = orNone(() => specificGravity(salinity, AT_25.best, AT_25.best));
      return { salinity, gravity25at25: gravity };
    },
  );
  if (Number.isNaN(estimates.salinity.best)) {
    const { unit } = limitsOf(instrument);
    return noAnswer("no-such-seawater", { reading: instrument.reading.best, unit });
  }
  const { salinity } = keptPossible(estimates);
  const fitted =
    instrument.kind === "conductivity meter"
      ? { salinity: { min: 0, max: 42 }, temperatureC: CONDUCTIVITY_FITTED.temperatureC }
      : DENSITY_FITTED;

  return {
    kind: "answer",
    value: keptPossible(estimates),
    method,
    working: [...working, `practical salinity = ${figure(salinity.best)}`],
    constants,
    sources: [...sources, "jcgm-100-2008"],
    assumptions,
    cautions: [
      ...cautions(salinity.best),
      ...fittedRange("salinity", salinity, "ppt", fitted.salinity),
      ...fittedRange("sample temperature", sample, "°C", fitted.temperatureC),
    ],
    driver: drivers.salinity,
  };
}

/** No figure where an equation has none. */
function orNone<Q extends number>(compute: () => Q): Q {
  try {
    return compute();
  } catch (error) {
    if (error instanceof RangeError) return Number.NaN as Q;
    throw error;
  }
}

function limitsOf(instrument: Instrument): Limits {
  if (instrument.kind === "hydrometer") return GRAVITY;
  return instrument.kind === "conductivity meter" ? CONDUCTIVITY : BRINE_SCALE;
}

function calibrationChecks(instrument: Instrument): readonly Checked[] {
  if (instrument.kind === "hydrometer") {
    return [
      ["calibration temperature", exactly(instrument.calibrationC), TEMPERATURE],
      ["reference temperature", exactly(instrument.referenceC), TEMPERATURE],
    ];
  }
  return instrument.kind === "conductivity meter" && instrument.display.kind === "at 25 °C, linear"
    ? [["compensation", exactly(instrument.display.percentPerC), PERCENT_PER_C]]
    : [];
}

function expansionOf(instrument: Instrument): Estimate<PerDegreeC> {
  if (instrument.kind !== "hydrometer") return exactly(GLASS_EXPANSION);
  if (instrument.material === "acrylic") return exactly(ACRYLIC_EXPANSION);
  return instrument.material === "glass"
    ? exactly(GLASS_EXPANSION)
    : between(GLASS_EXPANSION, ACRYLIC_EXPANSION, GLASS_EXPANSION);
}
