import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const FINE = "today:all runs, fish eat";

describe("/carbon ramp", () => {
  it("starts small and adds a step a week", async () => {
    const reply = await openClub().ask(`/carbon ramp strength:10 % route:open water ${FINE} volume:2700 L`);
    // Common practice, no source: 0.1 mL of 40 % alcohol per 100 L and day, so 2.7 mL here, or 10.8 mL of 10 %.
    expect(reply.headline).toBe("Start with 10.8 mL a day of the 10 % mix");
    const last = reply.table?.rows.at(-1) ?? [];
    // Week 6: 64.8 mL × 0.1 × 0.7893 g/mL = 5.115 g of ethanol; an eighth of it × 2.084 × (1 − 0.67) / 2700 L.
    expect(last).toEqual(["6", "64.8 mL", "8.1 mL", "0.16", "0.49"]);
    expect(textOf(reply)).toContain("Stop at once if the water clouds");
  });

  it("asks first whether all runs, and then goes no further on a bad day", async () => {
    const club = openClub();
    for (const [today, why] of [
      ["pumps off", "the pumps are off"],
      ["aeration off", "the aeration is off"],
      ["fish not eating", "fish do not eat"],
    ] as const) {
      const asked = await club.say("/carbon ramp strength:10 % volume:2700 L");
      expect(textOf(asked)).toContain("do pumps, aeration and skimmer all run today");
      const reply = await club.pick(today);
      expect(reply.kind === "reply" && reply.ok).toBe(false);
      expect(textOf(reply)).toContain(why);
    }
  });

  it("refuses denatured alcohol and a plan of a thousand weeks", async () => {
    const club = openClub();
    const denatured = await club.ask(
      `/carbon ramp strength:10 % route:open water ${FINE} alcohol:denatured volume:2700 L`,
    );
    expect(denatured.body[0]).toContain("Not with denatured alcohol");
    const long = await club.ask(
      `/carbon ramp strength:10 % weeks:1000 route:open water ${FINE} volume:2700 L`,
    );
    expect(long.ok).toBe(false);
    const mad = await club.say(`/carbon ramp strength:1e9 % route:open water ${FINE} volume:2700 L`);
    expect(mad.kind === "question" || !mad.ok).toBe(true);
  });
});

describe("/carbon dose-check", () => {
  it("refuses a dose that takes too much oxygen at once, and says how to split it", async () => {
    const reply = await openClub().ask(
      `/carbon dose-check daily:30 mL strength:40 % doses:1 route:open water ${FINE} volume:2700 L`,
    );
    // 30 mL × 0.4 × 0.7893 g/mL × 2.0838 g/g × (1 − 0.67) / 2700 L = 2.4123 mg/L (electron balance, ASM1 yield).
    expect(reply.ok).toBe(false);
    expect(reply.body[0]).toContain("would take 2.41 mg/L of oxygen");
    expect(reply.body[0]).toContain("into 5 doses");
  });

  it("warns of a middling one and lets a small one pass", async () => {
    const club = openClub();
    // 2.4123 / 4 = 0.603 mg/L each: above 0.5, below 1.5.
    const middling = await club.ask(
      `/carbon dose-check daily:30 mL strength:40 % doses:4 route:open water ${FINE} volume:2700 L`,
    );
    expect(middling.headline).toBe("Each dose takes 0.6 mg/L of oxygen");
    expect(textOf(middling)).toContain("Better in 5 doses a day or more.");
    // A tenth of the day's amount in four: 0.0603 mg/L each.
    const small = await club.ask(
      `/carbon dose-check daily:3 mL strength:40 % doses:4 route:open water ${FINE} volume:2700 L`,
    );
    expect(small.headline).toBe("Each dose takes 0.06 mg/L of oxygen");
    expect(textOf(small)).toContain("stays under 0.5 mg/L");
  });

  it("asks where it works and in how many doses", async () => {
    const club = openClub();
    const asked = await club.say(`/carbon dose-check daily:30 mL strength:40 % ${FINE} volume:2700 L`);
    expect(textOf(asked)).toContain("Where shall it work");
    expect(textOf(await club.pick("open water"))).toContain("In how many doses a day?");
    const skimmer = await club.ask(
      "/carbon dose-check daily:3 mL strength:40 % doses:4 route:open water today:skimmer off volume:2700 L",
    );
    expect(skimmer.body[0]).toContain("the skimmer is off");
    for (const daily of ["-30 mL", "1e308 L", "a bottle", "0 mL"]) {
      const odd = await club.say(
        `/carbon dose-check daily:${daily} strength:40 % doses:4 route:open water ${FINE} volume:2700 L`,
      );
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/carbon need", () => {
  it("sets both routes side by side", async () => {
    const reply = await openClub().ask(`/carbon need nitrate:10 mg/L strength:10 % ${FINE} volume:2700 L`);
    // 10 mg/L NO₃ / 4.4268 × 2700 L / 7 days = 0.8713 g N a day. As gas 1.8476 g (3.85 g COD/g N, Christensson 1994)
    // to 2.0162 g (0.613 mol/mol, McCarty 1969) of ethanol per g N, over 0.07893 g per mL of the mix: 20.4–22.3 mL.
    // As cells 0.0912 to 0.1201 g N per g ethanol (ASM2d, ASM1): 91.9–121 mL.
    expect(reply.headline).toBe(
      "107 mL (92–121) a day (open water, skimmed out); or 21.3 mL (20.4–22.3) a day (slow box, as gas)",
    );
    expect(reply.body[0]).toContain("0.87 g of nitrogen a day");
  });

  it("leaves a route out that the day forbids, and both on a bad day", async () => {
    const club = openClub();
    const gas = await club.ask("/carbon need nitrate:10 mg/L strength:10 % today:skimmer off volume:2700 L");
    expect(gas.headline).toBe("21.3 mL (20.4–22.3) a day (slow box, as gas)");
    const none = await club.ask(
      "/carbon need nitrate:10 mg/L strength:10 % today:aeration off volume:2700 L",
    );
    expect(none.ok).toBe(false);
    expect(textOf(await club.say("/carbon need nitrate:10 mg/L strength:10 % volume:2700 L"))).toContain(
      "First:",
    );
  });

  it("refuses nothing, less than nothing and all the nitrate in the world", async () => {
    const club = openClub();
    for (const nitrate of ["0 mg/L", "-10 mg/L", "1e7 mg/L", "lots", "10 mg/L as CaCO3"]) {
      const odd = await club.say(`/carbon need nitrate:${nitrate} strength:10 % ${FINE} volume:2700 L`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/carbon box", () => {
  it("counts the oxygen that the feed water brings", async () => {
    const reply = await openClub().ask(
      `/carbon box flow:50 L/h nitrate:10 mg/L as N oxygen:6 mg/L strength:10 % ${FINE}`,
    );
    // Electron balance: 1.2 m³/d × (2.8557 × 10 mg/L N + 6 mg/L O₂) / (1 − 0.32) = 61.006 g COD a day, and 56.06 with
    // a yield of 0.26; over 2.0838 g/g and 0.07893 g/mL: 341 to 371 mL. 6 / (28.56 + 6) = 17.4 % meets the oxygen.
    expect(reply.headline).toMatch(/^35[56] mL \(341–371\) a day/);
    expect(reply.body[0]).toContain("17 % of it only burns the oxygen");
    expect(textOf(reply)).toContain("rotten eggs");
  });

  it("asks about the day, and refuses a box with no flow", async () => {
    const club = openClub();
    const asked = await club.say("/carbon box flow:50 L/h nitrate:40 mg/L oxygen:6 mg/L strength:10 %");
    expect(textOf(asked)).toContain("First:");
    const still = await club.say(
      `/carbon box flow:0 L/h nitrate:40 mg/L oxygen:6 mg/L strength:10 % ${FINE}`,
    );
    expect(still.kind === "question" || !still.ok).toBe(true);
  });
});
