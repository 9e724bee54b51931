import type { Migration } from "../migrate.ts";

export default {
  name: "0002-tank-plant",
  sql: /* sql */ `
    -- Pipes, pumps, room and power around a tank: JSON of texts as typed.
    ALTER TABLE tank ADD COLUMN plant TEXT NOT NULL DEFAULT '{}';
  `,
} satisfies Migration;
