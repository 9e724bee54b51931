import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const LAGOON =
  "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm; settling box 150 L measured";

describe("/ammonia check", () => {
  it("tells the harmful share, how bad it is and what brings it down", async () => {
    const reply = await openClub().ask(
      "/ammonia check reading:0.25 mg/L as TAN ph:8.2 measured:meter, ordinary buffers temperature:26 °C salinity:34 ppt",
    );
    // Khoo et al. 1977 pKa at S 34, 26 °C: 0.017668 mg/L NH₃-N (hand-worked from the published form),
    // and × 17.0305/14.0067 = 0.02148 mg/L as NH₃; the usual target is 0.02, lasting exposure 0.035.
    expect(reply.headline).toMatch(/^0\.0215? mg\/L NH₃ \(.*\): raised$/);
    expect(reply.body.join(" ")).toContain("under the limit of 0.035 mg/L NH₃");
    expect(textOf(reply)).toContain("Do not raise pH or alkalinity while ammonia is up");
  });

  it("gives the fresh-water example of the tables", async () => {
    const reply = await openClub().ask(
      "/ammonia check reading:1 mg/L as TAN ph:8.0 measured:meter, ordinary buffers temperature:24 °C salinity:0 ppt",
    );
    // UF/IFAS FA16, worked example: at pH 8.0 and 24 °C 0.0502 of the nitrogen is NH₃; as NH₃ × 1.2159 = 0.0610.
    expect(reply.body[0]).toMatch(/^5\.0\d? % \(/);
    expect(reply.headline).toMatch(/^0\.061\d* mg\/L NH₃/);
    // 0.035 / 0.0610 = 57 % may stay, so 43 % has to be changed.
    expect(reply.body.join(" ")).toMatch(/Change 4[23] % \(.*of the water/);
  });

  it("asks what the kit prints, and goes on with the answer", async () => {
    const club = openClub();
    const asked = await club.say("/ammonia check reading:0.5 ph:8.2 temperature:26 °C salinity:34 ppt");
    expect(asked.kind).toBe("question");
    expect(textOf(asked)).toContain("as nitrogen, as NH3 or as NH4");
    const reply = await club.pick("NH4");
    // 0.5 × 14.0067/18.0385 = 0.38824 mg/L N; × 0.070672 (0.017668/0.25, as above) × 1.21588 = 0.03336.
    expect(textOf(reply)).toContain("0.033 mg/L NH₃");
    expect(textOf(reply)).toContain("colour kit");
  });

  it("asks for one thing at a time, and takes the rest from the tank", async () => {
    const club = openClub();
    await club.ask(LAGOON);
    await club.ask("/tank note salinity:34 ppt temperature:26 °C");
    const asked = await club.say("/ammonia check reading:0.25 mg/L as TAN");
    expect(asked.kind).toBe("question");
    expect(textOf(asked)).toContain("What is the pH?");
    const reply = await club.fill("8.2");
    expect(textOf(reply)).toContain("Lagoon");
    expect(textOf(reply)).toContain("salinity 34 ppt (Lagoon, as usually kept)");
  });

  it("says that water of a higher pH makes more of it harmful", async () => {
    const reply = await openClub().ask(
      "/ammonia check reading:2 mg/L as TAN ph:7.8 measured:meter, ordinary buffers temperature:25 °C salinity:35 ppt new-ph:8.3",
    );
    expect(textOf(reply)).toContain("The new water has a higher pH (8.3) than the tank (7.8)");
  });

  it("doubts a reading after a binder that was logged", async () => {
    const club = openClub();
    await club.ask(LAGOON);
    await club.ask("/log line:dosed ammonia binder 20 mL when:20 hours ago");
    const line = "/ammonia check reading:0.5 mg/L as TAN ph:8.2 temperature:26 °C salinity:34 ppt";
    expect(textOf(await club.ask(line))).toContain("A binder was used");
    expect(textOf(await club.ask(`${line} binder:no`))).not.toContain("A binder was used");
    club.now += 29 * 3_600_000;
    expect(textOf(await club.ask(line))).not.toContain("A binder was used");
  });

  it("takes nothing impossible for a reading", async () => {
    const club = openClub();
    for (const reading of ["-1 mg/L as TAN", "1e400 mg/L as TAN", "drop table tank; -- as TAN", "NaN"]) {
      const outcome = await club.say(
        `/ammonia check reading:${reading} ph:8.2 temperature:26 °C salinity:34 ppt`,
      );
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
    const reply = await club.ask(
      "/ammonia check reading:0.5 mg/L as TAN ph:13 temperature:26 °C salinity:34 ppt",
    );
    expect(reply.ok).toBe(false);
    expect(reply.body[0]).toContain("outside 5.5–10");
  });
});

describe("/ammonia binder", () => {
  it("matches a named reagent mole for mole", async () => {
    const reply = await openClub().ask(
      "/ammonia binder reading:1 mg/L as TAN reagent:sodium hydroxymethanesulfonate volume:2700 L",
    );
    // One to one by moles: 2.7 g N / 14.0067 × 134.087 = 25.847 g (general chemistry).
    expect(reply.headline).toBe("25.8 g of sodium hydroxymethanesulfonate");
    expect(textOf(reply)).toContain("For a bottled product follow its own label");
  });

  it("asks for the reagent, and refuses a purity above all of it", async () => {
    const club = openClub();
    const asked = await club.say("/ammonia binder reading:1 mg/L as TAN volume:2700 L");
    expect(textOf(asked)).toContain("Which reagent is it?");
    const odd = await club.say(
      "/ammonia binder reading:1 mg/L as TAN reagent:sodium hydroxymethanesulfonate volume:2700 L purity:300 %",
    );
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
  });
});

describe("/ammonia retest", () => {
  it("tells how long an ordinary test stays blind", async () => {
    const reply = await openClub().ask("/ammonia retest since:20 h test:salicylate");
    // Common practice, no source: 24 to 48 h; 48 − 20 = 28.
    expect(reply.headline).toBe("That reading means nothing");
    expect(reply.body[0]).toContain("Wait 28 h more");
  });

  it("lets a test of free ammonia pass, and refuses a time before the binder", async () => {
    const club = openClub();
    expect((await club.ask("/ammonia retest since:1 h test:gas membrane")).headline).toContain(
      "can be believed",
    );
    const odd = await club.say("/ammonia retest since:-3 h test:salicylate");
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
  });
});
