import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Club, openClub, textOf } from "../support/club.ts";

let club: Club;
beforeEach(async () => {
  club = openClub();
  for (const line of [
    "/tank add name:Lagoon kind:marine containers:box 2000 L measured",
    "/tank note salinity:34 ppt temperature:26 °C",
    "/settings gallon:US gravity:25/25 °C",
    "/log line:no3 20, alk 8.1 dkh when:2026-01-10",
    "/log line:no3 24 when:2026-01-20",
    "/log line:wc 30 % when:2026-01-22",
    "/log line:no3 20 when:2026-01-25",
    "/log line:added 1 trigger when:2026-02-01",
    "/log line:no3 26 when:2026-02-05",
    "/log line:no3 31 when:2026-02-14",
    "/log line:no3 33 when:2026-02-22",
    "/log line:no3 37 when:2026-03-01",
  ])
    await club.ask(line);
});
afterEach(() => {
  club.store.close();
  expect(club.defects).toEqual([]);
});

describe("a question that another command answers", () => {
  it.each([
    ["how much salt for 60 gal at 1.025", "→ /salt mix volume:60 gal salinity:1.025"],
    ["what is 1.026 in ppt", "→ /salt convert salinity:1.026"],
    ["how much water in my system", "→ /tank show"],
    ["how long until no3 hits 40", "→ /trend of:nitrate limit:40"],
    ["what will a 30% water change do to 80 nitrate", "→ /change effect now:80 mg/L size:30%"],
    ["how much water to change to get nitrate down to 20", "→ /change plan now:37 mg/L target:20 mg/L"],
    ["how much oxygen can the lagoon hold", "→ /oxygen full tank:Lagoon"],
    ["convert 20 gallons to litres", "→ /convert quantity:20 gallons to:litres"],
  ])("“%s” says what to type for the same, and is answered by that", async (question, typed) => {
    const reply = await club.ask(`/ask question:${question}`);
    expect(reply.ok).toBe(true);
    expect(reply.body[0]).toContain(typed);
    const line = reply.body[0]?.split("→ ")[1] ?? "";
    const same = await club.ask(line);
    expect(reply.headline).toBe(same.headline);
    expect(reply.body.slice(1)).toEqual(same.body);
  });

  it("finds the logged event behind “since I added the trigger”", async () => {
    const reply = await club.ask("/ask question:is nitrate in the lagoon going up since I added the trigger");
    expect(reply.title).toContain("livestock in: 1 trigger (1 Feb 2026)");
  });

  it("asks for what is missing, and the answer completes it", async () => {
    const asked = await club.say("/ask question:how much salt for 200 L");
    expect(textOf(asked)).toContain("To which salinity?");
    expect(textOf(await club.fill("35 ppt"))).toContain("kg");
  });

  it("asks of what, when it was not said", async () => {
    const asked = await club.say("/ask question:is it going up");
    expect(textOf(asked)).toContain("Of what?");
    expect((await club.pick("nitrate")).title).toContain("Lagoon: nitrate");
  });
});

describe("a question that the record answers", () => {
  // Every expected value is what was logged above.
  it.each([
    ["what is my nitrate", "nitrate 37 mg/L as NO3"],
    ["what was alk in january", "alkalinity 8.1 dKH"],
    ["what was nitrate in february", "26 to 33 mg/L"],
    ["what was nitrate on 14 february", "nitrate 31 mg/L as NO3"],
    ["what was nitrate last week", "nitrate 37 mg/L as NO3"],
    ["nitrate at the end of january", "20 mg/L"],
  ])("“%s”: %s", async (question, answer) => {
    expect((await club.ask(`/ask question:${question}`)).headline).toContain(answer);
  });

  it("tells the readings on either side when none was taken that day", async () => {
    const text = textOf(await club.ask("/ask question:what was nitrate on 10 february"));
    expect(text).toContain("Nothing logged then");
    expect(text).toMatch(/Last before: nitrate 26 .*5 Feb[\s\S]*First after: nitrate 31 .*14 Feb/);
  });

  it.each([
    ["when did I last change water", "Thu 22 Jan 2026"],
    ["wen was my last wc", "Thu 22 Jan 2026"],
    ["when did i add the trigger", "Sun 1 Feb 2026"],
    ["when did i last test nitrate", "Sun 1 Mar 2026"],
  ])("“%s”: %s", async (question, day) => {
    expect(textOf(await club.ask(`/ask question:${question}`))).toContain(day);
  });

  it("says when nothing of the kind is logged, rather than telling of something else", async () => {
    expect(textOf(await club.ask("/ask question:when did i add the tang"))).toContain(
      "None with “tang” is logged",
    );
  });

  it("is nobody else's to ask", async () => {
    const outcome = await club.say("/ask question:what is nitrate in the lagoon right now", "bruno");
    expect(textOf(outcome)).not.toContain("37");
  });
});

describe("writing", () => {
  it("is done when ordered", async () => {
    expect((await club.ask("/ask question:log nitrate 41")).title).toBe("Lagoon: logged");
    expect((await club.ask("/ask question:what is my nitrate")).headline).toContain("41");
  });

  it("is read back first when it was only told", async () => {
    const asked = await club.say("/ask question:nitrate is 44 today");
    expect(asked.kind).toBe("question");
    expect((await club.ask("/ask question:what is my nitrate")).headline).toContain("37");
    await club.say("/ask question:nitrate is 44 today");
    expect((await club.pick("Log it")).title).toBe("Lagoon: logged");
  });
});

describe("what is not for a bot", () => {
  it.each([
    ["my clownfish has white spots", "vet"],
    ["how much copper for 60 gal", "vet"],
    ["what fuse do i need for 3 pumps", "licensed electrician"],
    ["how thick glass for a 200 cm long tank", "structural engineer"],
  ])("“%s” goes to the %s", async (question, who) => {
    expect(textOf(await club.ask(`/ask question:${question}`))).toContain(who);
  });

  it("is not understood, and says what is", async () => {
    const reply = await club.ask("/ask question:who won the match yesterday");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("how much salt for 60 gal");
  });
});

describe("somebody hurt", () => {
  it("is answered before anything else, whatever the command", async () => {
    for (const line of [
      "/ask question:my lionfish stung me how much salt for 60 gal",
      "/log line:note i got shocked by the heater",
      "/salt mix volume:i cut my hand on the glass salinity:35 ppt",
    ]) {
      const reply = await club.ask(line);
      expect(reply.title).toBe("People first");
      expect(reply.headline).toContain("emergency number");
      expect(reply.body.join(" ")).not.toContain("salt mix");
      expect(reply.cautions[0]?.level).toBe("danger");
    }
    expect(textOf(await club.ask("/readings count:1"))).not.toContain("shocked");
  });

  it("tells the numbers the member noted, and makes none up", async () => {
    const without = textOf(await club.ask("/ask question:my lionfish stung me"));
    expect(without).not.toMatch(/\d{3}/);
    await club.ask("/plant people contacts:Dr Alva 555 0142");
    expect(textOf(await club.ask("/ask question:my lionfish stung me"))).toContain("Dr Alva 555 0142");
    const aloud = await club.ask("/ask question:my lionfish stung me show:everyone here");
    expect(textOf(aloud)).not.toContain("555");
  });

  it("is no reading of ordinary words", async () => {
    for (const line of [
      "/stocking load livestock:1 stingray 4 kg volume:2000 L",
      "/log line:fed 40 g cut squid",
      "/log line:note salinity shock avoided, gas bubbles on the rock",
    ])
      expect((await club.say(line)).title).not.toBe("People first");
  });
});
