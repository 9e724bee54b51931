/** A cursor over a body that notes, field by field, what breaks the rules. */

import { isObject, type Json, type JsonObject } from "./json.ts";
import type { Problems } from "./refusals.ts";

export class Field {
  readonly value: Json | undefined;
  readonly path: readonly (string | number)[];
  readonly problems: Problems;

  constructor(value: Json | undefined, path: readonly (string | number)[], problems: Problems) {
    this.value = value;
    this.path = path;
    this.problems = problems;
  }

  /** Absent or null: the platform treats both as not given. */
  get isAbsent(): boolean {
    return this.value === undefined || this.value === null;
  }

  get object(): JsonObject {
    return isObject(this.value) ? this.value : {};
  }

  key(name: string): Field {
    return new Field(this.object[name], [...this.path, name], this.problems);
  }

  wrong(code: string, message: string): void {
    this.problems.add(this.path, code, message);
  }

  required(): boolean {
    if (this.isAbsent) this.wrong("BASE_TYPE_REQUIRED", "This field is required");
    return !this.isAbsent;
  }

  /** A text between two lengths, counted in UTF-16 units: the stricter of the two usual counts. */
  text(min: number, max: number): string | undefined {
    if (this.isAbsent) return undefined;
    if (typeof this.value !== "string") {
      this.wrong("BASE_TYPE_BAD_TYPE", "Must be a string.");
      return undefined;
    }
    const { length } = this.value;
    if (length < min || length > max) {
      this.wrong("BASE_TYPE_BAD_LENGTH", `Must be between ${min} and ${max} in length.`);
    }
    return this.value;
  }

  requiredText(min: number, max: number): string | undefined {
    return this.required() ? this.text(min, max) : undefined;
  }

  number(min: number, max: number, whole = true): number | undefined {
    if (this.isAbsent) return undefined;
    if (typeof this.value !== "number" || (whole && !Number.isInteger(this.value))) {
      this.wrong("NUMBER_TYPE_COERCE", `Value is not ${whole ? "an int" : "a float"}.`);
      return undefined;
    }
    if (this.value < min) this.wrong("NUMBER_TYPE_MIN", `Must be greater than or equal to ${min}.`);
    if (this.value > max) this.wrong("NUMBER_TYPE_MAX", `Must be less than or equal to ${max}.`);
    return this.value;
  }

  boolean(): boolean | undefined {
    if (this.isAbsent) return undefined;
    if (typeof this.value !== "boolean") {
      this.wrong("BASE_TYPE_BAD_TYPE", "Must be a boolean.");
      return undefined;
    }
    return this.value;
  }

  snowflake(): string | undefined {
    if (this.isAbsent) return undefined;
    if (typeof this.value !== "string" || !/^\d{1,20}$/.test(this.value)) {
      this.wrong("NUMBER_TYPE_COERCE", `Value "${String(this.value)}" is not snowflake.`);
      return undefined;
    }
    return this.value;
  }

  /** One of a closed set. */
  choice<T extends Json>(allowed: readonly T[]): T | undefined {
    if (this.isAbsent) return undefined;
    const found = allowed.find((candidate) => candidate === this.value);
    if (found === undefined) this.wrong("BASE_TYPE_CHOICES", `Value must be one of {${allowed.join(", ")}}.`);
    return found;
  }

  /** The items of a list between two lengths; empty when absent. */
  items(min: number, max: number): Field[] {
    if (this.isAbsent) return [];
    if (!Array.isArray(this.value)) {
      this.wrong("BASE_TYPE_BAD_TYPE", "Must be a list.");
      return [];
    }
    if (this.value.length < min || this.value.length > max) {
      this.wrong("BASE_TYPE_BAD_LENGTH", `Must be between ${min} and ${max} in length.`);
    }
    return this.value.map((item, index) => new Field(item, [...this.path, index], this.problems));
  }

  /** Marks every item whose key was seen before. */
  unique(items: readonly Field[], keyOf: (item: Field) => Json | undefined, message: string): void {
    const seen = new Set<Json>();
    for (const item of items) {
      const key = keyOf(item);
      if (key === undefined || key === null) continue;
      if (seen.has(key)) item.wrong("SET_TYPE_ALREADY_CONTAINS_VALUE", message);
      seen.add(key);
    }
  }
}
