import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const WATER = "volume:2700 L salinity:34 ppt temperature:26 °C";
const FOOD = "food:280 g fish and prawn 18 % protein as fed 3 times a week";

describe("/stocking load", () => {
  it("adds up food, filter and oxygen, and says what gives out first", async () => {
    const reply = await openClub().ask(
      `/stocking load livestock:4 grouper 2.75 kg ${FOOD} media:150 L moving bed change:30 % every:10 days growth:adult ${WATER}`,
    );
    // By hand: 120 g a day × 0.18 protein / 6.25 = 3.46 g N; three quarters of it as ammonia = 2.592 g;
    // 3.456 × 0.85 × 4426.8 mg/g / 2700 L = 4.82 mg/L a day, 33.7 a week, settling at 48.2/0.3 = 160.5 mg/L.
    expect(reply.body[0]).toContain("Food brings 3.5 g");
    expect(reply.body[0]).toContain("2.59 g");
    expect(textOf(reply)).toContain("Nitrate climbs 33.7 mg/L");
    expect(textOf(reply)).toContain("settles at 161 mg/L");
    expect(reply.table?.rows.find(([name]) => name === "mass of the animals")?.[1]).toContain("11 kg");
    expect(reply.headline).toMatch(/^First to give out: /);
  });

  it("asks which relative a bare name means, and takes its mass from the length", async () => {
    const club = openClub();
    const asked = await club.say(`/stocking load livestock:1 grouper 60 cm ${FOOD} ${WATER}`);
    expect(textOf(asked)).toContain("Which is nearest to your “grouper”?");
    const reply = await club.pick("Epinephelus coioides");
    // W = 0.01122 × 60^3.04 = 2855 g (Bayesian length–weight figures of FishBase).
    expect(textOf(reply)).toContain("mass of the animals | 2.9 kg");
  });

  it("takes all it needs from the tank's notes, and names where each came from", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 2700 L measured");
    await club.ask(`/tank note livestock:4 grouper 2.75 kg ${FOOD} salinity:34 ppt temperature:26 °C`);
    const reply = await club.ask("/stocking load");
    expect(reply.title).toBe("Lagoon: stocking load");
    expect(reply.body[0]).toContain("Food brings 3.5 g");
    expect(textOf(reply)).toContain("(Lagoon, as noted)");
  });

  it("asks for water it does not know, and again for an animal it does not know", async () => {
    const club = openClub();
    expect(textOf(await club.say("/stocking load livestock:4 grouper 2.75 kg"))).toContain(
      "How much water is in the system?",
    );
    const odd = await club.say(`/stocking load livestock:1 dragon 55 cm ${WATER}`);
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
    expect(textOf(odd)).toContain("give its mass instead");
  });

  it("refuses when there is nothing to add up", async () => {
    expect((await openClub().ask(`/stocking load ${WATER}`)).ok).toBe(false);
  });
});

describe("/stocking add", () => {
  it("tells what one more animal adds, now and grown", async () => {
    const reply = await openClub().ask(
      `/stocking add animal:1 orange-spotted grouper 60 cm livestock:4 grouper 2.75 kg ${FOOD} media:150 L moving bed ${WATER}`,
    );
    // The same 2855 g as above.
    expect(reply.table?.rows.find(([name]) => name === "body mass")?.[1]).toMatch(/^2900 g/);
    expect(reply.headline).toMatch(/^\+.* g.* ammonia nitrogen a day now/);
    expect(reply.body.some((line) => line.startsWith("Today"))).toBe(true);
  });

  it("takes one animal at a time", async () => {
    const reply = await openClub().ask(
      `/stocking add animal:2 orange-spotted grouper 60 cm ${FOOD} ${WATER}`,
    );
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("one animal at a time");
  });
});
