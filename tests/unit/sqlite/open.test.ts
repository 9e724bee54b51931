import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DatabaseProblem, openStore } from "../../../src/sqlite/index.ts";

const NOW = "2026-03-04T12:00:00.000Z";
let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
  file = join(folder, "club.sqlite");
});
afterEach(() => rmSync(folder, { recursive: true }));

function complaint(path = file): string {
  try {
    openStore(path, NOW).close();
  } catch (error) {
    if (error instanceof DatabaseProblem) return error.message;
    throw error;
  }
  return "opened";
}

describe("a database file", () => {
  it("is made with its folders, and opened again as it is", () => {
    const deep = join(folder, "a", "b", "club.sqlite");
    expect(complaint(deep)).toBe("opened");
    expect(complaint(deep)).toBe("opened");
  });

  it("that is none is refused in a sentence, and left as it is", () => {
    const text = "This is a shopping list, and no database at all.\n".repeat(200);
    writeFileSync(file, text);
    expect(complaint()).toMatch(/is not a database this program can read\. It was left as it is\.$/);
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  it("of a newer version is refused, and left as it is", () => {
    openStore(file, NOW).close();
    const db = new SqliteDatabase(file);
    db.prepare("INSERT INTO migration (name, at) VALUES ('9999-future', ?)").run(NOW);
    db.close();
    const before = readFileSync(file);
    expect(complaint()).toMatch(/written by a newer version \(it has “9999-future”\)/);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it("that holds another program's tables is refused, and left as it is", () => {
    const db = new SqliteDatabase(file);
    db.exec("CREATE TABLE tank (colour TEXT); INSERT INTO tank VALUES ('blue')");
    db.close();
    const before = readFileSync(file);
    expect(complaint()).toMatch(/is the database of another program\. It was left as it is/);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it("that is cut short is refused, and left as it is", () => {
    openStore(file, NOW).close();
    const whole = readFileSync(file);
    const cut = whole.subarray(0, Math.floor(whole.length / 2));
    writeFileSync(file, cut);
    expect(complaint()).not.toBe("opened");
    expect(readFileSync(file).equals(cut)).toBe(true);
  });

  it("locked by another program is refused after a short wait", () => {
    openStore(file, NOW).close();
    const other = new SqliteDatabase(file);
    other.pragma("locking_mode = EXCLUSIVE");
    other.exec("BEGIN EXCLUSIVE");
    expect(complaint()).toMatch(/is locked by another program\. Close that one/);
    other.exec("ROLLBACK");
    other.close();
    expect(complaint()).toBe("opened");
  });

  it("that is a folder, or lies under a file, is refused", () => {
    mkdirSync(file);
    expect(complaint()).toMatch(/cannot be opened: check that the path is a file/);
    writeFileSync(join(folder, "plain"), "");
    expect(complaint(join(folder, "plain", "club.sqlite"))).toMatch(/cannot be opened/);
  });
});
