import { beforeEach, describe, expect, it } from "vitest";
import { createClockwork } from "../../src/reminders/clockwork.ts";
import { type Club, memberId, openClub, textOf } from "../support/club.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

let club: Club;
beforeEach(async () => {
  // Wednesday 4 March 2026, noon UTC, which is noon in Lisbon too.
  club = openClub();
  await club.ask("/settings zone:Europe/Lisbon");
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1000 L measured");
});

/** Lets time pass; no platform is there, so nothing is sent. */
async function pass(ms: number): Promise<void> {
  club.now += ms;
  await createClockwork({
    records: club.store.records,
    reminders: club.store.reminders,
    clock: () => club.now,
    newKey: () => "unused",
    log: (line, error) => {
      throw new Error(line, { cause: error });
    },
  }).tick();
}

async function said(line: string, as?: string): Promise<string> {
  return textOf(await club.ask(line, as));
}

describe("/plan add", () => {
  it("plans once, by weekdays, every so many days, and says when it is due next", async () => {
    expect(await said("/plan add task:clean the glass when:mon, thu 8pm")).toContain("Next: Thu 20:00");
    expect(await said("/plan add task:test nitrate when:tomorrow 9am")).toContain(
      "Thu 5 Mar at 09:00. Next: Thu 09:00",
    );
    expect(await said("/plan add task:feed when:every 3 days 19:00")).toContain("Next: Wed 19:00");
    const rows = (await club.ask("/plan list")).table?.rows ?? [];
    expect(rows.map((row) => row[2])).toEqual(["Clean the glass", "Test nitrate", "Feeding"]);
  });

  it("keeps the hour on the wall when the clocks change", async () => {
    // Lisbon: from 29 March 2026, 01:00 UTC, summer time, UTC+1 (IANA time zone database).
    await said("/plan add task:feed when:every day 19:00");
    await pass(23 * DAY + 7.5 * HOUR);
    // Friday the 27th, 19:30 UTC.
    expect(await said("/plan list")).toContain("Sat 19:00");
    const due = () => club.store.records.plans.open(memberId("ines")).at(-1)?.dueAt;
    expect(due()).toBe("2026-03-27T19:00:00.000Z");
    await pass(2 * DAY);
    expect(due()).toBe("2026-03-29T18:00:00.000Z");
  });

  it("moves with its member to another time zone, and never comes twice on one day", async () => {
    await said("/plan add task:feed when:every day 19:00");
    await pass(8 * HOUR);
    await club.ask("/settings zone:America/New_York");
    await pass(1);
    // 5 March 2026, 19:00 in New York is midnight UTC (UTC−5 until 8 March; IANA time zone database).
    const next = club.store.records.plans.of(memberId("ines"))[0]?.nextAt;
    expect(next).toBe("2026-03-06T00:00:00.000Z");
  });

  it("follows each event of the log", async () => {
    expect(await said("/plan add task:test nitrate when:2 days after each water change")).toContain(
      "waits for the log",
    );
    await club.ask("/log wc 30 %");
    await pass(0);
    expect(await said("/plan list")).toContain("Fri 12:00");
    await pass(2 * DAY);
    expect(await said("/plan due")).toContain("test nitrate (due Fri 12:00)");
    await club.ask("/undo");
    await club.ask("/log wc 20 %");
    await pass(2 * DAY);
    expect(club.store.records.plans.open(memberId("ines"))).toHaveLength(2);
  });

  it("ends when the log says so", async () => {
    await said("/plan add task:water change 20 % when:every 2 days until:nitrate under 10 twice");
    await club.ask("/log no3 8");
    await pass(1);
    expect(await said("/plan list")).toContain("until nitrate is under 10");
    await club.ask("/log no3 7");
    await pass(1);
    expect(await said("/plan list")).toContain("None yet");
  });

  it("refuses what it cannot read, and asks for what is missing", async () => {
    expect(textOf(await club.say("/plan add task:feed when:whenever"))).toContain("no time I can read");
    expect(textOf(await club.say("/plan add task:feed when:yesterday 9pm"))).toContain("passed");
    expect(textOf(await club.say("/plan add task:feed"))).toContain("Still needed");
    expect(textOf(await club.say("/plan add task:feed when:daily", "nobody"))).toContain("/tank add");
  });
});

describe("/plan due, /plan done, /plan later and /plan skip", () => {
  it("show what is due with its amount worked out, and log it with the real one", async () => {
    await club.ask("/tank note salinity:35 ppt");
    await said("/plan add task:water change 30 % when:every 7 days 19:00");
    await pass(8 * HOUR);
    // 300 L at 35 ppt: 10.8 kg of dry salt, over a yield of 0.85 to 0.95 (common practice): 11.4 to 12.7 kg.
    expect(await said("/plan due")).toMatch(/300 L .*: (11\.[4-9]|12\.[0-7]) kg/);
    expect(await said("/plan done amount:250 L")).toContain("250 L");
    expect(await said("/readings")).toContain("250 L");
    expect(await said("/plan done task:1 amount:260 L")).toContain("260 L");
    const readings = await said("/readings");
    expect(readings).toContain("260 L");
    expect(readings).not.toContain("250 L");
    expect(await said("/plan done task:1")).toContain("done already");
    expect(await said("/plan due")).toContain("Nothing is due");
  });

  it("asks for the reading of a test, or takes one that is logged", async () => {
    await said("/plan add task:test nitrate when:every day 19:00");
    await pass(8 * HOUR);
    expect(textOf(await club.say("/plan done"))).toContain("What did you read");
    expect(textOf(await club.fill("12"))).toContain("Nitrate 12");
    await pass(DAY);
    await club.ask("/log no3 14");
    expect(await said("/plan done")).toContain("in the log already");
    expect((await said("/readings")).match(/nitrate 1/g)).toHaveLength(2);
  });

  it("cannot touch what is another member's", async () => {
    await said("/plan add task:feed when:every day 19:00");
    await pass(8 * HOUR);
    for (const line of ["/plan done task:1", "/plan later task:1", "/plan skip task:1"])
      expect((await club.ask(line, "mallory")).ok).toBe(false);
    expect((await club.ask("/plan stop plan:1", "mallory")).ok).toBe(false);
    expect(await said("/plan due")).toContain("feeding");
  });

  it("refuses to skip what has to come back, and what is settled", async () => {
    await said("/plan off device:skimmer for:2 h");
    await pass(3 * HOUR);
    expect(textOf(await club.say("/plan skip"))).toContain("has to come back");
    expect(await said("/plan done")).toContain("Skimmer on");
    expect((await club.ask("/plan later task:2")).ok).toBe(false);
  });
});

describe("/plan off", () => {
  it("stands in the tank's state, with when it is due back", async () => {
    club.now = Date.UTC(2026, 2, 3, 20, 10);
    const off = await said("/plan off device:skimmer for:48 h because:bacteria added");
    expect(off).toContain("Back on Thu 20:10");
    expect(off).toContain("keep air running");
    expect(await said("/tank show")).toContain("off since Tue 20:10 (bacteria added), due on Thu 20:10");
    expect(await said("/readings")).toContain("skimmer off");
  });

  it("is over when the log says that it is on again, and not by an older entry", async () => {
    await said("/plan off device:skimmer for:48 h");
    await club.ask("/log skimmer on when:yesterday 9pm");
    expect(await said("/plan list")).toContain("skimmer off since".slice(1));
    club.now += HOUR;
    await club.ask("/log skimmer on");
    expect(await said("/plan list")).not.toContain("off since");
    await pass(3 * DAY);
    expect(await said("/plan due")).toContain("Nothing is due");
  });

  it("says who decides how long a treatment lasts", async () => {
    expect(await said("/plan off device:UV for:5 days because:medicine added")).toContain("vet");
  });

  it("takes no amount, and is not switched off anew by being answered twice", async () => {
    await said("/plan off device:skimmer for:48 h");
    await pass(HOUR);
    expect((await club.ask("/plan done task:1 amount:250 L")).ok).toBe(false);
    expect(await said("/plan done task:1")).toContain("done already");
    expect(await said("/plan list")).toContain("due on Fri 12:00");
  });

  it("refuses a length of nothing, and one of years", async () => {
    expect((await club.ask("/plan off device:skimmer for:0 h")).ok).toBe(false);
    expect((await club.ask("/plan off device:skimmer for:500 days")).ok).toBe(false);
  });
});

describe("/plan list, /plan pause, /plan resume, /plan shift and /plan stop", () => {
  it("rest, go on, move and end a plan", async () => {
    await said("/plan add task:feed when:every 3 days 19:00");
    expect(await said("/plan pause")).toContain("rests");
    await pass(4 * DAY);
    expect(await said("/plan due")).toContain("Nothing is due");
    expect(await said("/plan resume")).toContain("Next: Tue 19:00");
    expect(await said("/plan shift by:2 days")).toContain("Next: Thu 19:00");
    await pass(4.5 * DAY);
    expect(await said("/plan list")).toContain("Sun 19:00");
    expect(await said("/plan stop")).toContain("over");
    expect(textOf(await club.say("/plan pause"))).toContain("no plan yet");
    expect((await club.ask("/plan pause plan:1")).ok).toBe(false);
  });

  it("a question names the plans when there are several", async () => {
    await said("/plan add task:feed when:daily");
    await said("/plan add task:clean the glass when:daily");
    expect(textOf(await club.say("/plan stop"))).toContain("Which plan?");
    expect(textOf(await club.pick("clean the glass"))).toContain("Clean the glass");
    expect(await said("/plan list")).toContain("Feeding");
  });
});

describe("/plan remind", () => {
  it("sets quiet hours, and refuses a channel where there is none", async () => {
    expect(await said("/plan remind quiet:10pm to 7am")).toContain("22:00 to 07:00");
    expect(await said("/plan remind quiet:never")).toContain("At any hour");
    expect((await club.ask("/plan remind where:here")).ok).toBe(false);
    expect(textOf(await club.say("/plan remind quiet:sometimes"))).toContain("no two times of day");
  });
});

describe("/plan export", () => {
  it("writes each date in UTC, so that the hour on the wall stays", async () => {
    await said("/plan add task:feed when:every day 19:00");
    const reply = await club.ask("/plan export");
    const file = reply.files?.[0]?.content ?? "";
    expect(reply.files?.[0]?.mediaType).toBe("text/calendar");
    expect(file).toContain("DTSTART:20260328T190000Z");
    expect(file).toContain("DTSTART:20260329T180000Z");
    expect(file).toContain("SUMMARY:Lagoon: feeding");
    const again = (await club.ask("/plan export")).files?.[0]?.content;
    expect(again).toBe(file);
    expect((await club.ask("/plan export", "bruno")).ok).toBe(false);
  });
});
