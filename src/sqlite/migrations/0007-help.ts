import type { Migration } from "../migrate.ts";

export default {
  name: "0007-help",
  sql: /* sql */ `
    CREATE TABLE help_case (
      id               INTEGER PRIMARY KEY AUTOINCREMENT,
      member_id        TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      club             TEXT,
      place            TEXT,               -- the thread its card stands in
      card_message     TEXT,
      state            TEXT NOT NULL CHECK (state IN ('open', 'closed')),
      helper_member_id TEXT REFERENCES member (id) ON DELETE SET NULL,
      answered_at      TEXT,
      raised_at        TEXT,
      opened_at        TEXT NOT NULL,
      closed_at        TEXT,
      worked           TEXT,
      tank_id          INTEGER REFERENCES tank (id) ON DELETE SET NULL
    ) STRICT;
    CREATE INDEX help_case_of_member ON help_case (member_id);
    CREATE INDEX help_case_of_club ON help_case (club, state);
    CREATE INDEX help_case_in_place ON help_case (place) WHERE place IS NOT NULL;
    CREATE INDEX help_case_of_helper ON help_case (helper_member_id) WHERE helper_member_id IS NOT NULL;
    CREATE INDEX help_case_of_tank ON help_case (tank_id) WHERE tank_id IS NOT NULL;
    CREATE INDEX help_case_waiting ON help_case (opened_at)
      WHERE state = 'open' AND answered_at IS NULL AND raised_at IS NULL;

    CREATE TABLE help_entry (
      id           INTEGER PRIMARY KEY AUTOINCREMENT,
      case_id      INTEGER NOT NULL REFERENCES help_case (id) ON DELETE CASCADE,
      member_id    TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      kind         TEXT NOT NULL CHECK (kind IN ('fact', 'step', 'done')),
      field        TEXT,
      text         TEXT NOT NULL,          -- as typed
      number       INTEGER,                -- of a step, within its case
      follow_up_at TEXT,
      followed_at  TEXT,                   -- when the follow-up was told
      is_settled   INTEGER NOT NULL DEFAULT 0 CHECK (is_settled IN (0, 1)),
      at           TEXT NOT NULL
    ) STRICT;
    CREATE INDEX help_entry_of_case ON help_entry (case_id);
    CREATE INDEX help_entry_to_follow ON help_entry (follow_up_at)
      WHERE follow_up_at IS NOT NULL AND followed_at IS NULL AND is_settled = 0;
    CREATE INDEX help_entry_of_member ON help_entry (member_id);

    -- The channel or forum in which a club opens its help threads; NULL for wherever it is asked.
    ALTER TABLE club ADD COLUMN help_place TEXT;

    CREATE TABLE help_duty (
      club      TEXT NOT NULL,
      member_id TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      PRIMARY KEY (club, member_id)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX help_duty_of_member ON help_duty (member_id);
  `,
} satisfies Migration;
