import { defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { keepNotes, noteText } from "./shared.ts";

export default defineCommand({
  name: "people",
  summary: "Note whom to call and where valves and switches are, for the emergency sheet",
  options: {
    contacts: optional(noteText("contacts", "Names and numbers, parted by “;”")),
    valves: optional(noteText("valves", "Valves, switches, breakers and where they are")),
    tank: optional(tankOption()),
  },
  examples: [
    "/plant people contacts:Ines 555 0100; vet Dr Alva 555 0142 valves:main shut-off: left of the pump box; breaker: hall, no. 6",
  ],
  run({ tank, ...notes }, context) {
    return keepNotes(notes, tank, context);
  },
});
