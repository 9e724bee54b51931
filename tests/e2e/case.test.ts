import { beforeEach, describe, expect, it } from "vitest";
import { type Club, memberId, openClub, textOf } from "../support/club.ts";

let club: Club;
beforeEach(() => {
  club = openClub();
});

describe("/case open", () => {
  it("puts what presses on top, with the size of the change in litres, and asks for one thing", async () => {
    const reply = await club.ask(
      "/case open worry:all gasping at the top tank:60 litres fresh water, 3 weeks readings:ammonia 2 mg/L as TAN, pH 8.2, 26 °C",
    );
    expect(reply.headline).toBe("Do this now, in this order");
    expect(textOf(reply)).toContain("1. Give air");
    // By hand: pKa 9.216 at 26 °C (Emerson et al. 1975), so 8.8 % of 2 mg/L N is NH₃: 0.214 mg/L, limit 0.035
    // (US EPA 1989). A sixth may stay; no more than half at once (common practice): three halvings leave an eighth.
    expect(textOf(reply)).toContain("Change 50 % of the water (30 L), 3 times");
    expect(reply.body.filter((line) => line.startsWith("Asked next"))).toHaveLength(1);
    expect(reply.working?.sources.map(({ citation }) => citation).join()).toContain("Emerson");
  });

  it("refuses a sixth case while five are open", async () => {
    for (let n = 0; n < 5; n += 1) await club.ask("/case open worry:hm");
    expect(textOf(await club.ask("/case open worry:hm"))).toContain("Close one with /case close");
  });

  it("puts a person who is hurt first, also far down in a long text", async () => {
    const long = `${"The tank is a little cloudy and I wonder about it. ".repeat(14)}I got an electric shock.`;
    const reply = await club.ask(`/case open worry:${long}`);
    expect(reply.title).toBe("People first");
    expect(textOf(await club.ask("/case list"))).toContain("No help case is open");
  });
});

describe("facts", () => {
  beforeEach(async () => {
    await club.ask("/case open worry:fish hide tank:60 L fresh water, 5 weeks trouble:all swim and eat");
  });

  it("/case add asks the most useful thing when nothing is typed, and takes the answer", async () => {
    const asked = await club.say("/case add");
    expect(asked.kind === "question" && asked.text).toBe("What does an ammonia test read?");
    const reply = await club.fill("ammonia 0, nitrite 0.3");
    expect(textOf(reply)).toContain("Noted. Read as");
    expect(textOf(reply)).toContain("nitrite 0.3 mg/L");
  });

  it("/case add says so when no figure can be read", async () => {
    expect(textOf(await club.ask("/case add readings:all good i think"))).toContain(
      "could not read a figure",
    );
  });

  it("/case correct takes the old fact away, and for a reading only that reading", async () => {
    await club.ask("/case add readings:ammonia 0.2, pH 7.5");
    const reply = textOf(await club.ask("/case correct tank:120 L fresh water, 5 weeks"));
    expect(reply).toContain("120 L");
    expect(reply).not.toContain("60 L");
    const again = textOf(await club.ask("/case correct readings:ammonia 0.1"));
    expect(again).toContain("pH 7.5");
    expect(textOf(await club.ask("/case correct"))).toContain("Say what it should be");
  });

  it("an all-clear told later takes an alarm of the animals back, and none of the wiring", async () => {
    const alarm = await club.ask("/case add trouble:two are gasping at the top");
    expect(alarm.headline).toContain("Do this now");
    club.now += 3_600_000;
    const clear = await club.ask("/case add trouble:all fine again, eating");
    expect(clear.headline).not.toContain("Do this now");
    await club.ask("/case add worry:the pump's plug is melted");
    club.now += 3_600_000;
    expect((await club.ask("/case add trouble:all fine, eating")).headline).toContain("Do this now");
  });

  it("/case did settles a step by its number, or notes the words", async () => {
    await club.ask("/case advise step:feed half for a week again:in 3 days", "bruno");
    expect(textOf(await club.ask("/case did what:step 1"))).toContain("Step 1, done: feed half for a week");
    expect(textOf(await club.ask("/case did what:cleaned the glass"))).toContain("cleaned the glass");
    expect(textOf(await club.ask("/case did what:step 9"))).toContain("no open step 9");
  });

  it("/case advise flags steps that cannot both be done, without taking sides", async () => {
    await club.ask("/case advise step:change 30 % of the water today", "bruno");
    const reply = textOf(
      await club.ask("/case advise step:no water changes for a week, let it settle", "clara"),
    );
    expect(reply).toContain("Steps 1 and 2 differ about changing water. Both are meant well");
    // The one that was done is settled and differs no more.
    expect(textOf(await club.ask("/case did what:1"))).not.toContain("differ about");
  });

  it("/case advise pins no medicine", async () => {
    const reply = await club.ask("/case advise step:dose copper at 0.5 mg/L for two weeks", "bruno");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("for a vet");
  });

  it("/case hand names the helper, and refuses nobody", async () => {
    await club.say("/settings zone:UTC", "bruno");
    expect(textOf(await club.ask("/case hand to:@bruno"))).toContain("In the hands of");
    expect(textOf(await club.ask("/case hand to:the nice man"))).toContain("nobody I can find");
  });

  it("/case show and /case list are open to the club", async () => {
    expect(textOf(await club.ask("/case show", "bruno"))).toContain("fish hide");
    expect(textOf(await club.ask("/case list", "bruno"))).toContain("1 open help case");
    expect(textOf(await club.say("/case show case:99", "bruno"))).toContain("There is no case");
  });
});

describe("/case close", () => {
  it("asks what worked, then whether to keep the facts, and makes the first tank record of them", async () => {
    await club.ask(
      "/case open tank:60 L fresh water, 5 weeks animals:6 neon tetras since 2 weeks readings:nitrite 0.3, pH 7.4",
    );
    const worked = await club.say("/case close");
    expect(worked.kind === "question" && worked.text).toContain("What worked?");
    const keep = await club.fill("smaller meals");
    expect(keep.kind === "question" && keep.text).toContain("first tank record");
    const closed = await club.pick("Yes, keep them");
    expect(textOf(closed)).toContain("with 2 readings");
    expect(textOf(closed)).toContain("What worked: smaller meals");
    const [tank] = club.store.records.tanks.own(memberId("ines"));
    expect(tank?.kind).toBe("fresh");
    expect(textOf(await club.ask("/readings"))).toContain("0.3 mg/L as NO2");
    expect(textOf(await club.ask("/case add case:1 readings:pH 7"))).toContain("is closed");
  });

  it("makes no record without the newcomer's own yes", async () => {
    await club.ask("/case open tank:60 L fresh water");
    expect((await club.ask("/case close worked:time keep:yes", "bruno")).ok).toBe(false);
    await club.ask("/case close worked:time keep:no");
    expect(club.store.records.tanks.own(memberId("ines"))).toEqual([]);
  });
});

describe("/case delete", () => {
  it("is for the newcomer alone, and leaves nothing", async () => {
    await club.ask("/case open worry:zanzi fish");
    expect(textOf(await club.ask("/case delete", "bruno"))).toContain("Only the one who opened");
    await club.say("/case delete");
    expect(textOf(await club.pick("Delete it"))).toContain("Case 1 is gone");
    expect(club.store.records.help.entries(1)).toEqual([]);
  });
});

describe("/case duty and /case place", () => {
  it("/case duty puts on duty and off", async () => {
    expect(textOf(await club.ask("/case duty set:on", "bruno"))).toContain("You are on duty");
    expect(textOf(await club.ask("/case duty set:off", "bruno"))).toContain("off duty");
  });

  it("/case place is for those who look after the server", async () => {
    expect(textOf(await club.ask("/case place channel:here"))).toContain("Only those who look after");
  });
});
