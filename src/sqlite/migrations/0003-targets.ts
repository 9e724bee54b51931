import type { Migration } from "../migrate.ts";

export default {
  name: "0003-targets",
  sql: /* sql */ `
    -- Where a member wants a parameter, in its canonical unit; at least one end is given.
    CREATE TABLE target (
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      parameter  TEXT NOT NULL,
      low        REAL,
      high       REAL,
      typed      TEXT NOT NULL,
      PRIMARY KEY (tank_id, parameter),
      CHECK (low IS NOT NULL OR high IS NOT NULL),
      CHECK (low IS NULL OR high IS NULL OR low < high)
    ) STRICT;
  `,
} satisfies Migration;
