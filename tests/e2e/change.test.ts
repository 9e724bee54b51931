import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/change effect", () => {
  it("tells what one change does", async () => {
    // (1 − 0.3) × 80 = 56; 30 % of 2700 L is 810 L.
    const reply = await openClub().ask("/change effect now:80 mg/L size:30 % volume:2700 L");
    expect(reply.headline).toBe("80 mg/L becomes 56 mg/L");
    expect(reply.body[0]).toContain("810 L");
    expect(textOf(reply)).toContain("unplug heaters and pumps");
  });

  it("tells several changes apart from one large one", async () => {
    // 5 + 75 × 0.85⁴ = 5 + 75 × 0.522006 = 44.15.
    const reply = await openClub().ask(
      "/change effect now:80 mg/L source:5 mg/L size:15 % times:4 volume:2700 L",
    );
    expect(reply.headline).toBe("80 mg/L becomes 44.2 mg/L");
    expect(reply.body[0]).toContain("1620 L in all; 52.2 % of the old water is left");
  });

  it("takes the water from the saved tank and how long the pump runs from its flow", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 2700 L measured");
    const reply = await club.ask("/change effect now:80 mg/L size:200 L tank:Lagoon pump:1200 L/h");
    expect(reply.title).toMatch(/^Lagoon: a change of 200 L/);
    // 200 L at 1200 L/h: 10 minutes.
    expect(textOf(reply)).toContain("10 minutes each way");
    expect(textOf(reply)).toContain("Taken along: net volume 2700 L");
  });

  it("asks again for what cannot be, and mixes no units", async () => {
    const club = openClub();
    const heat = await club.say("/change effect now:25 °C size:30 % volume:2700 L");
    expect(textOf(heat)).toContain("/change match");
    const toomuch = await club.say("/change effect now:80 mg/L size:130 % volume:2700 L");
    expect(toomuch.kind === "question" && toomuch.isMistake).toBe(true);
    const mixed = await club.ask("/change effect now:8 dKH source:5 mg/L size:30 % volume:2700 L");
    expect(mixed.ok).toBe(false);
    expect(textOf(mixed)).toContain("“dKH” and “mg/L”");
    const slow = await club.say("/change effect now:80 mg/L size:30 % way:continuous volume:2700 L");
    expect(textOf(slow)).toContain("how many litres run through");
  });
});

describe("/change plan", () => {
  it("tells how many changes reach a target, and what it would be at once or slowly", async () => {
    // ln(20/80)/ln 0.7 = 3.89: four changes of 810 L. At once 75 % = 2025 L; slowly 2700 × ln 4 = 3743 L.
    const reply = await openClub().ask("/change plan now:80 mg/L target:20 mg/L volume:2700 L");
    expect(reply.headline).toBe("4 changes of 810 L");
    expect(reply.body[1]).toContain("In one go it would be 2030 L (75 %)");
    expect(reply.body[1]).toContain("3740 L");
  });

  it("refuses a target the new water itself does not reach", async () => {
    const reply = await openClub().ask(
      "/change plan now:80 mg/L target:20 mg/L source:30 mg/L volume:2700 L",
    );
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("can never reach 20");
  });
});

describe("/change routine", () => {
  it("tells where a routine settles", async () => {
    // d = 4.82 × 10 = 48.2; before = d/f = 160.7, after = d(1−f)/f = 112.5 (geometric series, by hand).
    const reply = await openClub().ask(
      "/change routine rise:4.82 mg/L every:10 days size:30 % volume:2700 L now:0 mg/L",
    );
    expect(reply.headline).toMatch(/^Settles at 161 mg\/L before, 112 mg\/L after each change$/);
    expect(reply.body[0]).toContain("48.2 mg/L");
    // Half-way after ln 0.5/ln 0.7 = 1.94 changes; the third "before" from nothing is 105.5 (106 to three figures).
    expect(reply.body[1]).toContain("1.9 changes");
    expect(reply.table?.rows[2]?.[2]).toBe("106");
  });

  it("leaves out the table of the way there when nobody said where it starts", async () => {
    const reply = await openClub().ask(
      "/change routine rise:4.82 mg/L every:10 days size:30 % volume:2700 L",
    );
    expect(reply.table).toBeUndefined();
  });

  it("tells how large the change must be to stay under a ceiling", async () => {
    // d = 1.2 × 7 = 8.4; f = 8.4/40 = 21 % of 2700 L = 567 L.
    const reply = await openClub().ask(
      "/change routine rise:1.2 mg/L every:7 days ceiling:40 mg/L volume:2700 L",
    );
    expect(reply.headline).toBe("Change 567 L each time");
    expect(reply.body[0]).toContain("21 % every 7 days");
    expect(reply.title).toBe("Never above 40 mg/L");
  });

  it("refuses a ceiling that no change can hold, and asks when neither size nor ceiling is said", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/change routine rise:4.82 mg/L every:10 days ceiling:40 mg/L volume:2700 L",
    );
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("even changing all of it");
    await club.say("/change routine rise:4.82 mg/L every:10 days volume:2700 L");
    const told = await club.fill("30 %");
    expect(told.kind === "reply" && told.headline).toContain("161 mg/L before");
  });
});

describe("/change match", () => {
  it("moves nothing where both waters are alike", async () => {
    const reply = await openClub().ask(
      "/change match new:600 L salinity:34 ppt temperature:21 °C tank-salinity:34 ppt tank-temperature:26 °C volume:2008-2020 L",
    );
    expect(textOf(reply)).toContain("a step of 0 ppt and -1.49 °C");
  });

  it("tells what the animals would feel", async () => {
    // 200 L at salinity 38, 40 L of 35 in its place: 37.401 (balance of salt and mass, EOS-80, 25 °C).
    const salt = await openClub().ask(
      "/change match new:40 L salinity:35 ppt temperature:25 °C tank-salinity:38 ppt tank-temperature:25 °C volume:200 L",
    );
    expect(salt.headline).toMatch(/^37\.4 ppt and 25(\.0)? °C$/);
    // 26 − 5 × 600/2300 = 24.70 °C.
    const heat = await openClub().ask(
      "/change match new:600 L salinity:34 ppt temperature:21 °C tank-salinity:35 ppt tank-temperature:26 °C volume:2300 L",
    );
    expect(heat.headline).toContain("24.7 °C");
    expect(textOf(heat)).toContain("warm or cool the new water first");
  });

  it("takes salinity and temperature from the last readings", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 200 L measured");
    await club.ask("/log salinity 38 ppt, temp 25");
    club.now += 3 * 86_400_000;
    const reply = await club.ask("/change match new:40 L salinity:35 ppt temperature:25 °C");
    expect(reply.headline).toMatch(/^37\.40? ppt/);
    expect(textOf(reply)).toContain("Lagoon, logged 3 days ago");
  });

  it("refuses to exchange more than there is, and asks for what it does not know", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/change match new:3000 L salinity:34 ppt temperature:21 °C tank-salinity:35 ppt tank-temperature:26 °C volume:2300 L",
    );
    expect(reply.ok).toBe(false);
    const asked = await club.say(
      "/change match new:600 L salinity:34 ppt temperature:21 °C tank-salinity:35 ppt volume:2300 L",
    );
    expect(textOf(asked)).toContain("What is the tank's temperature?");
  });
});
