import type { Migration } from "../migrate.ts";

export default {
  name: "0008-way-back",
  sql: /* sql */ `
    -- Whoever logs by hand that something is on again has brought it back: it is not asked for any more.
    CREATE TRIGGER duty_back_by_log AFTER INSERT ON event WHEN NEW.event = 'equipment on'
      BEGIN UPDATE duty SET state = 'done', tell_at = NULL, settled_at = NEW.at, batch_id = NEW.batch_id
        WHERE tank_id = NEW.tank_id AND half = 'back' AND state = 'open'
          AND lower(json_extract(words, '$.device')) = lower(NEW.text)
          AND NEW.at >= (SELECT coalesce(off.settled_at, off.due_at) FROM duty AS off WHERE off.id = duty.pair_of);
      END;

    -- Where a letter may go is settled when it is written: it is looked for where it was sent.
    ALTER TABLE letter ADD COLUMN wishes TEXT;
  `,
} satisfies Migration;
