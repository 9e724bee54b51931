import type { Migration } from "../migrate.ts";

export default {
  name: "0004-uploads-shares",
  sql: /* sql */ `
    -- A file a member handed over, kept until what it is for has been confirmed.
    CREATE TABLE upload (
      id         TEXT PRIMARY KEY,
      member_id  TEXT NOT NULL REFERENCES member (id) ON DELETE CASCADE,
      name       TEXT NOT NULL,
      content    TEXT NOT NULL,
      at         TEXT NOT NULL
    ) STRICT;
    CREATE INDEX upload_of_member ON upload (member_id);
    CREATE INDEX upload_by_time ON upload (at);

    -- What others may call a member whose tank they are shown.
    ALTER TABLE member ADD COLUMN name TEXT;

    -- With whom a tank is shared, and until when; a club or one helper.
    ALTER TABLE tank_share ADD COLUMN until TEXT;
    CREATE TABLE tank_helper (
      tank_id    INTEGER NOT NULL REFERENCES tank (id) ON DELETE CASCADE,
      member_id  TEXT NOT NULL,
      until      TEXT,
      PRIMARY KEY (tank_id, member_id)
    ) STRICT;
    CREATE INDEX tank_of_helper ON tank_helper (member_id);
  `,
} satisfies Migration;
