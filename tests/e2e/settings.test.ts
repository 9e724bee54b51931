import { describe, expect, it } from "vitest";
import { HOME_CLUB, memberId, openClub, textOf } from "../support/club.ts";

describe("/settings", () => {
  it("keeps how a member writes and measures, and uses it at once", async () => {
    const club = openClub();
    await club.ask("/settings gallon:imperial decimal:comma gravity:60/60 °F zone:Europe/Lisbon");
    const text = textOf(await club.ask("/settings"));
    expect(text).toContain("“gal” means: imperial gallons.");
    expect(text).toContain("Decimal mark: comma.");
    expect(text).toContain("Specific gravity scale: 60/60 °F.");
    expect(text).toContain("Time zone: Europe/Lisbon.");
    // 1.026 at 60/60 °F is 33.885 (EOS-80, solved by bisection); 10 imperial gallons are 45.5 L (NIST SP 811).
    const reply = await club.ask("/salt mix volume:10 gal salinity:1,026");
    expect(reply.title).toContain("45.5 L (10 imp gal)");
    expect(reply.title).toMatch(/33\.8[89] ppt/);
  });

  it("forgets them again at a word", async () => {
    const club = openClub();
    await club.ask("/settings gallon:US");
    expect(textOf(await club.ask("/settings reset:yes"))).toContain("“gal” means: asked once.");
    expect((await club.say("/salt mix volume:10 gal salinity:35 ppt")).kind).toBe("question");
  });

  it("asks again for a zone nobody has", async () => {
    const outcome = await openClub().say("/settings zone:Atlantis");
    expect(outcome.kind === "question" && outcome.isMistake).toBe(true);
    expect(textOf(outcome)).toContain("Europe/Lisbon");
  });

  it("lets only a steward set the club's defaults, which a member's own go before", async () => {
    const club = openClub();
    const refused = await club.ask("/settings gallon:imperial for:club");
    expect(refused.ok).toBe(false);
    expect(textOf(refused)).toContain("Only those who may manage the server");
    const asSteward = {
      member: memberId("ada"),
      club: HOME_CLUB,
      isSteward: true,
      path: "settings",
      answers: {},
    };
    const set = await club.app.answer({ ...asSteward, options: { gallon: "imperial", for: "club" } });
    expect(textOf(set.outcome)).toContain("“gal” means: imperial gallons.");
    const more = await club.app.answer({ ...asSteward, options: { decimal: "comma", for: "club" } });
    expect(textOf(more.outcome)).toContain("“gal” means: imperial gallons.");
    expect((await club.ask("/salt mix volume:10 gal salinity:35 ppt")).title).toContain("45.5 L");
    await club.ask("/settings gallon:US");
    expect((await club.ask("/salt mix volume:10 gal salinity:35 ppt")).title).toContain("37.9 L");
    const inPrivate = { ...asSteward, options: { gallon: "US", for: "club" } };
    const { club: _, ...direct } = inPrivate;
    expect(textOf((await club.app.answer(direct)).outcome)).toContain("This is a private talk");
    const zone = await club.app.answer({ ...asSteward, options: { zone: "Europe/Lisbon", for: "club" } });
    expect(zone.outcome.kind === "reply" && zone.outcome.ok).toBe(false);
  });
});
