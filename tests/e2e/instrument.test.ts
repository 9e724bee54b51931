import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/instrument add", () => {
  it("keeps the steps of a chart and the scale of a hydrometer", async () => {
    const club = openClub();
    await club.ask("/instrument add name:nitrate chart for:no3 steps:0 5 10 20 40 80 error:2");
    await club.ask("/instrument add name:hydrometer for:salinity scale:60/60 °F");
    expect((await club.ask("/instrument list")).table?.rows).toEqual([
      ["nitrate chart", "nitrate", "0 5 10 20 40 80", "2", ""],
      ["hydrometer", "salinity", "", "", "60/60 °F"],
    ]);
  });

  it("asks again for steps that do not rise and for something that is not measured", async () => {
    const club = openClub();
    for (const line of [
      "/instrument add name:chart for:nitrate steps:0 10 5",
      "/instrument add name:chart for:nitrate steps:5",
      "/instrument add name:chart for:nitrate steps:low high",
      "/instrument add name:chart for:happiness",
      "/instrument add name:chart for:salinity scale:17/3",
    ]) {
      const outcome = await club.say(line);
      expect(outcome.kind === "question" && outcome.isMistake, line).toBe(true);
    }
    expect((await club.ask("/instrument list")).title).toBe("No instruments yet");
  });

  it("replaces one of the same name", async () => {
    const club = openClub();
    await club.ask("/instrument add name:Chart for:nitrate steps:0 5 10");
    await club.ask("/instrument add name:chart for:nitrate steps:0 20 40");
    expect((await club.ask("/instrument list")).table?.rows.map((row) => row[2])).toEqual(["0 20 40"]);
  });
});

describe("/instrument list", () => {
  it("shows only the member's own", async () => {
    const club = openClub();
    await club.ask("/instrument add name:chart for:nitrate");
    expect((await club.ask("/instrument list")).title).toBe("1 instrument");
    expect((await club.ask("/instrument list", "bruno")).title).toBe("No instruments yet");
  });
});

describe("/instrument drop", () => {
  it("forgets one, and leaves its readings", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
    await club.ask("/instrument add name:chart for:nitrate");
    await club.ask("/log no3 20");
    expect((await club.ask("/instrument drop name:CHART")).ok).toBe(true);
    expect((await club.ask("/readings")).table?.rows[0]?.[3]).toBe("chart");
    expect((await club.ask("/instrument list")).title).toBe("No instruments yet");
  });

  it("refuses one that is not there, or somebody else's", async () => {
    const club = openClub();
    await club.ask("/instrument add name:chart for:nitrate");
    const reply = await club.ask("/instrument drop name:chart", "bruno");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("You have no instrument called “chart”");
  });
});
