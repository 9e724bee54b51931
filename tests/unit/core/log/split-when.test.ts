import { describe, expect, it } from "vitest";
import { splitWhen } from "../../../../src/core/log/split-when.ts";

describe("the words that say when", () => {
  it.each([
    ["no3 20 yesterday 9pm", "no3 20", "yesterday 9pm"],
    ["wc 30% today 08:30", "wc 30%", "today 08:30"],
    ["fed 280 g prawn on 3 May", "fed 280 g prawn", "on 3 May"],
    ["skimmer off 2 days ago", "skimmer off", "2 days ago"],
    ["no3 20 2026-05-03 21:00", "no3 20", "2026-05-03 21:00"],
    ["no3 20, 3rd of June 2026 at 7 pm", "no3 20", "3rd of June 2026 at 7 pm"],
    ["dead 1 damsel last night", "dead 1 damsel", "last night"],
    ["sg 1.0255 at 9pm", "sg 1.0255", "at 9pm"],
    ["ca 430, mg 1290 on monday evening", "ca 430, mg 1290", "on monday evening"],
    ["temp 25 21h30", "temp 25", "21h30"],
    ["dosed 30 ml 5 h ago.", "dosed 30 ml", "5 h ago"],
    ["heater on yesterday 9pm", "heater on", "yesterday 9pm"],
    ["heater on 3 May", "heater on", "3 May"],
    ["heater off on 3 May", "heater off", "on 3 May"],
    ["yesterday", "", "yesterday"],
  ])("are cut off %j", (typed, line, when) => {
    expect(splitWhen(typed)).toEqual({ line, when });
  });

  it.each([
    "no3 10",
    "alk 7.40",
    "ph 8.20",
    "temp 25.5",
    "added 1 sun coral",
    "fed 3 May flies",
    "no3 may",
    "",
  ])("are not seen in %j", (typed) => {
    expect(splitWhen(typed)).toEqual({ line: typed });
  });

  it("stay in a note, whose words they are, and are given back all the same", () => {
    expect(splitWhen("ph 8.1, note glass cleaned today")).toEqual({
      line: "ph 8.1, note glass cleaned today",
      when: "today",
    });
  });

  it.each(["on ", "1 ", " , ", "a", "2 days "])(
    "are looked for in linear time: %j over and over",
    (piece) => {
      const before = performance.now();
      splitWhen(piece.repeat(100_000));
      expect(performance.now() - before).toBeLessThan(1000);
    },
  );
});
