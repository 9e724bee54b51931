import { describe, expect, it } from "vitest";
import type { TrainBox } from "../../../../src/core/nitrogen/filter-train-sum.ts";
import { readTrain } from "../../../../src/core/nitrogen/read-train.ts";

function boxes(text: string): readonly TrainBox[] {
  const read = readTrain(text, {});
  if (read.kind !== "read") throw new Error(`not read: ${JSON.stringify(read)}`);
  return read.value;
}

function only(text: string): TrainBox {
  const [box, ...others] = boxes(text);
  if (box === undefined || others.length > 0) throw new Error(`not one box: ${text}`);
  return box;
}

describe("a filter train in words", () => {
  it.each([
    ["settling box 150 L", "solids"],
    ["filter sock 12 L", "solids"],
    ["skimmer 60 L", "skimmer"],
    ["refugium 200 L", "algae"],
    ["carbon reactor 8 L", "chemical"],
    ["drum 110 L low oxygen", "low oxygen"],
    ["drum 110 L with 60 L ceramic rings", "nitrifying"],
    ["drum 110 L", "other"],
  ] as const)("%s is there for: %s", (text, purpose) => {
    expect(only(text).purpose).toBe(purpose);
  });

  it("reads what is in a box and how it is fed", () => {
    const box = only("deep box 110 L low oxygen with 40 L sintered media, side stream 20 L/h, dirt 2 g/day");
    expect(box.waterL.best).toBe(110);
    expect(box.media?.kind).toBe("sintered media");
    expect(box.media?.litres.best).toBe(40);
    expect(box.wasteDemand?.best).toBeCloseTo(2, 9);
    expect(box.path.kind === "side stream" && box.path.flow.best).toBeCloseTo(20, 9);
    expect(box.label).toBe("deep box low oxygen");
  });

  it("reads a by-pass, air and several boxes alike, in order and with names of their own", () => {
    const train = boxes("sock 20 L, 30 % bypass; 2 x drum 110 L aerated -> drum 110 L not aerated");
    expect(train.map(({ label }) => label)).toEqual(["sock", "drum 1", "drum 2", "drum 3"]);
    expect(train.map(({ isAerated }) => isAerated)).toEqual([false, true, true, false]);
    const [sock] = train;
    expect(sock?.path.kind === "main" && sock.path.bypass.best).toBeCloseTo(0.3, 9);
  });

  it("keeps the rest of the list when one part is asked about", () => {
    const read = readTrain("settling box 150 L; drum 30 gal; skimmer 60 L", {});
    expect(read.kind === "ask" && read.choices.map(({ text }) => text)).toEqual([
      "settling box 150 L; drum 30 US gal; skimmer 60 L",
      "settling box 150 L; drum 30 imp gal; skimmer 60 L",
    ]);
  });

  it.each([
    "",
    ";",
    "drum",
    "drum -5 L",
    "drum 110 L, side stream",
    "0 x drum 110 L",
    "drum 110 L with 5 L moon dust",
  ])("does not guess at %j", (text) => {
    expect(readTrain(text, {}).kind).not.toBe("read");
  });
});
