import type { MillilitresPerMinute } from "../core/dosing/dosing-pump.ts";
import { type ConcentrationEntry, readConcentration } from "../core/quantity/concentration.ts";
import { readCount } from "../core/quantity/count.ts";
import { type Estimate, mapEstimate } from "../core/quantity/estimate.ts";
import { readFlow } from "../core/quantity/flow.ts";
import { readFraction } from "../core/quantity/fraction.ts";
import { readLength } from "../core/quantity/length.ts";
import { readMass } from "../core/quantity/mass.ts";
import { readPH } from "../core/quantity/ph.ts";
import { readPlainNumber } from "../core/quantity/plain-number.ts";
import type { Habits, Read } from "../core/quantity/read.ts";
import type { Measured } from "../core/quantity/reader.ts";
import { readSalinity, type SalinityEntry } from "../core/quantity/salinity.ts";
import { readSpan } from "../core/quantity/span.ts";
import { type SuggestedKind, suggestUnits } from "../core/quantity/suggest.ts";
import { readTemperature } from "../core/quantity/temperature.ts";
import {
  as,
  type Centimetres,
  type DegreesC,
  type Fraction,
  type Hours,
  type Kilograms,
  type LitresPerHour,
  type PH,
} from "../core/quantity/units.ts";
import { readVolume, type VolumeEntry } from "../core/quantity/volume.ts";
import { type Option, reading } from "./option.ts";

/** An option for one kind of quantity: the core reads it by the member's habits. */
function quantity<T>(
  kind: SuggestedKind | undefined,
  description: string,
  example: string,
  read: (text: string, habits: Habits) => Read<T>,
): Option<T, true> {
  return reading(
    description,
    example,
    (text, { habits }) => read(text, habits),
    kind === undefined ? undefined : (typed) => suggestUnits(kind, typed),
  );
}

export const volume = (description: string, example = "200 L"): Option<VolumeEntry, true> =>
  quantity("volume", description, example, readVolume);

export const mass = (description: string, example = "4.1 kg"): Option<Measured<Kilograms>, true> =>
  quantity("mass", description, example, readMass);

export const length = (description: string, example = "60 cm"): Option<Measured<Centimetres>, true> =>
  quantity("length", description, example, readLength);

export const temperature = (description: string, example = "25 °C"): Option<Measured<DegreesC>, true> =>
  quantity("temperature", description, example, readTemperature);

export const flow = (description: string, example = "3000 L/h"): Option<Measured<LitresPerHour>, true> =>
  quantity("flow", description, example, readFlow);

export const span = (description: string, example = "10 days"): Option<Measured<Hours>, true> =>
  quantity("span", description, example, readSpan);

export const salinity = (description: string, example = "35 ppt"): Option<SalinityEntry, true> =>
  quantity("salinity", description, example, readSalinity);

export const fraction = (description: string, example = "30 %"): Option<Estimate<Fraction>, true> =>
  quantity(undefined, description, example, bare(readFraction));

/** A share of one as the number before the per cent sign. */
export const percent = (description: string, example = "40 %"): Option<Estimate, true> =>
  quantity(undefined, description, example, (text, habits) =>
    mapRead(readFraction(text, habits), ({ estimate }) => mapEstimate(estimate, (share) => share * 100)),
  );

export const count = (description: string, example = "3"): Option<Estimate, true> =>
  quantity(undefined, description, example, bare(readCount));

export const plainNumber = (description: string, example = "8.2"): Option<Estimate, true> =>
  quantity(undefined, description, example, bare(readPlainNumber));

export const ph = (description: string, example = "8.1"): Option<Estimate<PH>, true> =>
  quantity(undefined, description, example, bare(readPH));

/** mg/L of whatever is meant. */
export const concentration = (description: string, example = "20 mg/L"): Option<ConcentrationEntry, true> =>
  quantity("concentration", description, example, (text, habits) => readConcentration(text, habits));

/** The flow of a dosing pump. */
export const doserFlow = (
  description: string,
  example = "1.5 mL/min",
): Option<Estimate<MillilitresPerMinute>, true> =>
  quantity("flow", description, example, (text, habits) =>
    mapRead(readFlow(text, habits), ({ estimate }) =>
      mapEstimate(estimate, (litresPerHour) => as<MillilitresPerMinute>((litresPerHour * 1000) / 60)),
    ),
  );

/** Where the unit that was typed is of no interest. */
function bare<Q extends number>(read: (text: string, habits: Habits) => Read<Measured<Q>>) {
  return (text: string, habits: Habits): Read<Estimate<Q>> =>
    mapRead(read(text, habits), ({ estimate }) => estimate);
}

function mapRead<A, B>(read: Read<A>, map: (value: A) => B): Read<B> {
  return read.kind === "read" ? { ...read, value: map(read.value) } : read;
}
