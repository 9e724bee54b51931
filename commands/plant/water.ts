import { defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { keepNotes, noteText } from "./shared.ts";

export default defineCommand({
  name: "water",
  summary: "Note overflow, drains, pipes, pump and filter row of a tank for later sums",
  options: {
    crest: optional(noteText("crest", "Overflow: its length, or its slots")),
    level: optional(noteText("level", "Running level over the crest")),
    "overflow-box": optional(noteText("overflow-box", "Overflow box: water above its standpipe")),
    returns: optional(noteText("returns", "Return outlets under water, or none")),
    drain: optional(noteText("drain", "The way down, piece by piece")),
    standby: optional(noteText("standby", "The open pipe that takes over")),
    pipe: optional(noteText("pipe", "The pipe up, with its fittings")),
    lift: optional(noteText("lift", "Height between the two water surfaces")),
    pump: optional(noteText("pump", "Points of the pump's curve")),
    row: optional(noteText("row", "Filter row in the water's order")),
    inlet: optional(noteText("inlet", "Water above the pump's inlet")),
    reservoir: optional(noteText("reservoir", "Litres of the top-off reservoir")),
    surface: optional(noteText("surface", "The display's water surface")),
    tank: optional(tankOption()),
  },
  examples: [
    "/plant water crest:60 slots of 6 mm, teeth 40 mm level:25 mm overflow-box:10 L returns:nozzle: 20 mm below row:settling box overflows 14 mm; pump box holds the pump, room 120 mm",
    "/plant water pump:0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m; 12000 L/h at 2.4 m lift:1.7 m pipe:2 in, 12 m, 4 elbows, exit",
  ],
  run({ tank, ...notes }, context) {
    return keepNotes(notes, tank, context);
  },
});
