import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const FEED = "volume:2700 L rated:284 L/day pressure:345 kPa temperature:15 °C waste:2.3";

describe("/purify days", () => {
  it("brings the rating to pressure and cold", async () => {
    const club = openClub();
    const reply = await club.ask(`/purify days ${FEED} rated-at:414 kPa`);
    // 284 × 345/414 × 1.03^(15 − 25) = 176 L a day; 2700 ÷ 176 = 15.3 days; × 3.3 = 8910 L of tap water.
    expect(reply.headline).toMatch(/^15(\.\d)? days/);
    expect(textOf(reply)).toMatch(/17[56](\.\d)? L a day/);
    expect(textOf(reply)).toContain("8910 L of tap water");
    expect(textOf(reply)).toContain("Never leave purified water running");
  });

  it("asks at which pressure it was rated, with both in use", async () => {
    const club = openClub();
    expect(textOf(await club.say(`/purify days ${FEED}`))).toContain(
      "At which pressure was the membrane rated",
    );
    const reply = await club.pick("60 psi");
    // 60 psi is 413.7 kPa (definition of the psi).
    expect(reply.kind === "reply" && reply.headline).toMatch(/^15(\.\d)? days/);
  });

  it("takes the whole water of a saved tank, and says so", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 2700 L (2700 to 2700) measured");
    const reply = await club.ask(`/purify days ${FEED.replace("volume:2700 L ", "")} rated-at:414 kPa`);
    expect(reply.headline).toMatch(/^15(\.\d)? days/);
    expect(textOf(reply)).toContain("(Lagoon, 1 container)");
  });

  it("refuses a feed that cannot push through, and nonsense", async () => {
    const club = openClub();
    const salty = await club.ask(
      "/purify days volume:100 L rated:284 L/day rated-at:60 psi pressure:40 psi temperature:15 °C dissolved:35 g/L",
    );
    expect(salty.ok).toBe(false);
    expect(salty.body[0]).toContain("no water is made");
    for (const odd of ["60", "'; --", "-3 bar", "1e999 psi"]) {
      const outcome = await club.say(
        `/purify days volume:100 L rated:284 L/day rated-at:60 psi pressure:${odd} temperature:15 °C`,
      );
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
