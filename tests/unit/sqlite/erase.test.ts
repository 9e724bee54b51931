import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openClub } from "../../support/club.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Every row of every table, as text. */
function rowsOf(file: string): readonly { readonly table: string; readonly row: string }[] {
  const db = new SqliteDatabase(file, { readonly: true });
  const tables = db
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('migration', 'sqlite_sequence')",
    )
    .pluck()
    .all()
    .map(String);
  const rows = tables.flatMap((table) =>
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
    "/tank note livestock:1 brown-marbled grouper 55 cm salinity:34 ppt",
    "/log no3 20, temp 25, note zanzinote",
    "/log no3 22 with:",
    "/correct reading:1 to:no3 21",
    "/undo",
    "/instrument add name:zanzichart for:nitrate steps:0 5 10",
    "/settings gallon:US zone:Africa/Nairobi",
    "/salt calibrate used:4233.6 g volume:98.39 L read:35 ppt product:zanzisalt",
    "/salt mix volume:100 L",
    "/dose together first:zanzipowder second:water",
  ])
    await club.say(line);
  club.store.isNews("event-1", new Date(club.now).toISOString());
  await club.ask("/tank add name:Bruno's kind:fresh containers:box 100 L measured", "bruno");
  const before = rowsOf(file);
  const tables = new Set(before.map(({ table }) => table));
  for (const table of [
    "member",
    "tank",
    "tank_name",
    "tank_share",
    "batch",
    "reading",
    "event",
    "instrument",
    "salt_product",
    "exchange",
  ])
    expect(tables).toContain(table);

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
