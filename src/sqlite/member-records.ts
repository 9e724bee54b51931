import type { Database, Statement } from "better-sqlite3";
import { z } from "zod";
import type { Habits } from "../core/quantity/read.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import type { Member, MemberRecords } from "../records/member.ts";

const habitsSchema = z.object({
  gallon: z.enum(["US", "imperial"]).exactOptional(),
  decimal: z.enum(["point", "comma"]).exactOptional(),
  gravity: z.object({ sampleC: z.number(), referenceC: z.number() }).exactOptional(),
  conductivity: z.enum(["at 25 °C", "as measured"]).exactOptional(),
}) satisfies z.ZodType<Habits>;

const memberRow = z.object({ zone: z.string(), habits: z.string(), name: z.string().nullable() });

export class SqliteMemberRecords implements MemberRecords {
  readonly #db: Database;
  readonly #find: Statement;
  readonly #findClub: Statement;

  constructor(db: Database) {
    this.#db = db;
    this.#find = db.prepare("SELECT zone, habits, name FROM member WHERE id = ?");
    this.#findClub = db.prepare("SELECT habits FROM club WHERE id = ?").pluck();
  }

  member(id: MemberId, club: ClubId | undefined): Member {
    let row = this.#find.get(id);
    if (row === undefined) {
      this.#db.prepare("INSERT INTO member (id) VALUES (?) ON CONFLICT DO NOTHING").run(id);
      row = this.#find.get(id);
    }
    const { zone, habits, name } = memberRow.parse(row);
    return {
      id,
      zone,
      ...(name === null ? {} : { name }),
      habits: { ...this.#clubHabits(club), ...readHabits(habits) },
    };
  }

  remember(id: MemberId, habits: Habits): void {
    const now = { ...this.#ownHabits(id), ...habits };
    this.#db
      .prepare(
        "INSERT INTO member (id, habits) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET habits = excluded.habits",
      )
      .run(id, JSON.stringify(now));
  }

  forgetHabits(id: MemberId): void {
    this.#db.prepare("UPDATE member SET habits = '{}', zone = 'UTC' WHERE id = ?").run(id);
  }

  setName(id: MemberId, name: string): void {
    this.#db.prepare("UPDATE member SET name = ? WHERE id = ?").run(name, id);
  }

  setZone(id: MemberId, zone: string): void {
    this.#db
      .prepare(
        "INSERT INTO member (id, zone) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET zone = excluded.zone",
      )
      .run(id, zone);
  }

  setClubHabits(club: ClubId, habits: Habits): Habits {
    const now = { ...this.#clubHabits(club), ...habits };
    this.#db
      .prepare(
        "INSERT INTO club (id, habits) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET habits = excluded.habits",
      )
      .run(club, JSON.stringify(now));
    return now;
  }

  erase(id: MemberId): { readonly tanks: number; readonly readings: number } {
    const gone = this.#db
      .transaction(() => {
        const tanks = this.#count("SELECT count(*) FROM tank WHERE member_id = ?", id);
        const readings = this.#count(
          "SELECT count(*) FROM reading JOIN tank ON tank.id = reading.tank_id WHERE tank.member_id = ?",
          id,
        );
        this.#db.prepare("DELETE FROM exchange WHERE member_id = ?").run(id);
        this.#db.prepare("DELETE FROM tank_helper WHERE member_id = ?").run(id);
        this.#db.prepare("DELETE FROM member WHERE id = ?").run(id);
        return { tanks, readings };
      })
      .immediate();
    // The log beside the file still holds what was written: it is folded in and cut to nothing.
    this.#db.pragma("wal_checkpoint(TRUNCATE)");
    return gone;
  }

  #ownHabits(id: MemberId): Habits {
    const habits = this.#db.prepare("SELECT habits FROM member WHERE id = ?").pluck().get(id);
    return readHabits(habits);
  }

  #clubHabits(club: ClubId | undefined): Habits {
    if (club === undefined) return {};
    return readHabits(this.#findClub.get(club));
  }

  #count(sql: string, id: MemberId): number {
    return z.number().parse(this.#db.prepare(sql).pluck().get(id));
  }
}

function readHabits(json: unknown): Habits {
  return typeof json === "string" ? habitsSchema.parse(JSON.parse(json)) : {};
}
