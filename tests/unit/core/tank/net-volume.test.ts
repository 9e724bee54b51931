import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Centimetres, type Kilograms, type Litres } from "../../../../src/core/quantity/units.ts";
import type { CautionCode } from "../../../../src/core/result.ts";
import type { Container, VolumeBasis } from "../../../../src/core/tank/container.ts";
import { netVolume } from "../../../../src/core/tank/net-volume.ts";
import { sayCaution, sayRefusal } from "../../../../src/wording/index.ts";

const cm = (value: number) => as<Centimetres>(value);
const litres = (value: number) => exactly(as<Litres>(value));
const kg = (value: number) => exactly(as<Kilograms>(value));

const measured = (value: number): VolumeBasis => ({ kind: "measured fill", litres: litres(value) });
const label = (value: number): VolumeBasis => ({ kind: "label", litres: litres(value) });
const box = (rest: Partial<Extract<VolumeBasis, { kind: "dimensions" }>> = {}): VolumeBasis => ({
  kind: "dimensions",
  shape: { kind: "box", lengthCm: cm(100), widthCm: cm(50), heightCm: cm(60) },
  measured: "inside",
  ...rest,
});
const container = (volume: VolumeBasis, rest: Partial<Container> = {}): Container => ({
  name: "display",
  role: "display",
  volume,
  inSystem: true,
  ...rest,
});

function answered(...containers: Container[]) {
  const answer = netVolume(containers);
  if (answer.kind !== "answer") throw new Error(`refused: ${sayRefusal(answer.reason)}`);
  return answer;
}

function refused(...containers: Container[]) {
  const answer = netVolume(containers);
  if (answer.kind !== "no-answer") throw new Error("answered");
  return answer.reason;
}

describe("a measured fill", () => {
  it("is net as it stands, known to 2 %, and overrides the rock in it", () => {
    const { value, assumptions } = answered(container(measured(500), { rockKg: kg(90) }));
    expect(value.totalL).toEqual({ best: 500, low: 490, high: 510 });
    expect(value.containers[0]?.rockL.best).toBe(0);
    expect(assumptions).toContain("a measured fill given without a range is taken as ± 2 %");
  });

  it("keeps a range that was typed", () => {
    const volume: VolumeBasis = {
      kind: "measured fill",
      litres: between(as<Litres>(495), as<Litres>(500)),
    };
    const { value, assumptions } = answered(container(volume));
    expect(value.totalL.low).toBeCloseTo(495, 9);
    expect(value.totalL.high).toBeCloseTo(500, 9);
    expect(assumptions.join()).not.toContain("± 2 %");
  });
});

describe("dimensions", () => {
  // 100 × 50 × 54 cm = 270 L; to the rim 300 L.
  it("count up to the running level and not to the rim", () => {
    const { value, cautions } = answered(container(box({ runningLevelCm: exactly(cm(54)) })));
    expect(value.totalL).toEqual({ best: 270, low: 270, high: 270 });
    expect(cautions).toEqual([]);
  });

  it("without a level give 80–95 % of the rim's volume, and say what to measure", () => {
    const answer = answered(container(box()));
    expect(answer.value.totalL.low).toBeCloseTo(240, 9);
    expect(answer.value.totalL.high).toBeCloseTo(285, 9);
    expect(answer.driver).toEqual({ input: "water level in display", share: 1 });
    expect(answer.cautions.map((c) => c.code)).toEqual(["running-level-not-said"]);
  });

  it("from outside lose the walls that were measured", () => {
    const { value, cautions } = answered(
      container(box({ measured: "outside", wallCm: cm(1), runningLevelCm: exactly(cm(50)) })),
    );
    expect(value.totalL).toEqual({ best: 235.2, low: 235.2, high: 235.2 }); // 98 × 48 × 50 cm
    expect(cautions).toEqual([]);
  });

  it.each([
    ["outside", "wall-not-said"],
    ["not said", "inside-or-outside-not-said"],
  ] as const)("%s without a wall are a range with a caution", (side, code) => {
    const { value, cautions } = answered(container(box({ measured: side, runningLevelCm: exactly(cm(50)) })));
    expect(value.totalL.low).toBeLessThan(value.totalL.high);
    expect(value.totalL.high).toBeLessThanOrEqual(250); // all of 100 × 50 × 50 cm
    expect(cautions.map((c) => c.code)).toContain(code satisfies CautionCode);
  });

  it("take rock off by a range of densities, wider when it was weighed wet", () => {
    const full = box({ runningLevelCm: exactly(cm(60)) });
    const dry = answered(container(full, { rockKg: kg(56) })).value.containers[0];
    // 56 kg ÷ 2.80, 2.93 and 2.71 kg/L.
    expect(dry?.rockL.best).toBeCloseTo(20, 9);
    expect(dry?.rockL.low).toBeCloseTo(19.11, 2);
    expect(dry?.rockL.high).toBeCloseTo(20.66, 2);
    const wet = answered(container(full, { rockKg: kg(56), rockWeighed: "wet" }));
    expect(wet.value.containers[0]?.rockL.low).toBeLessThan(15);
    expect(wet.cautions.map((c) => c.code)).toEqual(["rock-weighed-wet"]);
  });
});

describe("a label", () => {
  it("is never used silently: 70–95 % of it, with a warning that names the container", () => {
    const { value, cautions } = answered(
      container(measured(500)),
      container(label(100), { name: "settling drum", role: "filter" }),
    );
    const drum = value.containers[1]?.netL;
    expect(drum?.low).toBeCloseTo(70, 9);
    expect(drum?.high).toBeCloseTo(95, 9);
    expect(cautions.map(({ code, level }) => ({ code, level }))).toEqual([
      { code: "volume-from-label", level: "warning" },
    ]);
    expect(cautions.map(sayCaution).join()).toContain("settling drum");
  });

  it("moves together over several drums, as one habit of filling would", () => {
    const drums = [1, 2, 3].map((n) => container(label(100), { name: `drum ${n}`, role: "filter" }));
    const { value, driver } = answered(...drums);
    expect(value.totalL.low).toBeCloseTo(210, 9);
    expect(value.totalL.high).toBeCloseTo(285, 9);
    expect(driver?.input).toBe("how full label-rated containers run");
  });
});

describe("a system", () => {
  it("adds what is in it, and only lists what is not", () => {
    const { value, cautions } = answered(
      container(measured(750)),
      container(measured(250), { name: "sump", role: "pump container" }),
      container(measured(200), { name: "mixing barrel", role: "reservoir", inSystem: false }),
    );
    expect(value.totalL.best).toBe(1000);
    expect(value.displayL?.best).toBe(750);
    expect(value.containers.map((c) => c.share)).toEqual([0.75, 0.25, undefined]);
    expect(cautions).toEqual([]);
  });

  it("keeps two containers of one name apart", () => {
    const { value } = answered(container(measured(100)), container(measured(50)));
    expect(value.containers.map((c) => c.name)).toEqual(["display", "display (2)"]);
    expect(value.totalL.best).toBe(150);
  });

  it("without a display shows no display volume and says why", () => {
    const answer = answered(container(measured(100), { name: "cube", role: "other" }));
    expect(answer.value.displayL).toBeUndefined();
    expect(answer.cautions.map(sayCaution).join()).toContain("cube");
  });
});

describe("refusals", () => {
  it("when nothing is described, or nothing is in the system", () => {
    expect(refused().code).toBe("no-water-in-system");
    expect(sayRefusal(refused(container(measured(200), { inSystem: false })))).toContain("display");
  });

  it("when the water would stand above the rim", () => {
    expect(refused(container(box({ runningLevelCm: exactly(cm(61)) })))).toEqual({
      code: "level-above-rim",
      figures: { container: "display", levelCm: 61, rimCm: 60 },
    });
  });

  it("when rock and sand leave no room", () => {
    const reason = refused(container(label(20), { rockKg: kg(90) }));
    expect(reason.code).toBe("nothing-left-to-hold-water");
    expect(sayRefusal(reason)).toMatch(/17 L.*32\.14 L/); // 20 × 0.85; 90 ÷ 2.8
  });

  it("when the walls leave no inside, or a side has no length", () => {
    expect(refused(container(box({ measured: "outside", wallCm: cm(26) }))).code).toBe(
      "impossible-container",
    );
    const flat = box({ shape: { kind: "box", lengthCm: cm(0), widthCm: cm(1), heightCm: cm(1) } });
    expect(refused(container(flat)).code).toBe("impossible-container");
  });
});
