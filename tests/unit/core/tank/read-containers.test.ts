import { describe, expect, it } from "vitest";
import type { Habits } from "../../../../src/core/quantity/read.ts";
import type { Container } from "../../../../src/core/tank/container.ts";
import { readContainers } from "../../../../src/core/tank/read-containers.ts";

function read(text: string, habits: Habits = {}): readonly Container[] {
  const result = readContainers(text, habits);
  if (result.kind !== "read") throw new Error(result.kind === "ask" ? result.question : result.message);
  return result.value;
}
const only = (text: string) => {
  const [first, ...rest] = read(text);
  expect(rest).toEqual([]);
  return first as Container;
};
const refusal = (text: string) => {
  const result = readContainers(text, {});
  return result.kind === "unreadable" ? result.message : `${result.kind}!`;
};

describe("a whole system", () => {
  const text =
    "display 220x90x65 cm inside, level 58 cm, rock 120 kg, sand 45 kg; settling drum 95 L measured; 3 x filter drum 95 L label; algae tank 60x40x40 cm to 32 cm; mixing barrel 200 L not in system";

  it("becomes containers with their roles, and copies are numbered", () => {
    expect(read(text).map(({ name, role, inSystem }) => [name, role, inSystem])).toEqual([
      ["display", "display", true],
      ["settling drum", "filter", true],
      ["filter drum 1", "filter", true],
      ["filter drum 2", "filter", true],
      ["filter drum 3", "filter", true],
      ["algae tank", "algae tank", true],
      ["mixing barrel", "reservoir", false],
    ]);
  });

  it("keeps every figure", () => {
    const [display, settling, drum, , , algae] = read(text);
    expect(display).toMatchObject({
      volume: {
        kind: "dimensions",
        shape: { kind: "box", lengthCm: 220, widthCm: 90, heightCm: 65 },
        measured: "inside",
        runningLevelCm: { best: 58, low: 58, high: 58 },
      },
      rockKg: { best: 120 },
      sandKg: { best: 45 },
    });
    expect(settling?.volume).toEqual({ kind: "measured fill", litres: { best: 95, low: 95, high: 95 } });
    expect(drum?.volume.kind).toBe("label");
    expect(algae?.volume).toMatchObject({ measured: "not said", runningLevelCm: { best: 32 } });
  });

  it("is said back, basis and role included", () => {
    const result = readContainers("drum 95 L; sump 60x40x40 cm to 30 cm", {});
    expect(result).toHaveProperty(
      "readAs",
      "drum (filter): 95 L label; sump (pump container): 60 x 40 x 40 cm, level 30 cm",
    );
  });

  it("may stand on lines of its own", () => {
    expect(read("display 300 L measured\n\nsump 90 L measured\n").map(({ name }) => name)).toEqual([
      "display",
      "sump",
    ]);
  });
});

describe("one container", () => {
  it.each([
    ["cube 24x24x24 in", { kind: "box", lengthCm: 60.96, widthCm: 60.96, heightCm: 60.96 }],
    ["tank 4 ft 6 in x 2 ft x 60 cm", { kind: "box", lengthCm: 137.16, widthCm: 60.96, heightCm: 60 }],
    ["drum cylinder 46.5 x 60 cm", { kind: "upright cylinder", diameterCm: 46.5, heightCm: 60 }],
    ["drum dia 46 cm height 60 cm", { kind: "upright cylinder", diameterCm: 46, heightCm: 60 }],
    ["46,5 cm diameter x 60 cm drum", { kind: "upright cylinder", diameterCm: 46.5, heightCm: 60 }],
    ["barrel on its side 58 x 90 cm vat", { kind: "horizontal drum", diameterCm: 58, lengthCm: 90 }],
    ["reef hexagon 70x60 cm", { kind: "hexagon", acrossFlatsCm: 70, heightCm: 60 }],
    ["corner quarter round 80x60 cm", { kind: "quarter round", radiusCm: 80, heightCm: 60 }],
    [
      "reef bow front 120x45x55 cm bow 12 cm",
      { kind: "bow front", lengthCm: 120, endWidthCm: 45, heightCm: 55, bowDepthCm: 12 },
    ],
    [
      "hall L-shape 200x150x60 cm cut 120x90 cm",
      { kind: "L-shape", lengthCm: 200, widthCm: 150, heightCm: 60, cutLengthCm: 120, cutWidthCm: 90 },
    ],
    [
      "vat tapered 80x50x100x70x45 cm",
      {
        kind: "tapered tub",
        bottomLengthCm: 80,
        bottomWidthCm: 50,
        topLengthCm: 100,
        topWidthCm: 70,
        heightCm: 45,
      },
    ],
  ])("%j has its shape", (text, shape) => {
    const { volume } = only(text);
    expect(volume.kind).toBe("dimensions");
    if (volume.kind !== "dimensions") return;
    expect(volume.shape.kind).toBe(shape.kind);
    for (const [side, cm] of Object.entries(shape)) {
      if (typeof cm === "number") expect(volume.shape).toHaveProperty(side, expect.closeTo(cm, 9));
    }
  });

  it.each([
    ["pool 100x50x50 cm outside, wall 1.2 cm, level 44 cm", { wallCm: 1.2, measured: "outside" }],
    ["pool 100x50x50 cm outside 12 mm glass", { wallCm: expect.closeTo(1.2, 9), measured: "outside" }],
    ["pool 100x50x50 cm filled to 40-44 cm", { runningLevelCm: { best: 42, low: 40, high: 44 } }],
    ["pool 100x50x50 cm level 44", { runningLevelCm: { best: 44 } }],
    ["pool 100x50x50 cm 80% full", { runningLevelCm: { best: 40, low: 40, high: 40 } }],
    ["pool 100x50x50 cm inside, 42 cm deep", { runningLevelCm: { best: 42 }, measured: "inside" }],
  ])("%j keeps walls and level", (text, volume) => {
    expect(only(text).volume).toMatchObject(volume);
  });

  it("knows rock and sand in either word order, dry or wet", () => {
    const tank = only("pool 100x50x50 cm, 30 kg wet rock, 12 kg of sand");
    expect(tank).toMatchObject({ rockKg: { best: 30 }, rockWeighed: "wet", sandKg: { best: 12 } });
    expect(only("pool 90 L measured rock 10 lb dry").rockKg?.best).toBeCloseTo(4.5359237, 6);
  });

  // 100 × 50 cm × 4 cm = 20 L of bed; 60 % of it grains (porosity 0.4): 12 L × 2.8 kg/L = 33.6 kg;
  // porosity 0.5 to 0.25 gives 28 to 42 kg.
  it("turns a depth of sand into the mass of its grains", () => {
    expect(only("pool 100x50x50 cm, sand 4 cm deep").sandKg).toEqual({ best: 33.6, low: 28, high: 42 });
  });

  it("takes measured litres over dimensions, and a role said over one guessed", () => {
    const tank = only("drum (display): 100x50x50 cm, 210 L measured");
    expect(tank).toMatchObject({ role: "display", volume: { kind: "measured fill", litres: { best: 210 } } });
  });

  it("standing alone is the display, unless called something else", () => {
    expect(only("rock pool 300 L label").role).toBe("display");
    expect(only("rock pool (other): 300 L label").role).toBe("other");
  });
});

describe("doubtful pieces are asked about", () => {
  it("with choices that replace the whole text and read", () => {
    const asked = readContainers("display 55 gal; sump 20 L measured", {});
    expect(asked.kind).toBe("ask");
    if (asked.kind !== "ask") return;
    expect(asked.choices.map(({ text }) => text)).toEqual([
      "display 55 US gal; sump 20 L measured",
      "display 55 imp gal; sump 20 L measured",
    ]);
    for (const { text } of asked.choices) expect(read(text)).toHaveLength(2);
  });

  it.each(["display 120x50x50", "display level 44, 120x50x50 in", "drum 1 200 L", "display 1,200 L"])(
    "%j",
    (text) => {
      const asked = readContainers(text, {});
      expect(asked.kind).toBe("ask");
      if (asked.kind === "ask") for (const choice of asked.choices) read(choice.text);
    },
  );

  it("but not when the habit is known", () => {
    const { volume } = read("display 10 gal label", { gallon: "imperial" })[0] as Container;
    expect(volume).toMatchObject({ litres: { best: 45.4609 } });
  });
});

describe("what cannot be read is named", () => {
  it.each([
    ["display 100x50x50 cm; sump 30 L lots of rock", "lots of rock"],
    ["display 100x50x50 cm; sump", "“sump” has no volume"],
    ["display 100x50 cm", "cylinder"],
    ["display 100x50x50 cm level 62 cm", "above the rim"],
    ["display 90 L 95 L", "two volumes"],
    ["drum 90 L level 40 cm", "with dimensions only"],
    ["drum 0 L", "nothing"],
    ["drum -5 L", "below zero"],
    ["99 x drum 5 L", "copies"],
    ["90 L", "no name"],
    ["drum (boat): 3 L", "boat"],
    ["drum 5 L; Drum 6 L", "Two containers"],
    ["", "no container"],
    [";;;", "no container"],
    ["a 1 L;".repeat(700), "characters long"],
    [Array.from({ length: 61 }, (_, i) => `d${i} 1 L`).join(";"), "more than 60"],
  ])("%.60j", (text, part) => {
    expect(refusal(text)).toContain(part);
  });
});
