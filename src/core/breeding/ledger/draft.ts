import type { GroupState } from "./state.ts";

type Table =
  | "people"
  | "tanks"
  | "animals"
  | "pairs"
  | "batches"
  | "cultures"
  | "tins"
  | "duties"
  | "wants"
  | "transfers"
  | "alerts";
type Row<T extends Table> = GroupState[T][string];

/** A state being changed: each table and each row is copied the first time it is touched, so that the state it
 *  came from stays as it was, and a long ledger costs one copy of a row, not one for each event. */
export class Draft {
  readonly state: GroupState;
  readonly #tables = new Set<string>();
  readonly #rows = new Set<unknown>();

  constructor(from: GroupState) {
    this.state = { ...from, last: { ...from.last }, balances: { ...from.balances } };
  }

  /** The row, free to be changed; undefined when there is none. */
  edit<T extends Table>(table: T, key: string): Row<T> | undefined {
    const rows = this.#own(table);
    const row = rows[key];
    if (row === undefined || this.#rows.has(row)) return row;
    const copy = structuredClone(row);
    rows[key] = copy;
    this.#rows.add(copy);
    return copy;
  }

  put<T extends Table>(table: T, key: string, row: Row<T>): void {
    this.#own(table)[key] = row;
    this.#rows.add(row);
  }

  drop(table: Table, key: string): void {
    delete this.#own(table)[key];
  }

  addTo(person: number, cents: number): void {
    this.state.balances[person] = (this.state.balances[person] ?? 0) + cents;
  }

  #own<T extends Table>(table: T): Record<string, Row<T>> {
    if (!this.#tables.has(table)) {
      Object.assign(this.state, { [table]: { ...this.state[table] } });
      this.#tables.add(table);
    }
    return this.state[table] as Record<string, Row<T>>;
  }
}
