import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

async function withTank() {
  const club = openClub();
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
  return club;
}

describe("/undo", () => {
  it("takes a line back whole, the last one first", async () => {
    const club = await withTank();
    await club.ask("/log no3 20, temp 25");
    await club.ask("/log no3 22, wc 30 %");
    const reply = await club.ask("/undo");
    expect(reply.body[0]).toBe("“no3 22, wc 30 %” (2 entries).");
    expect((await club.ask("/readings")).table?.rows).toHaveLength(2);
    await club.ask("/undo");
    expect(textOf(await club.ask("/readings"))).toContain("Nothing is logged yet");
  });

  it("says when nothing is left", async () => {
    const club = await withTank();
    const reply = await club.ask("/undo");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("There is no logged line left");
    expect((await openClub().ask("/undo")).ok).toBe(false);
  });

  it("goes by what was entered last, not by the time it was entered for", async () => {
    const club = await withTank();
    await club.ask("/log no3 20");
    await club.ask("/log no3 22 when:yesterday 9am");
    expect((await club.ask("/undo")).body[0]).toContain("no3 22");
  });

  it("is told the tank when that is not the default one", async () => {
    const club = await withTank();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    const logged = await club.ask("/log no3 20 tank:Lab");
    expect(logged.body[0]).toContain("/undo tank:Lab takes it back");
    expect((await club.ask("/undo")).ok).toBe(false);
    expect((await club.ask("/undo tank:Lab")).ok).toBe(true);
  });

  it("unwinds a correction and then the line under it", async () => {
    const club = await withTank();
    await club.ask("/log no3 20");
    await club.ask("/correct reading:1 to:no3 21");
    await club.ask("/undo");
    expect(textOf(await club.ask("/readings"))).toContain("nitrate 20");
    await club.ask("/undo");
    expect(textOf(await club.ask("/readings"))).toContain("Nothing is logged yet");
    expect((await club.ask("/undo")).ok).toBe(false);
  });
});
