import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/cloudy", () => {
  it("asks about the animals first, then one thing at a time, and ends in tests and safe actions", async () => {
    const club = openClub();
    expect(textOf(await club.say("/cloudy"))).toContain("First the animals: how are they?");
    expect(textOf(await club.pick("all as usual"))).toContain("What does the water look like?");
    expect(textOf(await club.pick("white or grey haze"))).toContain("What does it smell of?");
    expect(textOf(await club.pick("nothing, or earth"))).toContain("How long ago was it set up?");
    expect(textOf(await club.pick("under 6 weeks"))).toContain("How was it fed lately?");
    expect(textOf(await club.pick("as usual"))).toContain("What was done to it");
    const reply = await club.pick("nothing");
    expect(reply.kind === "reply" && reply.headline).toBe("Most likely: a young tank finding its balance");
    const text = textOf(reply);
    expect(text).toContain("common practice, no source");
    expect(text).toContain("Test: ammonia, nitrite, pH, temperature");
    expect(text).toContain("It is no diagnosis");
  });

  it("asks about light, not about dosing, when the water is green", async () => {
    const club = openClub();
    const asked = await club.say(
      "/cloudy animals:all as usual look:green smell:nothing, or earth age:over 6 months feeding:as usual",
    );
    expect(textOf(asked)).toContain("What light does it get?");
    const reply = await club.pick("sunlight falls on it");
    expect(textOf(reply)).toContain("Boyd & Tucker 1998, from memory");
    expect(textOf(reply)).toContain("Do not try to kill a bloom at one stroke");
  });

  it.each(["gasping at the surface", "lying or listless", "some dead"])(
    "says at once what to do when animals are %s",
    async (animals) => {
      const club = openClub();
      await club.say("/cloudy");
      const reply = await club.pick(animals);
      expect(reply.kind).toBe("reply");
      if (reply.kind !== "reply") return;
      expect(reply.headline).toBe("Do this now, in this order");
      expect(reply.body[0]).toMatch(/^1\. Air first/);
      expect(textOf(reply)).toContain("matches in temperature and salinity");
      expect(reply.cautions[0]?.level).toBe("danger");
      expect(reply.cautions[0]?.text).toContain("Call a vet");
      expect(textOf(reply)).toContain("Add no medicine or other chemical on a guess");
    },
  );

  it("puts what is urgent before what was found, when both are known", async () => {
    const reply = await openClub().ask(
      "/cloudy animals:gasping at the surface look:white or grey haze lately:carbon source dosed smell:rotten eggs",
    );
    const air = reply.body.findIndex((line) => line.startsWith("1. Air first"));
    const sulphide = reply.body.findIndex((line) => line.startsWith("Hydrogen sulphide:"));
    expect(air).toBe(0);
    expect(sulphide).toBeGreaterThan(air);
    expect(textOf(reply)).toContain("Open the windows");
    expect(textOf(reply)).toContain("Dose no alcohol, vinegar, sugar");
  });

  it("goes on after a restart", async () => {
    const folder = mkdtempSync(join(tmpdir(), "cloudy-"));
    try {
      const before = openClub(join(folder, "club.sqlite"));
      await before.say("/cloudy animals:all as usual");
      const { id = "" } = before.last ?? {};
      before.store.close();
      const after = openClub(join(folder, "club.sqlite"));
      const { outcome } = await after.app.choose(
        id,
        "test:ines" as Parameters<typeof after.app.choose>[1],
        4,
      );
      expect(textOf(outcome)).toContain("What does it smell of?");
      after.store.close();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it.each([
    "green; DROP TABLE member",
    "__proto__",
    "constructor",
    "%n",
    "\u202eneerg",
    "9".repeat(300),
    "s",
  ])("asks again when the look is %j", async (look) => {
    const outcome = await openClub().say(`/cloudy animals:all as usual look:${look}`);
    expect(outcome.kind === "question" && outcome.isMistake).toBe(look !== "s");
  });
});
