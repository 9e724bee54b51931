import { quote } from "../quantity/clean.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { Container } from "./container.ts";
import { readContainer } from "./read-container.ts";
import { showContainer } from "./show-container.ts";

const LONGEST_TEXT = 4000;
const MOST_CONTAINERS = 60;
const EXAMPLE = "“display 200x80x60 cm inside, level 54 cm, rock 90 kg; sump 180 L measured”";

/**
 * A whole system in one text, containers parted by semicolons or new lines:
 * `display 200x80x60 cm inside, level 54 cm, rock 90 kg, sand 40 kg; 3 x filter drum 90 L label`.
 * A choice's text is the whole description with the doubtful piece settled.
 */
export function readContainers(typed: string, habits: Habits): Read<readonly Container[]> {
  if (typed.length > LONGEST_TEXT) {
    return unreadable(`That is ${typed.length} characters long, and I read up to ${LONGEST_TEXT}.`);
  }
  const text = plainText(typed);
  const containers: Container[] = [];
  const pieces = text.split(/([;\n])/);
  for (const [i, piece] of pieces.entries()) {
    const part = piece.trim();
    if (i % 2 === 1 || part === "") continue;
    const read = readContainer(part, habits);
    if (read.kind === "ask") {
      const choices = read.choices.map((choice) => ({
        ...choice,
        text: [...pieces.slice(0, i), choice.text, ...pieces.slice(i + 1)].join(""),
      }));
      return { ...read, choices };
    }
    if (read.kind === "unreadable") return read;
    containers.push(...read.value);
    if (containers.length > MOST_CONTAINERS) {
      return unreadable(
        `That is more than ${MOST_CONTAINERS} containers, and I add up to ${MOST_CONTAINERS}.`,
      );
    }
  }
  if (containers.length === 0) return unreadable(`There is no container in that. Try ${EXAMPLE}.`);
  const names = new Set<string>();
  for (const { name } of containers) {
    const key = name.toLowerCase();
    if (names.has(key))
      return unreadable(`Two containers are called ${quote(name)}. Give each a name of its own.`);
    names.add(key);
  }
  const value = /\( ?other ?\)/i.test(text) ? containers : withDisplay(containers);
  return { kind: "read", value, readAs: value.map((container) => showContainer(container)).join("; ") };
}

/** A container that stands alone, and whose name does not say what it is, is the display. */
function withDisplay(containers: readonly Container[]): readonly Container[] {
  const [only, ...others] = containers;
  return only !== undefined && others.length === 0 && only.role === "other"
    ? [{ ...only, role: "display" }]
    : containers;
}

/** One kind of dash, quote, space and times sign, and nothing invisible; new lines stay. */
function plainText(typed: string): string {
  return typed
    .replace(/[″“”„]/g, '"')
    .replace(/[′‘’ʹʼ]/g, "'")
    .replace(/[º˚]/g, "°")
    .normalize("NFKC")
    .replace(/[‐‑‒–—―−]/g, "-")
    .replace(/[✕✖⨯×]/g, "x")
    .replace(/\u2044/g, "/")
    .replace(/[\p{Cf}\p{Variation_Selector}]/gu, "")
    .replace(/\r\n?|[\u2028\u2029]/g, "\n")
    .replace(/[^\S\n]+/g, " ")
    .replace(/(?!\n)\p{Cc}/gu, "");
}

function unreadable<T>(message: string): Read<T> {
  return { kind: "unreadable", message };
}
