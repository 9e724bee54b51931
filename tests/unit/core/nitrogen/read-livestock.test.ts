import { describe, expect, it } from "vitest";
import { readLivestock } from "../../../../src/core/nitrogen/read-livestock.ts";
import { readMedia } from "../../../../src/core/nitrogen/read-media.ts";

const animals = (text: string) => {
  const read = readLivestock(text, {});
  if (read.kind !== "read") throw new Error(`${text}: ${JSON.stringify(read)}`);
  return read.value;
};

describe("animals in words", () => {
  it("have a number, a name, and a length or a mass", () => {
    // 1 in = 2.54 cm, 1 lb = 453.59237 g (NIST SP 811).
    expect(animals("2 queen triggerfish 10 in; 1 stingray 2 lb")).toMatchObject([
      { count: 2, body: { kind: "length", lengthCm: { best: 25.4 } } },
      { count: 1, label: "stingray", body: { kind: "mass", massG: { best: 907.18474 } } },
    ]);
  });

  it.each([
    ["brown-marbled grouper 55 cm", 1],
    ["3x queen triggerfish 25 cm each", 3],
    ["2 Balistes vetula 25 cm long", 2],
    ["1 queen triggerfish about 25 cm", 1],
  ])("%s", (text, count) => {
    expect(animals(text)[0]?.count).toBe(count);
  });

  it("are asked about where a name fits several, and each choice reads", () => {
    const asked = readLivestock("1 queen triggerfish 25 cm; 2 grouper 60 cm", {});
    if (asked.kind !== "ask") throw new Error("not asked");
    expect(asked.question).toContain("“grouper”");
    for (const { text } of asked.choices) {
      expect(text).toMatch(/^1 queen triggerfish 25 cm; 2 .*grouper 60 cm$/);
      expect(readLivestock(text, {}).kind, text).toBe("read");
    }
  });

  it.each([
    "",
    "grouper",
    "1 dragon 55 cm",
    "0 grouper 60 cm",
    "1 queen triggerfish 25 L",
    "1 queen triggerfish -5 cm",
  ])("%j is refused with what would work", (text) => {
    const read = readLivestock(text, {});
    expect(read.kind === "unreadable" && read.message).toContain("Try");
  });

  it("at most forty entries", () => {
    expect(readLivestock("1 queen triggerfish 25 cm; ".repeat(41), {}).kind).toBe("unreadable");
  });
});

describe("filter media in words", () => {
  it("have a volume and a material", () => {
    const read = readMedia("60 L ceramic rings; 5 US gal of foam 20 ppi", {});
    // 5 × 3.785411784 = 18.927 L (NIST SP 811).
    expect(read.kind === "read" && read.value.map(({ kind, litres }) => [kind, litres.best])).toEqual([
      ["ceramic rings", 60],
      ["medium foam", expect.closeTo(18.92705892, 6)],
    ]);
  });

  it("are asked about where the material or the gallon is not clear, and each choice reads on", () => {
    for (const text of ["60 L foam", "60 L magic", "5 gal ceramic rings"]) {
      const asked = readMedia(text, {});
      if (asked.kind !== "ask") throw new Error(`not asked: ${text}`);
      for (const choice of asked.choices) expect(readMedia(choice.text, {}).kind, choice.text).toBe("read");
    }
  });

  it.each(["", "foam", "60 foam", "60 kg foam", "-5 L foam"])(
    "%j is refused with what would work",
    (text) => {
      const read = readMedia(text, {});
      expect(read.kind === "unreadable" && read.message).toContain("Try");
    },
  );
});
