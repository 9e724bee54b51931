import { beforeEach, describe, expect, it } from "vitest";
import { type Club, memberId, openClub, START, textOf } from "../support/club.ts";

const INES = memberId("ines");
const hoursAgo = (hours: number) => new Date(START - hours * 3_600_000).toISOString();

/** Puts one event into the log of the only tank, so many hours ago. */
function did(club: Club, hours: number, event: string, text: string): void {
  const [tank] = club.store.records.tanks.own(INES);
  const at = hoursAgo(hours);
  club.store.records.log.add({
    owner: INES,
    tankId: tank?.id ?? 0,
    line: `${event} ${text}`,
    readings: [],
    events: [{ event, text, typed: text, readAs: `${event} ${text}`, at }],
    now: at,
  });
}

function read(club: Club, hours: number, ammonia: number): void {
  const [tank] = club.store.records.tanks.own(INES);
  const at = hoursAgo(hours);
  const reading = {
    parameter: "ammonia",
    best: ammonia,
    low: ammonia,
    high: ammonia,
    typed: "",
    readAs: `ammonia ${ammonia} mg/L`,
    at,
  };
  club.store.records.log.add({
    owner: INES,
    tankId: tank?.id ?? 0,
    line: "ammonia",
    readings: [reading],
    events: [],
    now: at,
  });
}

// The rules are habits of the trade (common practice, no source): carbon needs everything running, a total-ammonia
// test means nothing within 48 h of a binder, no rise of pH with ammonia in the water, calcium and carbonate apart.
describe("/clash", () => {
  let club: Club;
  beforeEach(async () => {
    club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm");
  });

  it("finds carbon planned while the skimmer is off", async () => {
    did(club, 5, "equipment off", "skimmer");
    const reply = await club.ask("/clash plan:dose alcohol");
    expect(reply.headline).toBe("1 clash found");
    expect(textOf(reply)).toContain("Carbon is due while the skimmer is off");
    expect(textOf(reply)).toContain("It meets equipment off skimmer (5 hours ago)");
    expect(reply.cautions[0]?.level).toBe("danger");
    did(club, 1, "equipment on", "skimmer");
    expect((await club.ask("/clash plan:dose alcohol")).headline).toBe("No clash found");
  });

  it("judges no medicine, and says whom to ask", async () => {
    const reply = await club.ask("/clash plan:dose formalin");
    expect(reply.headline).toBe("Not judged: a medicine is for a vet");
    expect(reply.cautions[0]).toMatchObject({ level: "danger" });
    expect(textOf(await club.ask("/clash plan:dose blue powder"))).toContain("is not known here");
  });

  it("finds equipment about to go off soon after carbon", async () => {
    did(club, 3, "dose", "vodka");
    const reply = await club.ask("/clash plan:skimmer off in:2 h");
    expect(textOf(reply)).toContain("The skimmer goes off 5 h after a carbon dose");
    expect((await club.ask("/clash plan:skimmer off in:30 h")).headline).toBe("No clash found");
  });

  it("finds an ammonia test within two days of a binder, unless it sees only free ammonia", async () => {
    did(club, 20, "dose", "ammonia binder");
    expect(textOf(await club.ask("/clash plan:test ammonia"))).toContain("comes 20 h after a binder");
    expect(textOf(await club.ask("/clash plan:test ammonia in:27 h"))).toContain("comes 47 h after a binder");
    expect((await club.ask("/clash plan:test ammonia in:29 h")).headline).toBe("No clash found");
    expect((await club.ask("/clash plan:test free ammonia")).headline).toBe("No clash found");
  });

  it("asks about the new water's pH when there was ammonia", async () => {
    read(club, 4, 0.5);
    const asked = await club.say("/clash plan:water change");
    expect(textOf(asked)).toContain("Is the pH of the new water higher");
    expect(textOf(await club.pick("Yes, or not known"))).toContain("raises the pH while there is ammonia");
    await club.say("/clash plan:water change");
    const fine = await club.pick("No, equal or lower");
    expect(fine.kind === "reply" && fine.headline).toBe("No clash found");
  });

  it("keeps calcium and carbonate apart, and changes a week apart", async () => {
    did(club, 1, "dose", "calcium chloride");
    expect(textOf(await club.ask("/clash plan:dose bicarbonate"))).toContain("they fall out as chalk");
    expect((await club.ask("/clash plan:dose bicarbonate in:2 h")).headline).toBe("No clash found");
    did(club, 72, "media change", "carbon");
    expect(textOf(await club.ask("/clash plan:switch to a new food"))).toContain("Two changes 3 days apart");
  });

  it("asks what it cannot tell, and which tank when there is none", async () => {
    const odd = await club.say("/clash plan:%00{}[]");
    expect(odd.kind).toBe("question");
    expect(textOf(odd)).toContain("What kind of thing is");
    expect((await club.say("/clash plan:dose alcohol in:-5 h")).kind).toBe("question");
    const none = await openClub().say("/clash plan:dose alcohol");
    expect(textOf(none)).toContain("Which tank?");
    const theirs = await club.say("/clash plan:dose alcohol tank:Lagoon", "bruno");
    expect(theirs.kind === "question" && theirs.isMistake).toBe(true);
  });
});
