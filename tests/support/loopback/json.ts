/** JSON as it travels over the wire, and narrow ways into it. */

export type Json = null | boolean | number | string | Json[] | JsonObject;
export type JsonObject = { [key: string]: Json };

export function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

export function textOf(value: Json | undefined): string | undefined {
  return typeof value === "string" ? value : undefined;
}

export function numberOf(value: Json | undefined): number | undefined {
  return typeof value === "number" ? value : undefined;
}

export function objectsOf(value: Json | undefined): JsonObject[] {
  return Array.isArray(value) ? value.filter(isObject) : [];
}

export function textsOf(value: Json | undefined): string[] {
  return Array.isArray(value) ? value.filter((item) => typeof item === "string") : [];
}

/** Parses text; undefined when it is not JSON. */
export function parseJson(text: string): Json | undefined {
  try {
    const parsed: Json = JSON.parse(text);
    return parsed;
  } catch {
    return undefined;
  }
}
