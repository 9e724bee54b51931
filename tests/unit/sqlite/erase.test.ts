import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { memberId, openClub } from "../../support/club.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

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
    "/dose together first:zanzipowder second:water",
  ])
    await club.say(line);
  club.app.keepFile(memberId("ines"), "zanzi.csv", "date,no3");
  await club.ask("/tank add name:Bruno's kind:fresh containers:box 100 L measured", "bruno");
  // As a chat platform would tell it: each is the other's helper, and a file waits to be taken up.
  const { tanks, uploads } = club.store.records;
  const [own, brunos] = [tanks.own(memberId("ines"))[0]?.id ?? 0, tanks.own(memberId("bruno"))[0]?.id ?? 0];
  tanks.share(memberId("ines"), own, { kind: "member", id: memberId("bruno") });
  tanks.share(memberId("bruno"), brunos, { kind: "member", id: memberId("ines") });
  uploads.keep(
    memberId("ines"),
    { id: "u1", name: "zanzi.csv", content: "zanzi" },
    new Date(club.now).toISOString(),
  );
  club.store.isNews("event-1", new Date(club.now).toISOString());
  const before = rowsOf(file);
  const filled = new Set(before.map(({ table }) => table));
  // A table that this story leaves empty would prove nothing: whoever adds one adds a line above.
  expect(tablesOf(file).filter((table) => !filled.has(table) && table !== "club")).toEqual([]);

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
