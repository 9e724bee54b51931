import { describe, expect, it } from "vitest";
import { memberId, openClub, textOf } from "../support/club.ts";

const INES = memberId("ines");

describe("/minerals raise", () => {
  it("weighs out the salt with its bound water", async () => {
    const club = openClub();
    // Standard atomic weights, worked by hand: 20 mg/L × 2700 L × 147.015/40.078 = 198.08 g.
    const calcium = await club.ask(
      "/minerals raise mineral:calcium now:400 mg/L to:420 mg/L salt:calcium chloride dihydrate volume:2700 L",
    );
    expect(calcium.headline).toBe("198 g of calcium chloride dihydrate");
    // 1 dKH is 10/28.0387 meq/L; × 84.007 mg × 2700 L = 80.895 g.
    const alkalinity = await club.ask(
      "/minerals raise mineral:alkalinity now:7 dKH to:8 dKH salt:sodium bicarbonate volume:2700 L",
    );
    expect(alkalinity.headline).toBe("80.9 g of sodium bicarbonate");
    // 50 mg/L × 2700 L × 203.303/24.305 = 1129.2 g, so 150 mg/L takes three days of that (common practice: 50 a day).
    const magnesium = await club.ask(
      "/minerals raise mineral:magnesium now:1200 mg/L to:1350 mg/L salt:magnesium chloride hexahydrate volume:2700 L",
    );
    expect(magnesium.headline).toBe("3.39 kg of magnesium chloride hexahydrate");
    expect(magnesium.body[0]).toContain("over 3 days: 1.13 kg a day");
  });

  it("doses a stock: 100 g of the dry salt in a litre", async () => {
    const reply = await openClub().ask(
      "/minerals raise mineral:alkalinity now:7 dKH to:8 dKH salt:sodium carbonate, dry stock:100 g in 1 L doses:4 volume:2700 L",
    );
    // 10/28.0387 meq/L × 52.994 mg × 2700 L = 51.03 g, in 100 g/L: 0.510 L, a quarter each time.
    expect(reply.headline).toBe("510 mL of stock");
    expect(textOf(reply)).toContain("In 4 doses a day, each 128 mL.");
  });

  it("asks which salt it is, offering only those that raise the mineral", async () => {
    const club = openClub();
    const asked = await club.say("/minerals raise mineral:calcium now:400 mg/L to:420 mg/L volume:2700 L");
    expect(asked.kind === "question" && asked.choices.map(({ label }) => label)).toEqual([
      "calcium chloride, dry",
      "calcium chloride dihydrate",
    ]);
    // 20 × 2700 × 110.984/40.078 = 149.54 g.
    const reply = await club.pick("calcium chloride, dry");
    expect(reply.kind === "reply" && reply.headline).toBe("150 g of calcium chloride, dry");
  });

  it("takes the level from the log, and holds back while there is ammonia", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm");
    const [tank] = club.store.records.tanks.own(INES);
    const reading = (parameter: string, value: number) => ({
      parameter,
      best: value,
      low: value,
      high: value,
      typed: String(value),
      readAs: String(value),
      at: "2026-03-04T08:00:00.000Z",
    });
    club.store.records.log.add({
      owner: INES,
      tankId: tank?.id ?? 0,
      line: "alk 2.5, ammonia 0.5",
      readings: [reading("alkalinity", 2.5), reading("ammonia", 0.5)],
      events: [],
      now: "2026-03-04T08:00:00.000Z",
    });
    const reply = await club.ask("/minerals raise mineral:alkalinity to:8 dKH salt:sodium bicarbonate");
    // 2.5 meq/L is 7.01 dKH (× 2.80387); 0.990 dKH × 29.961 mg × 1200 L = 35.6 g.
    expect(reply.headline).toBe("35.6 g of sodium bicarbonate");
    expect(textOf(reply)).toContain("There is ammonia in the water");
    expect(textOf(reply)).toContain("alkalinity 2.5 meq/L (Lagoon, logged 4 hours ago)");
  });

  it("does not dose where nothing is missing, nor take one mineral's unit for another's", async () => {
    const club = openClub();
    const full = await club.ask(
      "/minerals raise mineral:calcium now:430 mg/L to:420 mg/L salt:calcium chloride dihydrate volume:2700 L",
    );
    expect(full.ok).toBe(false);
    expect(full.body[0]).toContain("Do not dose");
    const wrong = await club.say("/minerals raise mineral:calcium now:400 mg/L to:8 dKH volume:2700 L");
    expect(textOf(wrong)).toContain("counts calcium in mg/L");
    for (const level of ["-5 mg/L", "1e400 mg/L", "; rm -rf /", "420 mg/L of arsenic"]) {
      const odd = await club.say(
        `/minerals raise mineral:calcium now:400 mg/L to:${level} salt:calcium chloride dihydrate volume:2700 L`,
      );
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/minerals co2", () => {
  it("finds the carbon dioxide behind a pH", async () => {
    const reply = await openClub().ask(
      "/minerals co2 alkalinity:2.3537 meq/L ph:8.1 measured:meter, total scale temperature:25 °C salinity:35 ppt",
    );
    // 2300 µmol/kg × 1.02334 kg/L (EOS-80 density at S 35, 25 °C, UNESCO 1983) = 2.3537 meq/L; there pH 8.1 on the
    // total scale is 339 µatm by the reference library PyCO2SYS 1.8.3 (Lueker, Dickson, Uppström), as fugacity;
    // pressure is 0.3 % more.
    expect(reply.body[0]).toMatch(/^The water holds carbon dioxide for (339|340) µatm/);
    // Same library: at 2300 µmol/kg and a fugacity of 420 µatm the pH is 8.0247. Air's 420 µatm is a pressure, 0.3 % more
    // than its fugacity: log₁₀ 1.003 = 0.0013 less acid, so 8.026.
    expect(reply.body[1]).toContain("pH 8.03");
    expect(reply.headline).toBe("Alkalinity is used up, carbon dioxide in order");
  });

  it("sends to the window, not to the buffer, and asks for what is missing", async () => {
    const club = openClub();
    const asked = await club.say(
      "/minerals co2 ph:7.8 measured:meter, ordinary buffers temperature:25 °C salinity:35 ppt",
    );
    expect(textOf(asked)).toContain("What is the alkalinity?");
    const reply = await club.fill("8 dKH");
    expect(textOf(reply)).toContain("Let fresh air in and aerate; do not add buffer");
  });

  it("says no to fresh water and to a pH of battery acid", async () => {
    const club = openClub();
    const fresh = await club.ask("/minerals co2 alkalinity:8 dKH ph:7.8 temperature:25 °C salinity:0 ppt");
    expect(fresh.ok).toBe(false);
    expect(fresh.body[0]).toContain("This sum is for sea water");
    const acid = await club.ask("/minerals co2 alkalinity:8 dKH ph:0 temperature:25 °C salinity:35 ppt");
    expect(acid.ok).toBe(false);
  });
});

describe("/minerals feeding", () => {
  it("counts one equivalent per mole of food nitrogen", async () => {
    const reply = await openClub().ask("/minerals feeding food:120 g prawn daily volume:2700 L");
    // 120 g × 0.168 / 6.25 × 0.85 / 14.0067 / 2700 L × 2.8039 dKH per meq × 7 days = 1.423 dKH (the table's prawn: 13.6 to 20 % protein, so 16.8; charge balance,
    // Wolf-Gladrow et al. 2007).
    expect(reply.headline).toMatch(/^1\.42\d? dKH \(.*\) a week$/);
  });

  it("tells where water changes alone would hold it, and asks for the rest of a routine", async () => {
    const club = openClub();
    const asked = await club.say(
      "/minerals feeding food:120 g prawn daily volume:2700 L change:30 % every:10 days",
    );
    expect(textOf(asked)).toContain("alkalinity of the new water");
    const reply = await club.fill("9 dKH");
    // Geometric series: 9 − 10 days × 0.2033 dKH / 0.3 = 2.22.
    expect(textOf(reply)).toContain("With these water changes alone it settles at 2.2");
    const nothing = await club.say("/minerals feeding volume:2700 L");
    expect(textOf(nothing)).toContain("What is fed, how much and how often?");
  });

  it("asks what a label's protein is meant for, and takes no nonsense", async () => {
    const club = openClub();
    const asked = await club.say("/minerals feeding food:120 g flake 18 % protein daily volume:2700 L");
    expect(textOf(asked)).toContain("or of its dry matter?");
    const reply = await club.pick(1);
    // As it goes in: 120 g × 0.18 / 6.25 × 0.85, one equivalent per mole: 0.2178 dKH a day (charge balance), × 7.
    expect(reply.kind === "reply" && reply.headline).toMatch(/^1\.52?\d? dKH \(/);
    const odd = await club.say("/minerals feeding food:−1e9 g %n%s daily volume:2700 L");
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
  });
});
