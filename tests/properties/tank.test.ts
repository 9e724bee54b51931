import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { as, type Centimetres, type Kilograms, type Litres } from "../../src/core/quantity/units.ts";
import type { Container, Role, Shape, VolumeBasis } from "../../src/core/tank/container.ts";
import { netVolume } from "../../src/core/tank/net-volume.ts";
import { readContainers } from "../../src/core/tank/read-containers.ts";
import { shapeFault } from "../../src/core/tank/shape-volume.ts";
import { showContainer } from "../../src/core/tank/show-container.ts";
import { sayCaution, sayRefusal } from "../../src/wording/index.ts";

const figures = (value: number) => Number(value.toPrecision(6));
const cm = fc.double({ min: 5, max: 400, noNaN: true }).map((value) => as<Centimetres>(figures(value)));
const ranged = <Q extends number>(max: number) =>
  fc
    .tuple(
      ...([0, 1, 2].map(() => fc.double({ min: 0.5, max, noNaN: true })) as [
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
      ]),
    )
    .map((values): Estimate<Q> => {
      const [low = 0, best = 0, high = 0] = values.map(figures).sort((a, b) => a - b) as Q[];
      return { low: low as Q, best: best as Q, high: high as Q };
    });
const estimate = <Q extends number>(max: number) =>
  fc.oneof(
    ranged<Q>(max),
    ranged<Q>(max).map(({ best }) => ({ best, low: best, high: best })),
  );

const shape: fc.Arbitrary<Shape> = fc
  .oneof(
    fc.record({ kind: fc.constant("box" as const), lengthCm: cm, widthCm: cm, heightCm: cm }),
    fc.record({ kind: fc.constant("upright cylinder" as const), diameterCm: cm, heightCm: cm }),
    fc.record({ kind: fc.constant("horizontal drum" as const), diameterCm: cm, lengthCm: cm }),
    fc.record({ kind: fc.constant("hexagon" as const), acrossFlatsCm: cm, heightCm: cm }),
    fc.record({ kind: fc.constant("quarter round" as const), radiusCm: cm, heightCm: cm }),
    fc.record({
      kind: fc.constant("bow front" as const),
      lengthCm: cm,
      endWidthCm: cm,
      bowDepthCm: cm,
      heightCm: cm,
    }),
    fc.record({
      kind: fc.constant("L-shape" as const),
      lengthCm: cm,
      widthCm: cm,
      cutLengthCm: cm,
      cutWidthCm: cm,
      heightCm: cm,
    }),
    fc.record({
      kind: fc.constant("tapered tub" as const),
      bottomLengthCm: cm,
      bottomWidthCm: cm,
      topLengthCm: cm,
      topWidthCm: cm,
      heightCm: cm,
    }),
  )
  .filter((candidate) => shapeFault(candidate) === undefined);

const volume: fc.Arbitrary<VolumeBasis> = fc.oneof(
  estimate<Litres>(9000).map((litres) => ({ kind: "measured fill" as const, litres })),
  estimate<Litres>(9000).map((litres) => ({ kind: "label" as const, litres })),
  fc.record(
    {
      kind: fc.constant("dimensions" as const),
      shape,
      measured: fc.constantFrom("inside" as const, "outside" as const, "not said" as const),
      wallCm: fc.double({ min: 0.3, max: 2, noNaN: true }).map((value) => as<Centimetres>(figures(value))),
      runningLevelCm: estimate<Centimetres>(5),
    },
    { requiredKeys: ["kind", "shape", "measured"] },
  ),
);

const roles: readonly Role[] = ["display", "filter", "algae tank", "pump container", "reservoir", "other"];
const word = fc.stringMatching(/^[a-zé]{2,8}$/).filter((text) => !/^(?:us|uk|imp)$/.test(text));
const container: fc.Arbitrary<Container> = fc
  .record(
    {
      name: fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join(" ")),
      role: fc.constantFrom(...roles),
      volume,
      rockKg: estimate<Kilograms>(900),
      rockWeighed: fc.constantFrom("dry" as const, "wet" as const),
      sandKg: estimate<Kilograms>(900),
      inSystem: fc.boolean(),
    },
    { requiredKeys: ["name", "role", "volume", "inSystem"] },
  )
  .map(({ rockWeighed, ...rest }) =>
    rest.rockKg === undefined || rockWeighed === undefined ? rest : { ...rest, rockWeighed },
  );

describe("a described container", () => {
  it("reads back as itself", () => {
    fc.assert(
      fc.property(container, (original) => {
        const read = readContainers(showContainer(original), {});
        expect(read).toMatchObject({ kind: "read" });
        if (read.kind === "read") expect(read.value).toEqual([original]);
      }),
    );
  });

  it("is said back in a text that reads the same", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(container, { minLength: 1, maxLength: 6, selector: ({ name }) => name }),
        (all) => {
          const first = readContainers(all.map(showContainer).join("; "), {});
          if (first.kind !== "read") throw new Error("did not read");
          expect(readContainers(first.readAs, {})).toEqual(first);
        },
      ),
    );
  });
});

describe("any text at all", () => {
  const noise = fc.oneof(
    fc.string({ unit: "binary", maxLength: 300 }),
    fc
      .array(
        fc.constantFrom(
          "display",
          "3 x",
          "110 L",
          "gal",
          "x",
          "cm",
          "50",
          "(",
          ")",
          ":",
          ";",
          ",",
          "level",
          "rock",
          "sand",
          "%",
          "in system",
          "wall",
          "±",
          "-",
          "1,200",
          "cylinder",
          "'",
          '"',
          "to",
          "measured",
          "💧",
          "\n",
        ),
        { maxLength: 40 },
      )
      .map((pieces) => pieces.join(" ")),
  );

  it("is read, asked about or refused, never thrown on; and choices that are offered can be read", () => {
    fc.assert(
      fc.property(noise, (text) => {
        const read = readContainers(text, {});
        if (read.kind === "ask") {
          expect(read.choices.length).toBeGreaterThan(0);
          for (const choice of read.choices) expect(choice.text).not.toBe(text);
        }
        if (read.kind === "read") expect(readContainers(read.readAs, {}).kind).toBe("read");
      }),
      { numRuns: 500 },
    );
  });

  it.each(["1", "1x", "1 x ", "1 L ", "(", " ", "1.1", "1 to ", "'", "dry "])(
    "of %j over and over is quick",
    (piece) => {
      const before = performance.now();
      readContainers(`tank ${piece.repeat(Math.floor(380 / piece.length))}`, {});
      readContainers(piece.repeat(Math.floor(4000 / piece.length)), {});
      readContainers(`${piece.repeat(Math.floor(300 / piece.length))};`.repeat(10), {});
      expect(performance.now() - before).toBeLessThan(1500);
    },
  );
});

describe("net volume", () => {
  const system = fc.array(container, { minLength: 1, maxLength: 6 });

  it("is the sum of the containers in the system, and stays between its own ends", () => {
    fc.assert(
      fc.property(system, (containers) => {
        const answer = netVolume(containers);
        if (answer.kind === "no-answer") {
          expect(sayRefusal(answer.reason)).not.toMatch(/NaN|undefined/);
          return;
        }
        const { totalL, displayL, containers: nets } = answer.value;
        const added = nets.filter((net) => net.inSystem).reduce((sum, net) => sum + net.netL.best, 0);
        expect(totalL.best).toBeCloseTo(added, 6);
        for (const { low, best, high } of [totalL, ...nets.map((net) => net.netL)]) {
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(best);
          expect(best).toBeLessThanOrEqual(high);
        }
        if (displayL !== undefined) expect(displayL.best).toBeLessThanOrEqual(totalL.best + 1e-9);
        const shares = nets.reduce((sum, net) => sum + (net.share ?? 0), 0);
        expect(shares).toBeCloseTo(1, 9);
        for (const raised of answer.cautions) expect(sayCaution(raised)).not.toMatch(/NaN|undefined/);
        if (containers.some(({ volume }) => volume.kind === "label")) {
          expect(answer.cautions).toContainEqual(
            expect.objectContaining({ code: "volume-from-label", level: "warning" }),
          );
        }
      }),
    );
  });

  it("does not depend on the order of the containers", () => {
    fc.assert(
      fc.property(system, (containers) => {
        const [there, back] = [containers, containers.toReversed()].map((order) => netVolume(order));
        expect(there?.kind).toBe(back?.kind);
        if (there?.kind === "answer" && back?.kind === "answer") {
          expect(back.value.totalL.best).toBeCloseTo(there.value.totalL.best, 6);
          expect(back.value.totalL.high).toBeCloseTo(there.value.totalL.high, 6);
        }
      }),
    );
  });

  it("falls with rock and rises with the water level", () => {
    fc.assert(
      fc.property(
        shape,
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (form, level, extra) => {
          const at = (levelCm: number, rockKg: number): number => {
            const point = as<Centimetres>(levelCm);
            const mass = as<Kilograms>(rockKg);
            const answer = netVolume([
              {
                name: "tank",
                role: "display",
                volume: {
                  kind: "dimensions",
                  shape: form,
                  measured: "inside",
                  runningLevelCm: { best: point, low: point, high: point },
                },
                rockKg: { best: mass, low: mass, high: mass },
                inSystem: true,
              },
            ]);
            return answer.kind === "answer" ? answer.value.totalL.best : 0;
          };
          expect(at(level + extra, 0.01)).toBeGreaterThan(at(level, 0.01));
          expect(at(level, 0.02)).toBeLessThan(at(level, 0.01));
        },
      ),
    );
  });
});
