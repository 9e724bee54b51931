import type { Database } from "better-sqlite3";
import { z } from "zod";
import { FACT_FIELDS } from "../core/help/facts.ts";
import { UserError } from "../kit/user-error.ts";
import type {
  CardPlace,
  FollowUp,
  HelpCase,
  HelpEntry,
  HelpRecords,
  HelpViewer,
  NewHelpEntry,
  WaitingHelp,
} from "../records/help.ts";
import type { ClubId, MemberId } from "../records/ids.ts";

/** Cases one member may have open, entries one case may hold: more is no help any longer. */
const MOST_OPEN = 5;
const MOST_ENTRIES = 200;
const MOST_SHOWN = 25;
/** Where a helper has set no quiet hours: from ten in the evening to seven. */
const USUAL_QUIET = { from: 22 * 60, until: 7 * 60 } as const;

const caseRow = z.object({
  id: z.number(),
  member_id: z.string(),
  club: z.string().nullable(),
  place: z.string().nullable(),
  card_message: z.string().nullable(),
  state: z.enum(["open", "closed"]),
  helper_member_id: z.string().nullable(),
  helper_name: z.string().nullable(),
  answered_at: z.string().nullable(),
  opened_at: z.string(),
  closed_at: z.string().nullable(),
  worked: z.string().nullable(),
  tank_id: z.number().nullable(),
});

const entryRow = z.object({
  id: z.number(),
  member_id: z.string(),
  kind: z.enum(["fact", "step", "done"]),
  field: z.enum(FACT_FIELDS).nullable(),
  text: z.string(),
  number: z.number().nullable(),
  follow_up_at: z.string().nullable(),
  is_settled: z.number(),
  at: z.string(),
});

const waitingRow = z.object({
  id: z.number(),
  place: z.string().nullable(),
  card_message: z.string().nullable(),
  opened_at: z.string(),
  helper: z.string(),
  zone: z.string(),
  quiet_from: z.number().nullable(),
  quiet_until: z.number().nullable(),
});

const followRow = z.object({
  id: z.number(),
  case_id: z.number(),
  number: z.number(),
  place: z.string().nullable(),
  card_message: z.string().nullable(),
});

const CASE = `SELECT help_case.id, help_case.member_id, club, place, card_message, state, helper_member_id,
    helper.name AS helper_name, answered_at, opened_at, closed_at, worked, tank_id
  FROM help_case LEFT JOIN member AS helper ON helper.id = helper_member_id`;
const SEEN = "(help_case.member_id = @member OR (club IS NOT NULL AND club = @club))";

export class SqliteHelpRecords implements HelpRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  open(owner: MemberId, club: ClubId | undefined, facts: readonly NewHelpEntry[], now: string): HelpCase {
    return this.#db
      .transaction(() => {
        this.#db.prepare("INSERT INTO member (id) VALUES (?) ON CONFLICT DO NOTHING").run(owner);
        const open = this.#db
          .prepare("SELECT count(*) FROM help_case WHERE member_id = ? AND state = 'open'")
          .pluck()
          .get(owner);
        if (Number(open) >= MOST_OPEN)
          throw new UserError(
            "bad-input",
            `${MOST_OPEN} help cases are open already. Close one with /case close, then open another.`,
          );
        const { lastInsertRowid } = this.#db
          .prepare("INSERT INTO help_case (member_id, club, state, opened_at) VALUES (?, ?, 'open', ?)")
          .run(owner, club ?? null, now);
        const id = Number(lastInsertRowid);
        for (const fact of facts) this.#insert(id, owner, fact, now);
        return this.#get(id);
      })
      .immediate();
  }

  find(viewer: HelpViewer, id: number): HelpCase | undefined {
    return this.#one(`${CASE} WHERE help_case.id = @id AND ${SEEN}`, viewer, { id });
  }

  inPlace(viewer: HelpViewer, place: string): HelpCase | undefined {
    return this.#one(`${CASE} WHERE place = @place AND ${SEEN} ORDER BY help_case.id DESC LIMIT 1`, viewer, {
      place,
    });
  }

  visible({ member, club }: HelpViewer): readonly HelpCase[] {
    return z
      .array(caseRow)
      .parse(
        this.#db
          .prepare(`${CASE} WHERE ${SEEN} ORDER BY state = 'closed', help_case.id DESC LIMIT ${MOST_SHOWN}`)
          .all({ member, club: club ?? null }),
      )
      .map(caseOf);
  }

  entries(caseId: number): readonly HelpEntry[] {
    return z
      .array(entryRow)
      .parse(this.#db.prepare("SELECT * FROM help_entry WHERE case_id = ? ORDER BY id").all(caseId))
      .map(entryOf);
  }

  add(caseId: number, by: MemberId, entry: NewHelpEntry, now: string): void {
    this.#db
      .transaction(() => {
        this.#insert(caseId, by, entry, now);
        this.#answered(caseId, by, now);
      })
      .immediate();
  }

  correct(caseId: number, by: MemberId, entry: NewHelpEntry, now: string): void {
    this.#db
      .transaction(() => {
        this.#db
          .prepare("DELETE FROM help_entry WHERE case_id = ? AND kind = 'fact' AND field = ?")
          .run(caseId, entry.field ?? null);
        this.#insert(caseId, by, entry, now);
        this.#answered(caseId, by, now);
      })
      .immediate();
  }

  settleStep(caseId: number, number: number): boolean {
    return (
      this.#db
        .prepare(
          "UPDATE help_entry SET is_settled = 1 WHERE case_id = ? AND kind = 'step' AND number = ? AND is_settled = 0",
        )
        .run(caseId, number).changes === 1
    );
  }

  hand(caseId: number, helper: MemberId, now: string): void {
    this.#db
      .transaction(() => {
        this.#db.prepare("INSERT INTO member (id) VALUES (?) ON CONFLICT DO NOTHING").run(helper);
        this.#db
          .prepare(
            "UPDATE help_case SET helper_member_id = ?, answered_at = coalesce(answered_at, ?) WHERE id = ?",
          )
          .run(helper, now, caseId);
      })
      .immediate();
  }

  close(caseId: number, worked: string | undefined, now: string): void {
    this.#db
      .prepare(
        "UPDATE help_case SET state = 'closed', closed_at = ?, worked = coalesce(?, worked) WHERE id = ?",
      )
      .run(now, worked ?? null, caseId);
  }

  reopen(caseId: number): void {
    this.#db.prepare("UPDATE help_case SET state = 'open', closed_at = NULL WHERE id = ?").run(caseId);
  }

  setTank(caseId: number, tankId: number): void {
    this.#db.prepare("UPDATE help_case SET tank_id = ? WHERE id = ?").run(tankId, caseId);
  }

  remove(caseId: number): void {
    this.#db.prepare("DELETE FROM help_case WHERE id = ?").run(caseId);
  }

  setCard(caseId: number, { place, messageId }: CardPlace): void {
    this.#db
      .prepare("UPDATE help_case SET place = ?, card_message = ? WHERE id = ?")
      .run(place, messageId, caseId);
  }

  heard(place: string, by: MemberId, now: string): void {
    this.#db
      .prepare(
        "UPDATE help_case SET answered_at = ? WHERE place = ? AND answered_at IS NULL AND member_id <> ?",
      )
      .run(now, place, by);
  }

  cardsOf(owner: MemberId): readonly CardPlace[] {
    return z.array(z.object({ place: z.string(), messageId: z.string() })).parse(
      this.#db
        .prepare(
          `SELECT place, card_message AS messageId FROM help_case
               WHERE member_id = ? AND place IS NOT NULL AND card_message IS NOT NULL`,
        )
        .all(owner),
    );
  }

  home(club: ClubId): string | undefined {
    const place = this.#db.prepare("SELECT help_place FROM club WHERE id = ?").pluck().get(club);
    return typeof place === "string" ? place : undefined;
  }

  setHome(club: ClubId, place: string | undefined): void {
    this.#db
      .prepare(
        "INSERT INTO club (id, help_place) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET help_place = excluded.help_place",
      )
      .run(club, place ?? null);
  }

  setDuty(club: ClubId, member: MemberId, isOn: boolean): void {
    this.#db
      .prepare(
        isOn
          ? "INSERT INTO help_duty (club, member_id) VALUES (?, ?) ON CONFLICT DO NOTHING"
          : "DELETE FROM help_duty WHERE club = ? AND member_id = ?",
      )
      .run(club, member);
  }

  onDuty(club: ClubId): readonly MemberId[] {
    return this.#db
      .prepare("SELECT member_id FROM help_duty WHERE club = ? ORDER BY member_id")
      .pluck()
      .all(club)
      .map((id) => String(id) as MemberId);
  }

  waiting(openedBefore: string): readonly WaitingHelp[] {
    return z
      .array(waitingRow)
      .parse(
        this.#db
          .prepare(
            `SELECT help_case.id, help_case.place, card_message, opened_at, help_duty.member_id AS helper,
                 member.zone, quiet_from, quiet_until
               FROM help_case JOIN help_duty ON help_duty.club = help_case.club
                 JOIN member ON member.id = help_duty.member_id
                 LEFT JOIN reminder_wish ON reminder_wish.member_id = help_duty.member_id
               WHERE state = 'open' AND answered_at IS NULL AND raised_at IS NULL AND opened_at <= ?
                 AND help_duty.member_id <> help_case.member_id
               ORDER BY opened_at, help_case.id, help_duty.member_id`,
          )
          .all(openedBefore),
      )
      .map(
        (row): WaitingHelp => ({
          id: row.id,
          ...cardOf(row.place, row.card_message),
          openedAt: row.opened_at,
          helper: row.helper as MemberId,
          zone: row.zone,
          quietFrom: row.quiet_from ?? USUAL_QUIET.from,
          quietUntil: row.quiet_until ?? USUAL_QUIET.until,
        }),
      );
  }

  takeFollowUps(now: string): readonly FollowUp[] {
    return this.#db
      .transaction(() => {
        const due = z.array(followRow).parse(
          this.#db
            .prepare(
              `SELECT help_entry.id, case_id, number, place, card_message FROM help_entry
                 JOIN help_case ON help_case.id = case_id
                 WHERE follow_up_at <= ? AND followed_at IS NULL AND is_settled = 0 AND kind = 'step'
                   AND state = 'open'`,
            )
            .all(now),
        );
        const mark = this.#db.prepare("UPDATE help_entry SET followed_at = ? WHERE id = ?");
        return due.map((row): FollowUp => {
          mark.run(now, row.id);
          return { caseNumber: row.case_id, step: row.number, ...cardOf(row.place, row.card_message) };
        });
      })
      .immediate();
  }

  raise(caseId: number, now: string): boolean {
    return (
      this.#db
        .prepare(
          "UPDATE help_case SET raised_at = ? WHERE id = ? AND raised_at IS NULL AND answered_at IS NULL",
        )
        .run(now, caseId).changes === 1
    );
  }

  #insert(caseId: number, by: MemberId, { kind, field, text, followUpAt }: NewHelpEntry, now: string): void {
    this.#db.prepare("INSERT INTO member (id) VALUES (?) ON CONFLICT DO NOTHING").run(by);
    const count = this.#db.prepare("SELECT count(*) FROM help_entry WHERE case_id = ?").pluck().get(caseId);
    if (Number(count) >= MOST_ENTRIES)
      throw new UserError(
        "bad-input",
        `This case holds ${MOST_ENTRIES} entries already. Close it with /case close and open a new one.`,
      );
    this.#db
      .prepare(
        `INSERT INTO help_entry (case_id, member_id, kind, field, text, number, follow_up_at, at)
           VALUES (@caseId, @by, @kind, @field, @text,
             CASE @kind WHEN 'step' THEN (SELECT coalesce(max(number), 0) + 1 FROM help_entry WHERE case_id = @caseId) END,
             @followUpAt, @now)`,
      )
      .run({ caseId, by, kind, field: field ?? null, text, followUpAt: followUpAt ?? null, now });
  }

  #answered(caseId: number, by: MemberId, now: string): void {
    this.#db
      .prepare("UPDATE help_case SET answered_at = ? WHERE id = ? AND answered_at IS NULL AND member_id <> ?")
      .run(now, caseId, by);
  }

  #get(id: number): HelpCase {
    return caseOf(caseRow.parse(this.#db.prepare(`${CASE} WHERE help_case.id = ?`).get(id)));
  }

  #one(
    sql: string,
    { member, club }: HelpViewer,
    given: Readonly<Record<string, unknown>>,
  ): HelpCase | undefined {
    const found = this.#db.prepare(sql).get({ member, club: club ?? null, ...given });
    return found === undefined ? undefined : caseOf(caseRow.parse(found));
  }
}

function cardOf(place: string | null, messageId: string | null): { readonly card?: CardPlace } {
  return place === null || messageId === null ? {} : { card: { place, messageId } };
}

function caseOf(row: z.infer<typeof caseRow>): HelpCase {
  return {
    id: row.id,
    owner: row.member_id as MemberId,
    ...(row.club === null ? {} : { club: row.club as ClubId }),
    ...cardOf(row.place, row.card_message),
    state: row.state,
    ...(row.helper_member_id === null
      ? {}
      : {
          helper: {
            id: row.helper_member_id as MemberId,
            ...(row.helper_name === null ? {} : { name: row.helper_name }),
          },
        }),
    ...(row.answered_at === null ? {} : { answeredAt: row.answered_at }),
    openedAt: row.opened_at,
    ...(row.closed_at === null ? {} : { closedAt: row.closed_at }),
    ...(row.worked === null ? {} : { worked: row.worked }),
    ...(row.tank_id === null ? {} : { tankId: row.tank_id }),
  };
}

function entryOf(row: z.infer<typeof entryRow>): HelpEntry {
  return {
    id: row.id,
    kind: row.kind,
    by: row.member_id as MemberId,
    ...(row.field === null ? {} : { field: row.field }),
    text: row.text,
    ...(row.number === null ? {} : { number: row.number }),
    ...(row.follow_up_at === null ? {} : { followUpAt: row.follow_up_at }),
    isSettled: row.is_settled === 1,
    at: row.at,
  };
}
