import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { Conversation } from "../../src/console/conversation.ts";
import type { Outcome } from "../../src/kit/reply.ts";
import { type Club, openClub, textOf } from "../support/club.ts";

let club: Club;
let talk: Conversation;
let folder: string;
beforeEach(async () => {
  club = openClub();
  talk = new Conversation(club.app, "ines");
  folder = mkdtempSync(join(tmpdir(), "standpipe-import-"));
  await say("/tank add name:Lagoon kind:marine containers:box 200 L measured");
});
afterEach(() => {
  expect(club.defects).toEqual([]);
  rmSync(folder, { recursive: true, force: true });
});

async function say(line: string): Promise<Outcome> {
  const said = await talk.take(line);
  if (said.kind === "outcome") return said.outcome;
  throw new Error(said.kind === "remark" ? said.text : said.kind);
}

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const readings = () => {
  const owner = talk.member;
  const [tank] = club.store.records.tanks.own(owner);
  return club.store.records.log.everything(owner, tank?.id ?? 0).readings;
};

describe("/import", () => {
  it("guesses the columns, tries out, and keeps nothing before it is confirmed", async () => {
    const path = file("log.csv", "Date,NO3 (ppm),pH,remarks\n2026-01-05,20,8.1,fine\n2026-01-12,25,8.0,\n");
    const trial = await say(`/import file:${path}`);
    expect(textOf(trial)).toContain("NO3 (ppm) → nitrate");
    expect(textOf(trial)).toContain("Import 4 readings?");
    expect(readings()).toHaveLength(0);
    expect(textOf(await say("1"))).toContain("4 readings");
    // 20 ppm as NO3 is kept as typed: mg/L as the ion is the canonical unit.
    expect(
      readings()
        .filter(({ parameter }) => parameter === "nitrate")
        .map(({ best }) => best),
    ).toEqual([20, 25]);
    expect(readings().map(({ at }) => at)).toContain("2026-01-05T12:00:00.000Z");
  });

  it("tells bad rows by their line and leaves them out whole; undo takes the rest back", async () => {
    const path = file(
      "log.csv",
      'date;no3;note\n2026-01-05;20;"two\nlines"\n2026-13-40;20;\n2026-01-06;lots;\n2099-01-01;20;\n2026-01-07;30;\n',
    );
    const trial = textOf(await say(`/import file:${path}`));
    expect(trial).toContain("Import 2 readings?");
    expect(trial).toMatch(/line 4: “2026-13-40”/);
    expect(trial).toMatch(/line 5: no3:/);
    expect(trial).toMatch(/line 6: .*still to come/);
    await say("1");
    expect(readings()).toHaveLength(2);
    await say("/undo");
    expect(readings()).toHaveLength(0);
  });

  it("asks which comes first, day or month, when the file does not tell", async () => {
    const path = file("log.csv", "date,nitrate\n03/04/2026,20\n05/02/2026,25\n");
    club.now = Date.UTC(2026, 6, 1);
    expect(textOf(await say(`/import file:${path}`))).toContain("the day or the month");
    await say("day first");
    await say("1");
    expect(readings().map(({ at }) => at.slice(0, 10))).toEqual(["2026-02-05", "2026-04-03"]);
  });

  it("asks once for the scale of a column", async () => {
    const path = file("log.csv", "date,sg\n2026-01-05,1.025\n2026-01-06,1.0255\n");
    expect(textOf(await say(`/import file:${path}`))).toContain("two temperatures");
    expect(textOf(await say("1"))).toContain("Import 2 readings?");
    await say("1");
    // 1.025 at 25/25 °C is SP 33.19 (EOS-80; UNESCO Technical Papers in Marine Science 44).
    expect(readings()[0]?.best).toBeCloseTo(33.19, 1);
  });

  it("reads what /export writes, and leaves out what is there already", async () => {
    await say("/log no3 20, alk 7.4 dKH, ph 8.1");
    const exported = await say("/export");
    const csv = exported.kind === "reply" ? (exported.files?.[0]?.content ?? "") : "";
    const path = file("record.csv", csv);
    expect(textOf(await say(`/import file:${path}`))).toContain("in the record already");
    await say("/undo");
    await say(`/import file:${path}`);
    await say("1");
    // 7.4 dKH ÷ 2.8039 dKH per meq/L (standard atomic weights) = 2.639 meq/L.
    expect(readings().find(({ parameter }) => parameter === "alkalinity")?.best).toBeCloseTo(2.639, 3);
  });

  it("takes lists of objects and one value a row", async () => {
    const path = file(
      "log.json",
      JSON.stringify([{ when: "2026-01-05T20:00:00Z", parameter: "NO3", value: 4.5, unit: "mg/L as N" }]),
    );
    await say(`/import file:${path}`);
    await say("1");
    // 4.5 mg/L as N × 4.4268 = 19.92 mg/L as the ion (standard atomic weights).
    expect(readings()[0]?.best).toBeCloseTo(19.92, 2);
    expect(readings()[0]?.at).toBe("2026-01-05T20:00:00.000Z");
  });

  it.each([
    ["empty.csv", ""],
    ["noise.csv", "\u0000\u0001\u0002"],
    ["one.csv", "just a sentence"],
    ["broken.json", '{"readings": ['],
    ["nested.json", '{"a": {"b": 1}}'],
    ["head.csv", "date,nitrate\n"],
    ["unknown.csv", "colour,mood\nred,fine\n"],
    ["nowhen.csv", "nitrate,ph\n20,8\n"],
  ])("says why %s holds no table", async (name, content) => {
    const outcome = await say(`/import file:${file(name, content)}`);
    expect(outcome.kind === "reply" && outcome.ok).toBe(false);
    expect(textOf(outcome).length).toBeGreaterThan(20);
  });

  it("says so when the file is not there", async () => {
    expect(await talk.take("/import file:/nowhere/at/all.csv")).toMatchObject({ kind: "remark", ok: false });
  });
});
