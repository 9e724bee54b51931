import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { z } from "zod";
import { createClockwork } from "../../../src/reminders/clockwork.ts";
import { memberId, openClub } from "../../support/club.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** What the story below must have filled, or it would prove nothing. */
const STORY_FILLS = [
  "member",
  "tank",
  "tank_name",
  "tank_share",
  "tank_helper",
  "target",
  "batch",
  "reading",
  "event",
  "instrument",
  "salt_product",
  "upload",
  "exchange",
  "help_case",
  "help_entry",
  "help_duty",
];
/** Of no one member: what a club is used to, and which events were seen. */
const OF_NOBODY = [
  "club",
  "seen_event",
  // A breeding group's ledger knows people by number; tests/unit/sqlite/breeding.test.ts holds it to that.
  "breeding_event",
  "breeding_note",
  "breeding_snapshot",
];
/** Named without a reference, and so erased by hand: filled by the story. */
const BY_HAND = ["exchange.member_id", "tank_helper.member_id", "breeding_person.member_id"];

function tablesOf(file: string): readonly string[] {
  const db = new SqliteDatabase(file, { readonly: true });
  const tables = db
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('migration', 'sqlite_sequence')",
    )
    .pluck()
    .all()
    .map(String);
  db.close();
  return tables;
}

/** Every row of every table, as text. */
function rowsOf(file: string): readonly { readonly table: string; readonly row: string }[] {
  const db = new SqliteDatabase(file, { readonly: true });
  const rows = tablesOf(file).flatMap((table) =>
    db
      .prepare(`SELECT * FROM "${table}"`)
      .all()
      .map((row) => ({ table, row: JSON.stringify(row) })),
  );
  db.close();
  return rows;
}

it("leaves no row of any table and no byte of the file that speaks of the member", async () => {
  const file = join(folder, "club.sqlite");
  const club = openClub(file);
  for (const line of [
    "/tank add name:Zanzibarium kind:marine containers:zanzidrum 1500 L measured",
    "/tank name alias:zanzialias",
    "/tank share tank:Zanzibarium",
    "/tank share tank:Zanzibarium helper:@zanzihelper for:2 weeks",
    "/target of:nitrate range:under 20",
    "/tank note livestock:1 brown-marbled grouper 55 cm salinity:34 ppt",
    "/log no3 20, temp 25, note zanzinote",
    "/target of:nitrate range:under 20",
    "/log no3 22 with:",
    "/correct reading:1 to:no3 21",
    "/undo",
    "/instrument add name:zanzichart for:nitrate steps:0 5 10",
    "/settings gallon:US zone:Africa/Nairobi",
    "/salt calibrate used:4233.6 g volume:98.39 L read:35 ppt product:zanzisalt",
    "/salt mix volume:100 L",
    "/plan add task:zanzitask when:every day 19:00",
    "/plan off device:zanziskimmer for:2 h",
    "/plan remind quiet:never",
    "/regimen start pattern:water changes",
    "/dose together first:zanzipowder second:water",
    "/case open worry:zanzifish hide readings:ammonia 0.5",
    "/case advise step:zanzistep",
    "/case did what:zanzideed",
    "/case duty set:on",
  ])
    await club.say(line);
  club.app.keepFile(memberId("ines"), "zanzi.csv", "date,no3");
  await club.ask("/tank add name:Bruno's kind:fresh containers:box 100 L measured", "bruno");
  await club.ask("/case show case:1", "bruno");
  await club.ask("/case list", "bruno");
  await club.ask("/case add case:1 readings:zanzireading, nitrite 0.3", "bruno");
  await club.ask("/case advise case:1 step:feed less", "bruno");
  await club.ask("/case hand case:1 to:@bruno");
  club.store.records.help.setCard(1, { place: "zanziplace", messageId: "1" });
  // As a chat platform would tell it: each is the other's helper, and a file waits to be taken up.
  const { tanks, uploads } = club.store.records;
  const [own, brunos] = [tanks.own(memberId("ines"))[0]?.id ?? 0, tanks.own(memberId("bruno"))[0]?.id ?? 0];
  tanks.share(memberId("ines"), own, { reader: { kind: "helper", id: memberId("bruno") } });
  tanks.share(memberId("bruno"), brunos, { reader: { kind: "helper", id: memberId("ines") } });
  uploads.keep(
    memberId("ines"),
    { id: "u1", name: "zanzi.csv", content: "zanzi" },
    new Date(club.now).toISOString(),
  );
  // A reminder lies there, not yet delivered.
  await createClockwork({
    records: club.store.records,
    reminders: club.store.reminders,
    poster: { prefix: "test:", post: async () => ({ kind: "uncertain", why: "no answer" }) },
    clock: () => club.now + 3 * 3_600_000,
    newKey: () => "letter-1",
    log: () => undefined,
  }).tick();
  club.store.isNews("event-1", new Date(club.now).toISOString());
  const before = rowsOf(file);
  const filled = new Set(before.map(({ table }) => table));
  for (const table of STORY_FILLS) expect(filled).toContain(table);

  await club.say("/erase");
  await club.pick("Erase everything");

  const after = rowsOf(file);
  expect(after.filter(({ row }) => /test:ines|zanzi|nairobi/i.test(row))).toEqual([]);
  expect(new Set(after.map(({ table }) => table))).toEqual(
    new Set(["member", "tank", "tank_name", "exchange", "seen_event"]),
  );
  expect(
    after.every(
      ({ table, row }) => table === "seen_event" || row.includes("bruno") || table.startsWith("tank"),
    ),
  ).toBe(true);
  for (const name of readdirSync(folder)) {
    const bytes = readFileSync(join(folder, name)).toString("latin1");
    expect(bytes, name).not.toMatch(/zanzi|test:ines|nairobi/i);
  }
  club.store.close();
});

const reference = z.object({ table: z.string(), from: z.string(), on_delete: z.string() });

it("every table, whoever adds it, hangs on the member and goes with them", () => {
  const file = join(folder, "club.sqlite");
  openClub(file).store.close();
  const db = new SqliteDatabase(file, { readonly: true });
  const tables = tablesOf(file).filter((table) => !OF_NOBODY.includes(table));
  expect(tables.length).toBeGreaterThan(10);
  const parents = new Map(
    tables.map((table) => [table, z.array(reference).parse(db.pragma(`foreign_key_list("${table}")`))]),
  );
  const isErased = (table: string, on: readonly string[] = []): boolean =>
    table === "member" ||
    BY_HAND.some((column) => column.startsWith(`${table}.`)) ||
    (parents.get(table) ?? []).some(
      (each) =>
        each.on_delete === "CASCADE" && !on.includes(each.table) && isErased(each.table, [...on, table]),
    );
  expect(tables.filter((table) => !isErased(table))).toEqual([]);
  // A column that names a member is a reference too, so that no table keeps somebody else's name for them.
  const loose = tables.flatMap((table) =>
    z
      .array(z.object({ name: z.string() }))
      .parse(db.pragma(`table_info("${table}")`))
      .filter(({ name }) => /member|owner/.test(name))
      .filter(({ name }) => !(parents.get(table) ?? []).some((each) => each.from === name))
      .map(({ name }) => `${table}.${name}`),
  );
  db.close();
  expect(loose.filter((column) => !BY_HAND.includes(column))).toEqual([]);
});
