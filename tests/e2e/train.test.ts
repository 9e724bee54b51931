import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const WATER = "salinity:34 ppt temperature:26 °C";
const FED = "food:120 g prawn daily growth:adult";

describe("/train check", () => {
  it("follows water, ammonia and oxygen through the boxes", async () => {
    const reply = await openClub().ask(
      `/train check boxes:settling box 200 L; bed box 300 L with 250 L moving bed flow:8000 L/h ${FED} oxygen:6.5 mg/L ${WATER}`,
    );
    const bed = reply.table?.rows[1] ?? [];
    // 300 L at 8000 L/h is 2.25 min (division).
    expect(bed.slice(0, 3)).toEqual(["bed box", "8000", "2.3"]);
    // Mass balance: 120 g × 0.168 / 6.25 × 0.75 = 2.419 g N a day, × 4.57 = 11.06 g of oxygen, in 192 m³ a day:
    // 0.0576 mg/L less.
    expect(bed[4]).toMatch(/^2\.4\d* \(/);
    expect(bed[5]).toBe("6.5 → 6.44");
    expect(textOf(reply)).toContain("no box of these can become low in oxygen");
  });

  it("says what side stream a slow box needs, and what stands in the wrong order", async () => {
    const reply = await openClub().ask(
      `/train check boxes:bed box 300 L with 250 L moving bed; sock 20 L, 30 % bypass; drum 110 L low oxygen, dirt 2 g/day; 2 x drum 110 L aerated flow:8000 L/h ${FED} oxygen:6.5 mg/L ${WATER}`,
    );
    const said = textOf(reply);
    // 2 g/d × 0.5 / (0.5 + 0.2) at 0.5 mg/L, over (6.5 − 0.5) mg/L: 9.9 L/h (mass balance; half level from the
    // activated-sludge models), a little less for what the bed took before.
    expect(said).toMatch(/a side stream of at most (9\.9|10) L\/h could/);
    expect(said).toContain("stands before sock");
    // 30 % of 8000 passes by.
    expect(reply.table?.rows[1]?.[1]).toBe("5600");
    expect(reply.table?.rows.map(([name]) => name)).toEqual([
      "bed box",
      "sock",
      "drum low oxygen",
      "drum 1",
      "drum 2",
    ]);
  });

  it("sees a slow side stream with dirt run out of oxygen, and warns of what it can make", async () => {
    const reply = await openClub().ask(
      `/train check boxes:bed box 300 L with 250 L moving bed; drum 110 L low oxygen, side stream 5 L/h, dirt 4 g/day flow:8000 L/h ${FED} oxygen:6.5 mg/L ${WATER}`,
    );
    // 5 L/h brings 0.12 m³ × 6.5 mg/L = 0.78 g a day, where 4 g are wanted.
    expect(reply.table?.rows[1]?.[6]).toBe("no oxygen left");
    expect(textOf(reply)).toContain("hydrogen sulphide");
  });

  it("takes flow and food from the tank, asks for what is missing", async () => {
    const club = openClub();
    const asked = await club.say(`/train check boxes:box 100 L ${FED} ${WATER}`);
    expect(textOf(asked)).toContain("What flow does the pump really give");
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm; settling box 150 L measured",
    );
    const which = await club.say("/train check");
    expect(textOf(which)).toContain("Lagoon has settling");
    expect(textOf(which)).toContain("150 L");
    await club.ask("/tank note food:120 g prawn daily flow:8000 L/h salinity:34 ppt temperature:26 °C");
    const reply = await club.ask("/train check boxes:box 100 L with 60 L ceramic rings");
    expect(reply.title).toBe("Lagoon: 1 container at 8000 L/h");
    expect(textOf(reply)).toContain("flow 8000 L/h (Lagoon, as noted)");
  });

  it("asks about doubtful gallons within the list, and refuses a list that is none", async () => {
    const club = openClub();
    const asked = await club.say(
      `/train check boxes:settling box 150 L; drum 30 gal with 60 L ceramic rings flow:8000 L/h ${FED} ${WATER}`,
    );
    expect(textOf(asked)).toContain("US gal or imp gal");
    const reply = await club.pick("30 US gal");
    // 30 US gal is 113.56 L (definition); at 8000 L/h 0.85 min.
    expect(reply.kind === "reply" && reply.table?.rows[1]?.[2]).toBe("0.85");
    for (const boxes of [
      "drum with 60 L ceramic rings",
      ";;;",
      "99 x box 1 L",
      "box 1e999 L",
      "box -5 L",
      `${"box 9 L; ".repeat(150)}`,
      "<img src=x> 5 L side stream",
    ]) {
      const odd = await club.say(`/train check boxes:${boxes} flow:8000 L/h ${FED} ${WATER}`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/train balance", () => {
  it("adds up, and settles where the series does", async () => {
    const reply = await openClub().ask(
      "/train balance food:120 g prawn daily nitrate:80 mg/L change:30 % every:10 days solids:10 % growth:5 % volume:2700 L",
    );
    // 120 g × 0.168 / 6.25 = 3.226 g N a day; 85 % of it over ten days in 2700 L, × 4.4268 / 0.3: 149.8 mg/L before
    // and × 0.7 = 104.9 after each change (geometric series).
    expect(reply.body[0]).toMatch(/settles at 150 mg\/L \(.*\) before and 105 mg\/L \(.*\) after each/);
    const rows = new Map(
      (reply.table?.rows ?? []).map(([name, figure]) => [name, Number.parseFloat(figure ?? "")]),
    );
    expect(rows.get("food")).toBeCloseTo(3.2, 1);
    // 80 / 4.4268 mg/L N × 2700 L × 0.3 / 10 days = 1.464 g a day.
    expect(rows.get("water changes")).toBeCloseTo(-1.46, 1);
    // 3.226 × 0.85 − 1.464 = 1.278 g a day, × 7 / 2700 × 4.4268 = 14.7 mg/L a week.
    expect(reply.headline).toMatch(/^Nitrate rises: 1[45](\.\d)? mg\/L a week/);
  });

  it("asks for nitrate and for the rest of a routine", async () => {
    const club = openClub();
    expect(textOf(await club.say("/train balance food:120 g prawn daily volume:2700 L"))).toContain(
      "What is the nitrate now?",
    );
    const half = await club.say(
      "/train balance food:120 g prawn daily nitrate:80 mg/L change:30 % volume:2700 L",
    );
    expect(textOf(half)).toContain("How often is the water changed?");
    const zero = await club.say(
      "/train balance food:120 g prawn daily nitrate:80 mg/L change:30 % every:0 days volume:2700 L",
    );
    expect(zero.kind === "question" || !zero.ok).toBe(true);
    const odd = await club.say("/train balance food:120 g prawn daily nitrate:\u202e80 mg/K volume:2700 L");
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
  });
});
