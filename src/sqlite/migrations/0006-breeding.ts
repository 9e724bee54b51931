import type { Migration } from "../migrate.ts";

export default {
  name: "0006-breeding",
  sql: /* sql */ `
    -- Who stands behind a number in a club's breeding ledger; the name can be forgotten, the number stays.
    CREATE TABLE breeding_person (
      club_id    TEXT NOT NULL,
      number     INTEGER NOT NULL,
      member_id  TEXT,
      name       TEXT,
      PRIMARY KEY (club_id, number)
    ) STRICT, WITHOUT ROWID;
    CREATE UNIQUE INDEX breeding_person_of_member ON breeding_person (member_id, club_id);

    -- The ledger: written once, never changed. What was wrong is put right by a later event.
    CREATE TABLE breeding_event (
      club_id    TEXT NOT NULL,
      number     INTEGER NOT NULL,         -- from 1 within the club, without a gap
      at         TEXT NOT NULL,            -- when it happened, UTC
      day        TEXT NOT NULL,            -- the same on the group's own calendar
      entered_at TEXT NOT NULL,
      by_person  INTEGER NOT NULL,
      kind       TEXT NOT NULL,
      fact       TEXT NOT NULL,            -- JSON
      PRIMARY KEY (club_id, number)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX breeding_event_of_kind ON breeding_event (club_id, kind, number);
    CREATE TRIGGER breeding_event_is_final BEFORE UPDATE ON breeding_event
      BEGIN SELECT RAISE(ABORT, 'an event of the breeding ledger is never changed'); END;
    CREATE TRIGGER breeding_event_stays BEFORE DELETE ON breeding_event
      BEGIN SELECT RAISE(ABORT, 'an event of the breeding ledger is never removed'); END;

    -- Free words beside an event: they go with the one who wrote them.
    CREATE TABLE breeding_note (
      club_id    TEXT NOT NULL,
      number     INTEGER NOT NULL,
      by_person  INTEGER NOT NULL,
      note       TEXT NOT NULL,
      PRIMARY KEY (club_id, number)
    ) STRICT, WITHOUT ROWID;

    -- What a ledger comes to up to one of its events, so that it need not be read from its start. One that a
    -- later correction reaches behind is thrown away.
    CREATE TABLE breeding_snapshot (
      club_id    TEXT NOT NULL,
      number     INTEGER NOT NULL,
      version    INTEGER NOT NULL,
      state      TEXT NOT NULL,            -- JSON
      PRIMARY KEY (club_id, number)
    ) STRICT;
  `,
} satisfies Migration;
