import type { Database, Statement } from "better-sqlite3";
import { z } from "zod";
import { advance, isReplayNeeded, replay } from "../core/breeding/ledger/advance.ts";
import { factSchema, type LedgerEvent } from "../core/breeding/ledger/facts.ts";
import { emptyState, type GroupState, STATE_VERSION } from "../core/breeding/ledger/state.ts";
import type { BreedingRecords, GroupPerson, LedgerLine, NewFact, OpenLedger } from "../records/breeding.ts";
import type { ClubId, MemberId } from "../records/ids.ts";

/** Events after which the state is put down again. */
const SNAPSHOT_EVERY = 100;
/** Snapshots kept: the newest few, and an older one for each so many events, from which a correction starts. */
const NEWEST_KEPT = 3;
const OLDER_EVERY = 5000;
/** Groups whose state is held ready. */
const MOST_HELD = 50;

const eventRow = z.object({
  number: z.number(),
  at: z.string(),
  day: z.string(),
  entered_at: z.string(),
  by_person: z.number(),
  fact: z.string(),
  note: z.string().nullish(),
});
const personRow = z.object({
  number: z.number(),
  member_id: z.string().nullable(),
  name: z.string().nullable(),
});
const snapshotRow = z.object({ number: z.number(), state: z.string() });

const COLUMNS = "e.number, e.at, e.day, e.entered_at, e.by_person, e.fact";
const WITH_NOTE = `SELECT ${COLUMNS}, n.note FROM breeding_event e
  LEFT JOIN breeding_note n ON n.club_id = e.club_id AND n.number = e.number
  WHERE e.club_id = ?`;

export class SqliteBreedingRecords implements BreedingRecords {
  readonly #db: Database;
  readonly #since: Statement;
  readonly #last: Statement;
  readonly #people: Statement;
  readonly #insert: Statement;
  /** States as last read; others may have written since, so each look asks what is new. */
  readonly #held = new Map<ClubId, GroupState>();

  constructor(db: Database) {
    this.#db = db;
    this.#since = db.prepare(
      `SELECT ${COLUMNS} FROM breeding_event e WHERE e.club_id = ? AND e.number > ? ORDER BY e.number`,
    );
    this.#last = db.prepare("SELECT max(number) FROM breeding_event WHERE club_id = ?").pluck();
    this.#people = db.prepare(
      "SELECT number, member_id, name FROM breeding_person WHERE club_id = ? ORDER BY number",
    );
    this.#insert = db.prepare(
      `INSERT INTO breeding_event (club_id, number, at, day, entered_at, by_person, kind, fact)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    );
  }

  state(club: ClubId): GroupState | undefined {
    const state = this.#stateOf(club);
    return state.lastEvent === 0 ? undefined : state;
  }

  people(club: ClubId): readonly GroupPerson[] {
    return z
      .array(personRow)
      .parse(this.#people.all(club))
      .map(({ number, member_id, name }) => ({
        number,
        ...(name === null ? {} : { name }),
        ...(member_id === null ? {} : { member: member_id as MemberId }),
      }));
  }

  write<T>(
    club: ClubId,
    by: MemberId,
    now: string,
    decide: (ledger: OpenLedger) => { readonly facts: readonly NewFact[]; readonly result: T },
  ): T {
    const before = this.#held.get(club);
    try {
      // The lock is taken before anything is read: what is decided upon is what is written upon.
      return this.#db
        .transaction(() => {
          const state = this.#stateOf(club);
          const { facts, result } = decide({
            state,
            people: this.people(club),
            numberOf: (member, name) => this.#numberOf(club, member, name),
          });
          const writer = this.people(club).find(({ member }) => member === by)?.number;
          if (facts.length > 0 && writer !== undefined) this.#append(club, writer, now, state, facts);
          return result;
        })
        .immediate();
    } catch (error) {
      // What was rolled back must not be remembered either.
      if (before === undefined) this.#held.delete(club);
      else this.#held.set(club, before);
      throw error;
    }
  }

  ledger(club: ClubId, limit: number, kind?: string): readonly LedgerLine[] {
    return kind === undefined
      ? this.#lines(`${WITH_NOTE} ORDER BY e.number DESC LIMIT ?`, [club, limit])
      : this.#lines(`${WITH_NOTE} AND e.kind = ? ORDER BY e.number DESC LIMIT ?`, [club, kind, limit]);
  }

  event(club: ClubId, number: number): LedgerLine | undefined {
    return this.#lines(`${WITH_NOTE} AND e.number = ?`, [club, number])[0];
  }

  everything(club: ClubId): readonly LedgerLine[] {
    return this.#lines(`${WITH_NOTE} ORDER BY e.number`, [club]);
  }

  rename(club: ClubId, number: number, name: string): void {
    this.#db
      .prepare("UPDATE breeding_person SET name = ? WHERE club_id = ? AND number = ?")
      .run(name, club, number);
  }

  forget(member: MemberId, now: string): number {
    const clubs = z
      .array(z.object({ club_id: z.string(), number: z.number() }))
      .parse(this.#db.prepare("SELECT club_id, number FROM breeding_person WHERE member_id = ?").all(member));
    for (const { club_id, number } of clubs) {
      const club = club_id as ClubId;
      this.write(club, member, now, ({ state }) => ({
        facts:
          state.people[number]?.isHere === true
            ? [{ fact: { kind: "person left", person: number }, at: now, day: now.slice(0, 10) }]
            : [],
        result: undefined,
      }));
      this.#db
        .transaction(() => {
          this.#db
            .prepare(
              "UPDATE breeding_person SET member_id = NULL, name = NULL WHERE club_id = ? AND number = ?",
            )
            .run(club, number);
          this.#db.prepare("DELETE FROM breeding_note WHERE club_id = ? AND by_person = ?").run(club, number);
        })
        .immediate();
    }
    return clubs.length;
  }

  #numberOf(club: ClubId, member: MemberId, name: string): number {
    const known = this.people(club).find((person) => person.member === member);
    if (known !== undefined) return known.number;
    const number =
      z
        .number()
        .nullable()
        .parse(
          this.#db.prepare("SELECT max(number) FROM breeding_person WHERE club_id = ?").pluck().get(club),
        ) ?? 0;
    this.#db
      .prepare("INSERT INTO breeding_person (club_id, number, member_id, name) VALUES (?, ?, ?, ?)")
      .run(club, number + 1, member, name);
    return number + 1;
  }

  #append(club: ClubId, by: number, now: string, state: GroupState, facts: readonly NewFact[]): void {
    const events = facts.map(({ fact, at, day }, index): LedgerEvent => {
      const number = state.lastEvent + index + 1;
      return { number, at, day, enteredAt: now, by, fact: factSchema.parse(fact) };
    });
    for (const [index, { number, at, day, enteredAt, fact }] of events.entries()) {
      this.#insert.run(club, number, at, day, enteredAt, by, fact.kind, JSON.stringify(fact));
      const note = facts[index]?.note;
      if (note !== undefined)
        this.#db
          .prepare("INSERT INTO breeding_note (club_id, number, by_person, note) VALUES (?, ?, ?, ?)")
          .run(club, number, by, note);
    }
    const reachesTo = Math.min(
      ...events.flatMap(({ fact }) => (fact.kind === "corrected" ? [fact.event] : [])),
    );
    const isCorrection = Number.isFinite(reachesTo);
    if (isCorrection)
      this.#db
        .prepare("DELETE FROM breeding_snapshot WHERE club_id = ? AND number >= ?")
        .run(club, reachesTo);
    const after = isCorrection ? this.#rebuilt(club) : advance(state, events);
    const isDue =
      isCorrection ||
      Math.floor(after.lastEvent / SNAPSHOT_EVERY) > Math.floor(state.lastEvent / SNAPSHOT_EVERY);
    if (isDue) this.#snapshot(club, after);
    this.#hold(club, after);
  }

  #stateOf(club: ClubId): GroupState {
    const held = this.#held.get(club);
    const last = z.number().nullable().parse(this.#last.get(club)) ?? 0;
    if (held !== undefined && held.lastEvent === last) return held;
    const news = held === undefined ? [] : this.#events(this.#since.all(club, held.lastEvent));
    const state = held === undefined || isReplayNeeded(news) ? this.#rebuilt(club) : advance(held, news);
    this.#hold(club, state);
    return state;
  }

  /** From the newest snapshot: whatever was corrected since lies behind it, for others are thrown away. */
  #rebuilt(club: ClubId): GroupState {
    const from = this.#fromSnapshot(club) ?? emptyState();
    return replay(this.#events(this.#since.all(club, from.lastEvent)), from);
  }

  #hold(club: ClubId, state: GroupState): void {
    this.#held.delete(club);
    this.#held.set(club, state);
    const [oldest] = this.#held.keys();
    if (this.#held.size > MOST_HELD && oldest !== undefined) this.#held.delete(oldest);
  }

  #fromSnapshot(club: ClubId): GroupState | undefined {
    const found = this.#db
      .prepare(
        "SELECT number, state FROM breeding_snapshot WHERE club_id = ? AND version = ? ORDER BY number DESC LIMIT 1",
      )
      .get(club, STATE_VERSION);
    // Written by this program and of this version: its own shape.
    return found === undefined ? undefined : (JSON.parse(snapshotRow.parse(found).state) as GroupState);
  }

  #snapshot(club: ClubId, state: GroupState): void {
    this.#db
      .prepare(
        `INSERT INTO breeding_snapshot (club_id, number, version, state) VALUES (?, ?, ?, ?)
         ON CONFLICT (club_id, number) DO UPDATE SET version = excluded.version, state = excluded.state`,
      )
      .run(club, state.lastEvent, STATE_VERSION, JSON.stringify(state));
    this.#db
      .prepare(
        `DELETE FROM breeding_snapshot AS old WHERE club_id = @club
           AND number NOT IN
             (SELECT number FROM breeding_snapshot WHERE club_id = @club ORDER BY number DESC LIMIT @newest)
           AND EXISTS
             (SELECT 1 FROM breeding_snapshot AS older WHERE older.club_id = @club
                AND older.number < old.number AND older.number / @every = old.number / @every)`,
      )
      .run({ club, newest: NEWEST_KEPT, every: OLDER_EVERY });
  }

  #lines(sql: string, values: readonly (string | number)[]): readonly LedgerLine[] {
    return this.#events(this.#db.prepare(sql).all(...values));
  }

  #events(rows: readonly unknown[]): LedgerLine[] {
    return z
      .array(eventRow)
      .parse(rows)
      .map(({ number, at, day, entered_at, by_person, fact, note }) => ({
        number,
        at,
        day,
        enteredAt: entered_at,
        by: by_person,
        fact: factSchema.parse(JSON.parse(fact)),
        ...(note === null || note === undefined ? {} : { note }),
      }));
  }
}
