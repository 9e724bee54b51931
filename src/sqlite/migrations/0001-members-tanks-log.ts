import type { Migration } from "../migrate.ts";

export default {
  name: "0001-members-tanks-log",
  sql: /* sql */ `
    CREATE TABLE member (
      id         TEXT PRIMARY KEY,
      zone       TEXT NOT NULL DEFAULT 'UTC',
      habits     TEXT NOT NULL DEFAULT '{}'  -- JSON: how this member writes and measures
    ) STRICT;

    CREATE TABLE club (
      id         TEXT PRIMARY KEY,
      habits     TEXT NOT NULL DEFAULT '{}'
    ) STRICT;

    -- Numbers of tanks and readings are never given twice: an old button must not reach a new tank.
    CREATE TABLE tank (
      id               INTEGER PRIMARY KEY AUTOINCREMENT,
      member_id        TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      kind             TEXT NOT NULL CHECK (kind IN ('marine', 'brackish', 'fresh')),
      containers       TEXT NOT NULL,      -- JSON, litres, centimetres and kilograms
      containers_typed TEXT NOT NULL,      -- as the member wrote them
      notes            TEXT NOT NULL DEFAULT '{}',  -- JSON of texts as typed
      is_default       INTEGER NOT NULL DEFAULT 0 CHECK (is_default IN (0, 1)),
      created_at       TEXT NOT NULL       -- UTC, ISO 8601, as all times here
    ) STRICT;
    CREATE INDEX tank_of_member ON tank (member_id);
    CREATE UNIQUE INDEX one_default_tank ON tank (member_id) WHERE is_default = 1;

    -- A tank's name and its aliases: one member never has the same word twice.
    CREATE TABLE tank_name (
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      key        TEXT NOT NULL,            -- the name without regard to case
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      name       TEXT NOT NULL,
      is_alias   INTEGER NOT NULL CHECK (is_alias IN (0, 1)),
      PRIMARY KEY (member_id, key)
    ) STRICT;
    CREATE INDEX name_of_tank ON tank_name (tank_id);

    CREATE TABLE tank_share (
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      club_id    TEXT NOT NULL,
      PRIMARY KEY (tank_id, club_id)
    ) STRICT;
    CREATE INDEX share_with_club ON tank_share (club_id);

    -- One typed line is one batch: it is entered whole and undone whole.
    CREATE TABLE batch (
      id         INTEGER PRIMARY KEY,
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      line       TEXT NOT NULL,
      entered_at TEXT NOT NULL,
      undone_at  TEXT
    ) STRICT;
    CREATE INDEX batch_of_tank ON batch (tank_id, id) WHERE undone_at IS NULL;

    CREATE TABLE reading (
      id          INTEGER PRIMARY KEY AUTOINCREMENT,
      batch_id    INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,
      tank_id     INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      parameter   TEXT NOT NULL,
      best        REAL NOT NULL,           -- in the parameter's canonical unit
      low         REAL NOT NULL,
      high        REAL NOT NULL,
      censored    TEXT CHECK (censored IN ('below', 'above')),
      typed       TEXT NOT NULL,
      read_as     TEXT NOT NULL,
      instrument  TEXT,
      at          TEXT NOT NULL,
      gone_at     TEXT,                    -- undone or replaced
      replaced_by INTEGER REFERENCES reading (id) ON DELETE SET NULL
    ) STRICT;
    CREATE INDEX reading_by_parameter ON reading (tank_id, parameter, at DESC, id DESC) WHERE gone_at IS NULL;
    CREATE INDEX reading_by_time ON reading (tank_id, at DESC, id DESC) WHERE gone_at IS NULL;
    CREATE INDEX reading_of_batch ON reading (batch_id);

    CREATE TABLE event (
      id         INTEGER PRIMARY KEY,
      batch_id   INTEGER NOT NULL REFERENCES batch (id) ON DELETE CASCADE,
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      event      TEXT NOT NULL,
      amount     REAL,
      unit       TEXT,
      text       TEXT NOT NULL,
      typed      TEXT NOT NULL,
      read_as    TEXT NOT NULL,
      at         TEXT NOT NULL,
      gone_at    TEXT
    ) STRICT;
    CREATE INDEX event_by_time ON event (tank_id, at DESC, id DESC) WHERE gone_at IS NULL;
    CREATE INDEX event_of_batch ON event (batch_id);

    CREATE TABLE instrument (
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      key        TEXT NOT NULL,
      name       TEXT NOT NULL,
      parameter  TEXT NOT NULL,
      steps      TEXT NOT NULL DEFAULT '[]',  -- JSON, in the chart's own unit
      error      REAL CHECK (error > 0),
      gravity    TEXT,                     -- JSON: the two temperatures of a specific gravity scale, °C
      PRIMARY KEY (member_id, key)
    ) STRICT;

    -- How much salt a product really delivers, from the member's own measured batches.
    CREATE TABLE salt_product (
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      key        TEXT NOT NULL,
      name       TEXT NOT NULL,
      yield_best REAL NOT NULL CHECK (yield_best > 0 AND yield_best <= 1),
      yield_low  REAL NOT NULL,
      yield_high REAL NOT NULL,
      at         TEXT NOT NULL,
      PRIMARY KEY (member_id, key)
    ) STRICT;

    CREATE TABLE exchange (
      id         TEXT PRIMARY KEY,
      member_id  TEXT NOT NULL,
      request    TEXT NOT NULL,            -- JSON
      outcome    TEXT NOT NULL,            -- JSON
      is_public  INTEGER NOT NULL CHECK (is_public IN (0, 1)),
      at         TEXT NOT NULL
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX exchange_by_time ON exchange (at);
    CREATE INDEX exchange_of_member ON exchange (member_id);

    -- Events of a chat platform already taken up: the same one may be delivered twice.
    CREATE TABLE seen_event (
      id         TEXT PRIMARY KEY,
      at         TEXT NOT NULL
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX seen_by_time ON seen_event (at);
  `,
} satisfies Migration;
