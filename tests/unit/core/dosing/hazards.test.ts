import { describe, expect, it } from "vitest";
import { mixingHazard, screenForTank, substanceHazard } from "../../../../src/core/dosing/hazards.ts";
import { sayCaution, sayRefusal } from "../../../../src/wording/index.ts";

describe("substanceHazard", () => {
  it.each([
    ["household bleach", ["hypochlorite"]],
    ["Sodium Hypochlorite 12%", ["hypochlorite"]],
    ["white vinegar", ["acid"]],
    ["MURIATIC ACID", ["acid"]],
    ["citric acid", ["acid"]],
    ["ammonia solution", ["ammonia"]],
    ["ammonium chloride", ["ammonia"]],
    ["hydrogen peroxide 3 %", ["peroxide"]],
    ["vodka", ["alcohol"]],
    ["potassium permanganate", ["permanganate", "medicine"]],
    ["formalin", ["formalin", "medicine"]],
    ["chelated copper", ["medicine"]],
    ["oxytetracycline", ["medicine"]],
    ["praziquantel", ["medicine"]],
    ["caustic soda", ["caustic"]],
    ["acetone", ["solvent"]],
    ["sodium thiosulphate", ["sulphite"]],
    ["sodium metabisulfite", ["sulphite"]],
    ["sodium bisulphate", ["acid"]],
    ["fluconazole", ["medicine"]],
    // A medicine stays one when it is run together, shortened or misspelt.
    ["coppersulphate", ["medicine"]],
    ["Cu", ["medicine"]],
    ["CuSO4.5H2O", ["medicine"]],
    ["formaline", ["formalin", "medicine"]],
    ["praziquantal", ["medicine"]],
    ["malachite", ["medicine"]],
    ["methyleneblue", ["medicine"]],
    ["cloroquine phosphate", ["medicine"]],
    ["metronidazol", ["medicine"]],
    ["ich cure", ["medicine"]],
    ["parasite treatment", ["medicine"]],
    ["calcium chloride", []],
    ["potassium iodide", []],
    ["bottled bacteria", []],
    ["magnesium chloride", []],
    ["baking soda", []],
    ["amino acids", []],
  ] as const)("%s", (name, classes) => {
    expect(substanceHazard(name).classes).toEqual(classes);
  });
});

describe("mixingHazard", () => {
  // Which pairs are dangerous: general chemistry as on household safety sheets, from memory.
  it.each([
    ["bleach", "vinegar", /chlorine/],
    ["muriatic acid", "chlorine", /chlorine/],
    ["bleach", "ammonia", /chloramines/],
    ["ammonium chloride", "sodium hypochlorite", /chloramines/],
    ["bleach", "ethanol", /chloroform/],
    ["hydrogen peroxide", "vinegar", /peracids/],
    ["formalin", "potassium permanganate", /violent heat/],
    ["bleach", "hydrogen peroxide", /oxygen/],
    ["hydrogen peroxide", "acetone", /explosive/],
    ["sodium thiosulphate", "vinegar", /sulphur dioxide/],
  ])("refuses %s with %s, whichever is named first", (a, b, result) => {
    for (const answer of [mixingHazard(a, b), mixingHazard(b, a)]) {
      if (answer.kind === "answer") throw new Error("a dangerous pair was let through");
      expect(answer.reason.code).toBe("never-mix");
      expect(sayRefusal(answer.reason)).toMatch(result);
      expect(answer.cautions.map(sayCaution).join(" ")).toMatch(/fresh air/);
    }
  });

  it("lets a pair that is not on the list through, without calling it safe", () => {
    const answer = mixingHazard("baking soda", "calcium chloride");
    expect(answer.kind).toBe("answer");
    expect(answer.cautions.map(({ code }) => code)).toEqual(["hazard-list-not-complete"]);
  });

  it("defers a medicine to a vet", () => {
    const answer = mixingHazard("metronidazole", "salt");
    expect(answer.kind === "no-answer" && answer.reason.code).toBe("medicine-not-dosed");
    expect(answer.kind === "no-answer" && answer.cautions.map(({ code }) => code)).toEqual([
      "medicine-needs-a-vet",
    ]);
  });
});

it("keeps bleach out of a tank", () => {
  const screened = screenForTank("bleach");
  expect("kind" in screened && screened.reason.code).toBe("not-into-a-tank");
});
