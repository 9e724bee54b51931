import { defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { keepNotes, noteText } from "./shared.ts";

export default defineCommand({
  name: "room",
  summary: "Note room, power, battery and floor of a tank for later sums",
  options: {
    room: optional(noteText("room", "Room temperature, as a range over the year")),
    humidity: optional(noteText("humidity", "Humidity of the room's air")),
    walls: optional(noteText("walls", "Material and thickness, for heat only")),
    devices: optional(noteText("devices", "Devices: watts, hours, circuit")),
    circuits: optional(noteText("circuits", "Circuits: amperes, protected or not")),
    volts: optional(noteText("volts", "Mains voltage")),
    price: optional(noteText("price", "Price of a kilowatt-hour")),
    battery: optional(noteText("battery", "Battery: Ah, V, kind")),
    air: optional(noteText("air", "Battery air pump: air and depth")),
    generator: optional(noteText("generator", "A generator: yes or no")),
    footprint: optional(noteText("footprint", "Floor it stands on")),
    masses: optional(noteText("masses", "Stand, shell and all else that weighs")),
    tank: optional(tankOption()),
  },
  examples: [
    "/plant room room:18-26 °C humidity:45 % walls:acrylic 25 mm devices:return pump 180 W, circuit A; heater 300 W, 10 h, circuit B circuits:A 20 A, protected; B 15 A, protected volts:120 V price:0.17",
  ],
  run({ tank, ...notes }, context) {
    return keepNotes(notes, tank, context);
  },
});
