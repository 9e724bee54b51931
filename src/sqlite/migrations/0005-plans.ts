import type { Migration } from "../migrate.ts";

export default {
  name: "0005-plans",
  sql: /* sql */ `
    CREATE TABLE regimen (
      id         INTEGER PRIMARY KEY AUTOINCREMENT,
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      pattern    TEXT NOT NULL,
      settings   TEXT NOT NULL,           -- JSON
      state      TEXT NOT NULL CHECK (state IN ('running', 'paused', 'over')),
      why        TEXT,
      started_at TEXT NOT NULL,
      paused_at  TEXT
    ) STRICT;
    CREATE INDEX regimen_of_member ON regimen (member_id);
    CREATE INDEX regimen_of_tank ON regimen (tank_id);

    CREATE TABLE plan (
      id         INTEGER PRIMARY KEY AUTOINCREMENT,
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      regimen_id INTEGER REFERENCES regimen (id) ON DELETE CASCADE,
      task       TEXT NOT NULL,           -- JSON
      rule       TEXT NOT NULL,           -- JSON; days counted from 1970, minutes from midnight
      until      TEXT,                    -- JSON
      typed      TEXT NOT NULL,
      state      TEXT NOT NULL CHECK (state IN ('running', 'paused', 'over')),
      why        TEXT,
      next_at    TEXT,
      last_day   INTEGER,
      not_before TEXT NOT NULL,
      look       INTEGER NOT NULL DEFAULT 0 CHECK (look IN (0, 1)),  -- the log or the zone has news for it
      created_at TEXT NOT NULL
    ) STRICT;
    CREATE INDEX plan_of_member ON plan (member_id);
    CREATE INDEX plan_of_tank ON plan (tank_id) WHERE state = 'running';
    CREATE INDEX plan_of_regimen ON plan (regimen_id);
    CREATE INDEX plan_due ON plan (next_at) WHERE state = 'running' AND next_at IS NOT NULL;
    CREATE INDEX plan_with_news ON plan (id) WHERE look = 1;

    -- A new, corrected or undone entry, or another clock, may move what is planned.
    CREATE TRIGGER plan_after_event AFTER INSERT ON event
      BEGIN UPDATE plan SET look = 1 WHERE tank_id = NEW.tank_id AND state = 'running'
        AND (regimen_id IS NOT NULL OR json_extract(rule, '$.kind') = 'after'); END;
    CREATE TRIGGER plan_after_undone_event AFTER UPDATE OF gone_at ON event
      BEGIN UPDATE plan SET look = 1 WHERE tank_id = NEW.tank_id AND state = 'running'
        AND (regimen_id IS NOT NULL OR json_extract(rule, '$.kind') = 'after'); END;
    CREATE TRIGGER plan_after_reading AFTER INSERT ON reading
      BEGIN UPDATE plan SET look = 1 WHERE tank_id = NEW.tank_id AND state = 'running'
        AND (regimen_id IS NOT NULL OR until IS NOT NULL); END;
    CREATE TRIGGER plan_after_zone AFTER UPDATE OF zone ON member WHEN OLD.zone <> NEW.zone
      BEGIN UPDATE plan SET look = 1 WHERE member_id = NEW.id AND state = 'running'; END;

    -- One due time of one plan. Made once: the last line sees to that.
    CREATE TABLE duty (
      id         INTEGER PRIMARY KEY AUTOINCREMENT,
      plan_id    INTEGER NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      half       TEXT NOT NULL CHECK (half IN ('whole', 'off', 'back', 'notice')),
      planned_at TEXT NOT NULL,
      due_at     TEXT NOT NULL,
      words      TEXT NOT NULL,           -- JSON, as computed when it fell due
      state      TEXT NOT NULL CHECK (state IN ('open', 'done', 'skipped', 'missed')),
      tell_at    TEXT,                    -- when to be told next; NULL when it has been
      settled_at TEXT,
      batch_id   INTEGER REFERENCES batch (id) ON DELETE SET NULL,
      pair_of    INTEGER REFERENCES duty (id) ON DELETE CASCADE,
      UNIQUE (plan_id, half, planned_at)
    ) STRICT;
    CREATE INDEX duty_open ON duty (member_id, due_at) WHERE state = 'open';
    CREATE INDEX duty_off ON duty (tank_id) WHERE half = 'back' AND state = 'open';
    CREATE INDEX duty_to_tell ON duty (tell_at) WHERE tell_at IS NOT NULL;
    CREATE INDEX duty_of_tank ON duty (tank_id);
    CREATE INDEX duty_of_batch ON duty (batch_id) WHERE batch_id IS NOT NULL;
    CREATE INDEX duty_pair ON duty (pair_of) WHERE pair_of IS NOT NULL;

    CREATE TABLE letter (
      id             INTEGER PRIMARY KEY AUTOINCREMENT,
      member_id      TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      key            TEXT NOT NULL UNIQUE,
      items          TEXT NOT NULL,       -- JSON, as it was when written
      state          TEXT NOT NULL CHECK (state IN ('waiting', 'trying', 'sent', 'refused')),
      attempts       INTEGER NOT NULL DEFAULT 0,
      first_tried_at TEXT,
      try_at         TEXT NOT NULL,       -- not before; while trying, when it was taken
      place          TEXT,
      message_id     TEXT,
      why            TEXT,
      created_at     TEXT NOT NULL
    ) STRICT;
    CREATE INDEX letter_to_send ON letter (try_at) WHERE state IN ('waiting', 'trying');
    CREATE INDEX letter_of_member ON letter (member_id);

    CREATE TABLE reminder_wish (
      member_id   TEXT PRIMARY KEY REFERENCES member (id) ON DELETE CASCADE,
      place       TEXT NOT NULL,          -- 'dm' or a channel's id
      fallback    TEXT,
      quiet_from  INTEGER NOT NULL CHECK (quiet_from BETWEEN 0 AND 1439),   -- minutes from midnight
      quiet_until INTEGER NOT NULL CHECK (quiet_until BETWEEN 0 AND 1439)
    ) STRICT;
  `,
} satisfies Migration;
