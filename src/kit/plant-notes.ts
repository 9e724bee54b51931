import { readArea } from "../core/plant/read-area.ts";
import { readAirPump, readBattery } from "../core/plant/read-battery.ts";
import { readCrest } from "../core/plant/read-crest.ts";
import { readDrain, readStandby } from "../core/plant/read-drain.ts";
import { readCircuits, readDevices, readPowerPrice, readVolts } from "../core/plant/read-electric.ts";
import { readMasses, readWalls } from "../core/plant/read-load.ts";
import { readPipeRun } from "../core/plant/read-pipe.ts";
import { readPumpCurve } from "../core/plant/read-pump-curve.ts";
import { readReturns } from "../core/plant/read-returns.ts";
import { readRow } from "../core/plant/read-row.ts";
import { readFraction } from "../core/quantity/fraction.ts";
import { readLength } from "../core/quantity/length.ts";
import type { Habits, Read } from "../core/quantity/read.ts";
import { readTemperature } from "../core/quantity/temperature.ts";
import { readVolume } from "../core/quantity/volume.ts";
import type { PlantNote } from "../records/tank.ts";
import { type Option, reading } from "./option.ts";

interface NoteReader<T> {
  /** As it is named among the figures taken along. */
  readonly name: string;
  readonly question: string;
  readonly example: string;
  readonly read: (text: string, habits: Habits) => Read<T>;
}

function note<T>(
  name: string,
  question: string,
  example: string,
  read: NoteReader<T>["read"],
): NoteReader<T> {
  return { name, question, example, read };
}

/** Free words: contacts and valves are the member's own. */
function readWords(text: string): Read<string> {
  return { kind: "read", value: text, readAs: text };
}

function readYesNo(text: string): Read<boolean> {
  const isYes = /^(?:y|yes|true|have one)$/i.test(text);
  if (!isYes && !/^(?:n|no|none|false)$/i.test(text))
    return { kind: "unreadable", message: "Say “yes” or “no”." };
  return { kind: "read", value: isYes, readAs: isYes ? "yes" : "no" };
}

/** Every fact of the plant that may be noted or typed: how it reads, and the one question that asks for it. */
export const PLANT_READERS = {
  crest: note(
    "overflow crest",
    "How long is the overflow's crest, or how many slots has it?",
    "60 slots of 6 mm, teeth 40 mm",
    readCrest,
  ),
  level: note(
    "level over the crest",
    "How far above the overflow's crest (or the foot of its teeth) does the water stand, pumps running?",
    "25 mm",
    readLength,
  ),
  "overflow-box": note(
    "overflow box",
    "How much water stands in the overflow box above its standpipe?",
    "10 L",
    readVolume,
  ),
  returns: note(
    "return outlets",
    "How deep under the surface do the return outlets end? Say “none” if all end above it.",
    "nozzle: 150 mm below, break 20 mm, inspected",
    readReturns,
  ),
  drain: note(
    "drains",
    "What is the way down, piece by piece?",
    "siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry",
    readDrain,
  ),
  standby: note(
    "standby drain",
    "How wide is the open standby pipe, and how high may the water stand over its rim?",
    "2 in, water 30 mm",
    readStandby,
  ),
  pipe: note(
    "return pipe",
    "What pipe goes up to the display, with its fittings?",
    "riser: 2 in, 12 m, 4 elbows, ball valve, exit",
    readPipeRun,
  ),
  lift: note(
    "height lifted",
    "How high is the display's water surface above the pump container's?",
    "1.7 m",
    readLength,
  ),
  pump: note(
    "pump curve",
    "What does the pump's printed curve say? Three points, or its greatest head and flow.",
    "0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m",
    readPumpCurve,
  ),
  row: note(
    "filter row",
    "Which containers does the water pass, in order, the pump's last? Say of each: overflows (how far above its outlet), shares level, or pump; and the room above its water.",
    "settling box overflows 14 mm; pump box holds the pump, room 120 mm",
    readRow,
  ),
  inlet: note(
    "water over the pump's inlet",
    "How much water stands above the pump's inlet in its own chamber?",
    "90 L",
    readVolume,
  ),
  reservoir: note("top-off reservoir", "How much does the top-off reservoir hold?", "70 L", readVolume),
  surface: note("display surface", "How large is the display's water surface?", "260 x 100 cm", readArea),
  room: note("room temperature", "How warm is the room, over the year or now?", "18-26 °C", readTemperature),
  humidity: note("humidity of the room", "How humid is the room's air?", "45 %", readFraction),
  walls: note(
    "walls",
    "What are the walls of, and how thick? It serves the heat sum only.",
    "acrylic 25 mm",
    readWalls,
  ),
  devices: note(
    "devices",
    "Which devices run, with their watts, hours and circuit?",
    "return pump 180 W, circuit A; heater 300 W, 10 h, circuit B",
    readDevices,
  ),
  circuits: note(
    "circuits",
    "Which circuits feed them, and how many amperes is each?",
    "A 20 A, protected; B 15 A, protected",
    readCircuits,
  ),
  volts: note("mains voltage", "What is the mains voltage?", "120 V", readVolts),
  price: note("price of power", "What does a kilowatt-hour cost you?", "0.17", readPowerPrice),
  battery: note(
    "battery",
    "Which battery? Capacity, voltage and kind.",
    "100 Ah, 12 V, lead-acid",
    readBattery,
  ),
  air: note(
    "battery air pump",
    "How much air does it give, and how deep hangs the stone?",
    "4 L/min at 50 cm",
    readAirPump,
  ),
  generator: note("generator", "Is there a generator?", "no", readYesNo),
  footprint: note("footprint", "How much floor does it stand on?", "260 x 100 cm", readArea),
  masses: note(
    "dry masses",
    "What stands there beside water, rock and sand, and how heavy is it?",
    "stand 160 kg; acrylic shell 244 kg",
    readMasses,
  ),
  contacts: note("contacts", "Whom to call?", "Ines 555 0100; vet Dr Alva 555 0142", readWords),
  valves: note(
    "valves",
    "Where are the valves and switches?",
    "main shut-off: left of the pump box; breaker: hall, no. 6",
    readWords,
  ),
} as const satisfies { readonly [K in PlantNote]: NoteReader<unknown> };

/** What a note reads as. */
export type PlantValue<K extends PlantNote> =
  (typeof PLANT_READERS)[K] extends NoteReader<infer T> ? T : never;

/** An option that reads as the note of the same name does. */
export function plantOption<K extends PlantNote>(key: K, description: string): Option<PlantValue<K>, true> {
  return reading(description, PLANT_READERS[key].example, (text, { habits }) => readPlant(key, text, habits));
}

export function readPlant<K extends PlantNote>(key: K, text: string, habits: Habits): Read<PlantValue<K>> {
  const reader: NoteReader<unknown> = PLANT_READERS[key];
  return reader.read(text, habits) as Read<PlantValue<K>>;
}
