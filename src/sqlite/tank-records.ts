import type { Database } from "better-sqlite3";
import { z } from "zod";
import type { Container } from "../core/tank/container.ts";
import { UserError } from "../kit/user-error.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import {
  PLANT_NOTES,
  type PlantNotes,
  type Reader,
  type Share,
  type Tank,
  type TankNotes,
  type TankRecords,
  type Viewer,
} from "../records/tank.ts";

/** More tanks than this is a mistake or mischief. */
const MOST_TANKS = 50;
const MOST_NAMES = 10;

const notesSchema = z.object({
  livestock: z.string().exactOptional(),
  food: z.string().exactOptional(),
  media: z.string().exactOptional(),
  flow: z.string().exactOptional(),
  salinity: z.string().exactOptional(),
  temperature: z.string().exactOptional(),
}) satisfies z.ZodType<TankNotes>;

const plantSchema: z.ZodType<PlantNotes> = z.partialRecord(z.enum(PLANT_NOTES), z.string());

const tankRow = z.object({
  id: z.number(),
  member_id: z.string(),
  kind: z.enum(["marine", "brackish", "fresh"]),
  containers: z.string(),
  containers_typed: z.string(),
  notes: z.string(),
  plant: z.string(),
  is_default: z.number(),
});
const nameRow = z.object({ tank_id: z.number(), name: z.string(), is_alias: z.number() });
const shareRow = z.object({
  tank_id: z.number(),
  kind: z.enum(["club", "helper"]),
  reader: z.string(),
  until: z.string().nullable(),
});
const leaveRow = z.object({ id: z.number(), by: z.string().nullable(), until: z.string().nullable() });

/** Where each kind of leave is kept. */
const LEAVES = {
  club: { table: "tank_share", column: "club_id" },
  helper: { table: "tank_helper", column: "member_id" },
} as const satisfies Record<Reader["kind"], unknown>;

/** Written by `create` and `replaceContainers` alone; the shape is the core's own. */
const containersSchema = z.array(z.custom<Container>((value) => typeof value === "object" && value !== null));

export class SqliteTankRecords implements TankRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  own(member: MemberId): readonly Tank[] {
    return this.#read("SELECT * FROM tank WHERE member_id = ? ORDER BY is_default DESC, id", member);
  }

  visible({ member, club, now }: Viewer): readonly Tank[] {
    const leaves = z.array(leaveRow).parse(
      this.#db
        .prepare(
          `SELECT tank.id, member.name AS by, leave.until FROM (
             SELECT tank_id, until FROM tank_share WHERE club_id = @club
             UNION ALL SELECT tank_id, until FROM tank_helper WHERE member_id = @member
           ) AS leave
           JOIN tank ON tank.id = leave.tank_id JOIN member ON member.id = tank.member_id
           WHERE tank.member_id <> @member AND (leave.until IS NULL OR leave.until > @now)
           ORDER BY tank.id, leave.until IS NULL DESC, leave.until DESC LIMIT 500`,
        )
        .all({ club: club ?? "", member, now }),
    );
    const longest = new Map(leaves.toReversed().map((leave) => [leave.id, leave]));
    const others = this.#read(
      "SELECT * FROM tank WHERE id IN (SELECT value FROM json_each(?)) ORDER BY id",
      JSON.stringify([...longest.keys()]),
    );
    return [
      ...this.own(member),
      ...others.map((tank) => {
        const leave = longest.get(tank.id);
        const until = leave?.until ?? undefined;
        const shared = { by: leave?.by ?? "another member", ...(until === undefined ? {} : { until }) };
        return { ...tank, sharedWith: [], shared };
      }),
    ];
  }

  create(tank: Parameters<TankRecords["create"]>[0]): Tank {
    return this.#db
      .transaction(() => {
        const count = this.own(tank.owner).length;
        if (count >= MOST_TANKS)
          throw new UserError(
            "not-now",
            `You already keep ${count} tanks here, the most one member may have. Remove one first.`,
          );
        const { lastInsertRowid } = this.#db
          .prepare(
            `INSERT INTO tank (member_id, kind, containers, containers_typed, is_default, created_at)
             VALUES (?, ?, ?, ?, ?, ?)`,
          )
          .run(
            tank.owner,
            tank.kind,
            JSON.stringify(tank.containers),
            tank.containersTyped,
            count === 0 ? 1 : 0,
            tank.now,
          );
        const id = Number(lastInsertRowid);
        this.#addName(tank.owner, id, tank.name, false);
        return this.#mine(tank.owner, id);
      })
      .immediate();
  }

  replaceContainers(owner: MemberId, tankId: number, containers: readonly Container[], typed: string): void {
    this.#change("UPDATE tank SET containers = ?, containers_typed = ? WHERE id = ? AND member_id = ?", [
      JSON.stringify(containers),
      typed,
      tankId,
      owner,
    ]);
  }

  setNotes(owner: MemberId, tankId: number, notes: TankNotes): void {
    this.#db
      .transaction(() => {
        const all = { ...this.#mine(owner, tankId).notes, ...notes };
        const kept = Object.fromEntries(Object.entries(all).filter(([, text]) => text !== ""));
        this.#change("UPDATE tank SET notes = ? WHERE id = ? AND member_id = ?", [
          JSON.stringify(kept),
          tankId,
          owner,
        ]);
      })
      .immediate();
  }

  setPlant(owner: MemberId, tankId: number, notes: PlantNotes): void {
    this.#db
      .transaction(() => {
        const all = { ...this.#mine(owner, tankId).plant, ...notes };
        const kept = Object.fromEntries(Object.entries(all).filter(([, text]) => text !== ""));
        this.#change("UPDATE tank SET plant = ? WHERE id = ? AND member_id = ?", [
          JSON.stringify(kept),
          tankId,
          owner,
        ]);
      })
      .immediate();
  }

  rename(owner: MemberId, tankId: number, name: string): void {
    this.#db
      .transaction(() => {
        this.#mine(owner, tankId);
        this.#db.prepare("DELETE FROM tank_name WHERE tank_id = ? AND is_alias = 0").run(tankId);
        this.#addName(owner, tankId, name, false);
      })
      .immediate();
  }

  addAlias(owner: MemberId, tankId: number, alias: string): void {
    this.#db
      .transaction(() => {
        const tank = this.#mine(owner, tankId);
        if (tank.aliases.length >= MOST_NAMES)
          throw new UserError(
            "not-now",
            `${tank.name} already has ${tank.aliases.length} aliases, the most it may have.`,
          );
        this.#addName(owner, tankId, alias, true);
      })
      .immediate();
  }

  removeAlias(owner: MemberId, tankId: number, alias: string): void {
    this.#change("DELETE FROM tank_name WHERE tank_id = ? AND member_id = ? AND key = ? AND is_alias = 1", [
      tankId,
      owner,
      nameKey(alias),
    ]);
  }

  setDefault(owner: MemberId, tankId: number): void {
    this.#db
      .transaction(() => {
        this.#mine(owner, tankId);
        this.#db.prepare("UPDATE tank SET is_default = 0 WHERE member_id = ? AND is_default = 1").run(owner);
        this.#change("UPDATE tank SET is_default = 1 WHERE id = ? AND member_id = ?", [tankId, owner]);
      })
      .immediate();
  }

  share(owner: MemberId, tankId: number, { reader, until }: Share): void {
    this.#mine(owner, tankId);
    const { table, column } = LEAVES[reader.kind];
    this.#db
      .prepare(
        `INSERT INTO ${table} (tank_id, ${column}, until) VALUES (?, ?, ?)
         ON CONFLICT DO UPDATE SET until = excluded.until`,
      )
      .run(tankId, reader.id, until ?? null);
  }

  unshare(owner: MemberId, tankId: number, reader?: Reader): void {
    this.#mine(owner, tankId);
    if (reader === undefined) {
      this.#db.prepare("DELETE FROM tank_share WHERE tank_id = ?").run(tankId);
      this.#db.prepare("DELETE FROM tank_helper WHERE tank_id = ?").run(tankId);
      return;
    }
    const { table, column } = LEAVES[reader.kind];
    this.#db.prepare(`DELETE FROM ${table} WHERE tank_id = ? AND ${column} = ?`).run(tankId, reader.id);
  }

  remove(owner: MemberId, tankId: number): void {
    this.#db
      .transaction(() => {
        const { isDefault } = this.#mine(owner, tankId);
        this.#change("DELETE FROM tank WHERE id = ? AND member_id = ?", [tankId, owner]);
        const next = this.own(owner)[0];
        if (isDefault && next !== undefined) this.setDefault(owner, next.id);
      })
      .immediate();
  }

  #addName(owner: MemberId, tankId: number, name: string, isAlias: boolean): void {
    const { changes } = this.#db
      .prepare(
        `INSERT INTO tank_name (member_id, key, tank_id, name, is_alias) VALUES (?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
      )
      .run(owner, nameKey(name), tankId, name, isAlias ? 1 : 0);
    if (changes === 0)
      throw new UserError(
        "bad-input",
        `You already have a tank called “${name}” (as its name or an alias). Choose another word.`,
      );
  }

  #mine(owner: MemberId, tankId: number): Tank {
    const tank = this.#read("SELECT * FROM tank WHERE id = ? AND member_id = ?", tankId, owner)[0];
    if (tank === undefined) throw new UserError("not-yours", "That tank is not one of yours.");
    return tank;
  }

  #change(sql: string, values: readonly (string | number)[]): void {
    if (this.#db.prepare(sql).run(...values).changes === 0)
      throw new UserError("not-yours", "That is not one of yours, or it has gone.");
  }

  #read(sql: string, ...values: (string | number)[]): readonly Tank[] {
    const rows = z.array(tankRow).parse(this.#db.prepare(sql).all(...values));
    if (rows.length === 0) return [];
    const ids = JSON.stringify(rows.map(({ id }) => id));
    const names = z
      .array(nameRow)
      .parse(
        this.#db
          .prepare(
            "SELECT tank_id, name, is_alias FROM tank_name WHERE tank_id IN (SELECT value FROM json_each(?)) ORDER BY rowid",
          )
          .all(ids),
      );
    const shares = z.array(shareRow).parse(
      this.#db
        .prepare(
          `SELECT tank_id, 'club' AS kind, club_id AS reader, until FROM tank_share
               WHERE tank_id IN (SELECT value FROM json_each(@ids))
             UNION ALL SELECT tank_id, 'helper', member_id, until FROM tank_helper
               WHERE tank_id IN (SELECT value FROM json_each(@ids))`,
        )
        .all({ ids }),
    );
    return rows.map((row) => {
      const own = names.filter(({ tank_id }) => tank_id === row.id);
      return {
        id: row.id,
        owner: row.member_id as MemberId,
        name: own.find(({ is_alias }) => is_alias === 0)?.name ?? "unnamed",
        aliases: own.filter(({ is_alias }) => is_alias === 1).map(({ name }) => name),
        kind: row.kind,
        containers: containersSchema.parse(JSON.parse(row.containers)),
        containersTyped: row.containers_typed,
        notes: notesSchema.parse(JSON.parse(row.notes)),
        plant: plantSchema.parse(JSON.parse(row.plant)),
        isDefault: row.is_default === 1,
        sharedWith: shares.filter(({ tank_id }) => tank_id === row.id).map(shareOf),
      };
    });
  }
}

function shareOf({ kind, reader, until }: z.infer<typeof shareRow>): Share {
  const end = until === null ? {} : { until };
  return kind === "club"
    ? { reader: { kind, id: reader as ClubId }, ...end }
    : { reader: { kind, id: reader as MemberId }, ...end };
}

/** The same word however it is capitalised or composed. */
export function nameKey(name: string): string {
  return name.normalize("NFKC").toLowerCase().replace(/\s+/g, " ").trim();
}
