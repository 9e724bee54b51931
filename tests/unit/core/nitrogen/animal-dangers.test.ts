import { expect, it } from "vitest";
import { animalDangers } from "../../../../src/core/nitrogen/animal-dangers.ts";
import { readLivestock } from "../../../../src/core/nitrogen/read-livestock.ts";
import { sayCaution } from "../../../../src/wording/index.ts";

function dangersOf(typed: string) {
  const read = readLivestock(typed, {});
  if (read.kind !== "read") throw new Error(`${typed} did not read`);
  return animalDangers(read.value);
}

// Which animals hurt the hand: common practice, from memory.
it.each([
  ["1 lionfish 20 cm", ["animal-stings"]],
  ["1 stingray 4 kg", ["animal-stings"]],
  ["1 foxface 300 g", ["animal-stings"]],
  ["1 queen triggerfish 25 cm", ["animal-wounds"]],
  ["1 black moray 90 cm; 2 stonefish 1 kg", ["animal-stings", "animal-wounds"]],
  ["2 pink anemonefish 8 cm", []],
  ["1 moon wrasse 15 cm", []],
])("%s", (typed, codes) => {
  expect(dangersOf(typed).map(({ code }) => code)).toEqual(codes);
});

it("says the venom first, in words that name the animal and the doctor", () => {
  const [first] = dangersOf("2 pink anemonefish 8 cm; 1 lionfish 20 cm");
  expect(first?.level).toBe("danger");
  expect(first === undefined ? "" : sayCaution(first)).toMatch(/^Venom \(lionfish\).*doctor/);
});
