import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

/** Which words a room's files may not hold: imports that point the wrong way, and hidden inputs. */
const rooms = [
  {
    room: "src/core",
    forbid:
      /from "(?!\.{1,2}\/)(?!zod")|discord\.js|better-sqlite3|from "node:|Date\.now|new Date\(\)|DateTime\.(now|local)|Math\.random|process\.|\/(kit|records|wording|sqlite|discord|console|charts|reminders)\//,
  },
  { room: "src/records", forbid: /discord\.js|better-sqlite3|\/(kit|sqlite|discord|console|wording)\// },
  { room: "src/wording", forbid: /discord\.js|better-sqlite3|\/(kit|sqlite|discord|console|records)\// },
  {
    room: "src/expression",
    forbid:
      /discord\.js|better-sqlite3|from "node:|from "mathjs"|Date\.now|Math\.random|process\.|\/(kit|records|wording|sqlite|discord|console|commands)\//,
  },
  {
    room: "src/kit",
    forbid: /discord\.js|better-sqlite3|Date\.now|Math\.random|\/(sqlite|discord|console|commands)\//,
  },
  { room: "src/sqlite", forbid: /discord\.js|Date\.now|Math\.random|\/(discord|console|commands)\// },
  { room: "src/console", forbid: /discord\.js|better-sqlite3|\/(sqlite|discord|charts|commands)\// },
  { room: "src/discord", forbid: /better-sqlite3|\/(sqlite|console|charts|commands)\// },
  {
    room: "src/charts",
    forbid: /discord\.js|better-sqlite3|Date\.now|Math\.random|\/(records|sqlite|discord|console|commands)\//,
  },
  {
    room: "src/reminders",
    forbid: /discord\.js|better-sqlite3|Date\.now|Math\.random|\/(sqlite|discord|console|charts|commands)\//,
  },
  {
    room: "commands",
    forbid: /discord\.js|better-sqlite3|Date\.now|Math\.random|src\/(discord|console|sqlite|charts)\//,
  },
];

function filesIn(room: string): readonly string[] {
  return readdirSync(room, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(room, name));
}

describe("rooms keep to their neighbours", () => {
  it.each(rooms)("$room", ({ room, forbid }) => {
    const files = filesIn(room);
    expect(files).not.toHaveLength(0); // an empty search proves nothing
    expect(files.filter((file) => forbid.test(readFileSync(file, "utf8")))).toEqual([]);
  });
});

it("only the database room speaks SQL", () => {
  const speaking = filesIn("src")
    .filter((file) => !file.startsWith("src/sqlite/"))
    .filter((file) =>
      /\b(SELECT .+ FROM|INSERT INTO|DELETE FROM|UPDATE \w+ SET)\b/.test(readFileSync(file, "utf8")),
    );
  expect(speaking).toEqual([]);
});

it("commands do no arithmetic of their own", () => {
  // A product or a power of two named figures; unit prefixes for showing (× 100, ÷ 1000, ÷ 24) are allowed.
  const sums = filesIn("commands").flatMap((file) =>
    readFileSync(file, "utf8")
      .split("\n")
      .filter(
        (line) => /\b[a-z]\w*(\.\w+)* (\*\*?) [a-z]\w*/i.test(line) && !/^\s*(\*|\/\/|import)/.test(line),
      )
      .map((line) => `${file}: ${line.trim()}`),
  );
  expect(sums).toEqual([]);
});

it("only the sums room takes members' formulas apart, and loads the parser when one comes", () => {
  const naming = filesIn("src")
    .concat(filesIn("commands"))
    .filter((file) => /"mathjs/.test(readFileSync(file, "utf8")));
  expect(naming).toEqual(["src/expression/parse-formula.ts"]);
  expect(readFileSync("src/expression/parse-formula.ts", "utf8")).not.toMatch(/^import .*"mathjs/m);
});
