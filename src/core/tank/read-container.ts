import { quote } from "../quantity/clean.ts";
import { between, type Estimate } from "../quantity/estimate.ts";
import { readLength } from "../quantity/length.ts";
import { readMass } from "../quantity/mass.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { Centimetres } from "../quantity/units.ts";
import { readVolume } from "../quantity/volume.ts";
import type { Container } from "./container.ts";
import {
  FIRST_FIGURE,
  FORM,
  LENGTH,
  LENGTH_UNIT,
  LEVEL_WORD,
  MASS,
  N,
  ROCK,
  SIDES,
  VOLUME,
} from "./container-grammar.ts";
import { roleOf } from "./container-role.ts";
import { type Facts, Halt, halt, toContainer } from "./described.ts";
import { FORM_WORDS } from "./read-shape.ts";

const LONGEST_PART = 400;
const LONGEST_NAME = 60;
const MOST_COPIES = 40;

/** Words that belong to the figure after them, though they stand where a name would end. */
const FACT_WORDS =
  /(?:(?:^|[ ,]+)(?:measured|metered|label(?:led)?|nominal|brimful|inside|outside|(?:not )?in (?:the )?system|holds|holding|of|is))+[ ,]*$/i;

/**
 * One container, or several alike: `3 x filter drum 90 L label`. A choice's text is the whole part.
 * Never throws; what cannot be understood is named.
 */
export function readContainer(part: string, habits: Habits): Read<readonly Container[]> {
  if (part.length > LONGEST_PART) {
    return {
      kind: "unreadable",
      message: `${quote(part)} is too long for one container. Part containers with “;”.`,
    };
  }
  try {
    const { copies, facts } = new PartReader(part, habits).read();
    const container = toContainer(facts, part);
    const value =
      copies === undefined
        ? [container]
        : Array.from({ length: copies }, (_, i) => ({ ...container, name: `${container.name} ${i + 1}` }));
    return { kind: "read", value, readAs: part };
  } catch (error) {
    if (error instanceof Halt) return error.read;
    throw error;
  }
}

class PartReader {
  readonly #text: string;
  readonly #habits: Habits;
  readonly #facts: Facts = { name: "", side: "not said" };
  #at = 0;
  /** What the dimensions were typed in. */
  #sideUnit: string | undefined;
  /** The word the form was given by: a name where there is no other. */
  #formWord = "";

  constructor(text: string, habits: Habits) {
    this.#text = text;
    this.#habits = habits;
  }

  read(): { copies: number | undefined; facts: Facts } {
    const copies = this.#head();
    while (this.#skip()) {
      if (!this.#fact()) this.#nameOrRefuse();
    }
    if (this.#facts.name === "") this.#facts.name = tidyName(this.#formWord);
    return { copies, facts: this.#facts };
  }

  /** "3 x filter drum (filter):" and whatever else stands before the first figure. */
  #head(): number | undefined {
    const count = this.#take(/(?<n>\d{1,3})(?: ?[x*] ?(?=\p{L})| ?[x*] (?=\d)| (?=\p{L}))/iuy);
    // "55 gallon drum" and "2 cm" begin with a figure, not with a count.
    // As said back: name and role stand before a colon, whatever the name looks like.
    const hasRole = /^[^:]*\([^()]*\) ?:/.test(this.#text);
    const isFigure = count !== undefined && !/[x*]/i.test(count[0]) && this.#startsFigure(0);
    if (isFigure) this.#at = 0;
    const copies = count === undefined || isFigure ? undefined : Number(count.groups?.["n"]);
    if (copies !== undefined && (copies < 1 || copies > MOST_COPIES)) {
      halt(`In ${quote(this.#text)}: I make 1 to ${MOST_COPIES} copies of a container, not ${copies}.`);
    }
    const rest = this.#text.slice(this.#at);
    const colon = rest.indexOf(":");
    const figure = FIRST_FIGURE.exec(rest);
    const isNamed = hasRole || (colon >= 0 && (figure === null || colon < figure.index));
    const figureAt = figure?.index ?? rest.length;
    const nameEnd = isNamed ? colon : (FACT_WORDS.exec(rest.slice(0, figureAt))?.index ?? figureAt);
    let name = rest.slice(0, nameEnd);
    if (!isNamed && figure !== null && /(?:^| )-$/.test(name)) {
      halt(`In ${quote(this.#text)} a figure goes below zero, and no container holds less than nothing.`);
    }
    this.#at += isNamed ? nameEnd + 1 : nameEnd;
    const inBrackets = /\(([^()]*)\)\s*$/.exec(name);
    if (inBrackets !== null) {
      this.#facts.role = roleOf(inBrackets[1] ?? "");
      if (this.#facts.role === undefined) {
        halt(
          `In ${quote(this.#text)}: I do not know what a ${quote(inBrackets[1] ?? "")} is for. Try (display), (filter), (algae tank), (pump container), (reservoir) or (other).`,
        );
      }
      name = name.slice(0, inBrackets.index);
    }
    const plural = copies !== undefined && copies > 1 && !isNamed;
    this.#facts.name = tidyName(plural ? name.trim().replace(/([^s])s$/i, "$1") : name);
    if (!isNamed) this.#refuseSplitNumber();
    return copies;
  }

  /** "drum 1 200 L": drum 1 of 200 L, or a drum of 1200 L? */
  #refuseSplitNumber() {
    const spaced = /(?<![\d.,])(\d{1,3}) (\d{3})(?![\d.,])/.exec(this.#text.slice(Math.max(0, this.#at - 4)));
    const before = /(?:^| )(\d{1,3})$/.exec(this.#facts.name);
    if (spaced === null || before === null || !/^\d{3}(?![\d.,])/.test(this.#text.slice(this.#at))) return;
    const named = this.#text.slice(0, this.#at).trimEnd();
    const bare = named.slice(0, named.length - (before[1] ?? "").length).trimEnd();
    const rest = this.#text.slice(this.#at);
    throw new Halt({
      kind: "ask",
      question: `Is ${quote(`${before[1]} ${rest.slice(0, 3)}`)} in ${quote(this.#text)} one number, or is ${before[1]} part of the name?`,
      choices: [
        { label: `one number, ${before[1]}${rest.slice(0, 3)}`, text: `${bare} ${before[1]}${rest}` },
        { label: `${named} of ${rest.slice(0, 3)}`, text: `${named}: ${rest}` },
      ],
    });
  }

  /** The next fact at the cursor; false when nothing known stands there. */
  #fact(): boolean {
    const facts = this.#facts;
    if (
      this.#take(/(?:not (?:a )?(?:in|part of)|out(?:side)? (?:of )?) ?(?:the |our |my )?system(?!\p{L})/iuy)
    ) {
      facts.inSystem = false;
      return true;
    }
    if (this.#take(/(?:part of|in) (?:the |our |my )?system(?!\p{L})/iuy)) {
      facts.inSystem = true;
      return true;
    }
    return this.#rockOrSand() || this.#wallOrSide() || this.#level() || this.#sides() || this.#litres();
  }

  #rockOrSand(): boolean {
    const facts = this.#facts;
    const rock =
      this.#take(RegExp(`${ROCK}:?(?: of)? ?(?<q>${MASS})(?<after>,? (?:dry|wet)(?!\\p{L}))?`, "iuy")) ??
      this.#take(RegExp(`(?<q>${MASS}) (?:of )?${ROCK}(?<after>,? (?:dry|wet)(?!\\p{L}))?(?!\\p{L})`, "iuy"));
    if (rock !== undefined) {
      this.#put("rockKg", this.#quantity(rock, readMass), "masses of rock");
      const words = `${rock.groups?.["before"] ?? ""} ${rock.groups?.["after"] ?? ""}`.toLowerCase();
      if (words.includes("wet")) facts.rockWeighed = "wet";
      else if (words.includes("dry")) facts.rockWeighed = "dry";
      return true;
    }
    const sand =
      this.#take(RegExp(`(?:(?:dry|live) )?sand:?(?: of)? ?(?<q>${MASS})`, "iuy")) ??
      this.#take(RegExp(`(?<q>${MASS}) (?:of )?(?:(?:dry|live) )?sand(?!\\p{L})`, "iuy"));
    if (sand !== undefined) {
      this.#put("sandKg", this.#quantity(sand, readMass), "masses of sand");
      return true;
    }
    const bed =
      this.#take(RegExp(`(?:(?:dry|live) )?sand(?: bed)?:?(?: of)? ?(?<q>${LENGTH})(?: deep)?`, "iuy")) ??
      this.#take(RegExp(`(?<q>${LENGTH}) (?:deep )?(?:of )?(?:live )?sand(?: bed)?(?!\\p{L})`, "iuy"));
    if (bed === undefined) return false;
    this.#put("sandDepthCm", this.#quantity(bed, readLength), "depths of sand");
    return true;
  }

  #wallOrSide(): boolean {
    const facts = this.#facts;
    const wall =
      this.#take(RegExp(`walls?:?(?: of)? (?<q>${LENGTH})(?: thick)?`, "iuy")) ??
      this.#take(RegExp(`(?<q>${LENGTH}) (?:thick )?(?:walls?|glass|acrylic)(?!\\p{L})`, "iuy"));
    if (wall !== undefined) {
      this.#put("wallCm", this.#length(wall), "walls");
      return true;
    }
    const side = this.#take(
      /(?:measured )?(?:(?<inside>inside|internal|inner)|(?<outside>outside|external|outer))(?: (?:dimensions|dims|measurements?|size))?(?!\p{L})/iuy,
    );
    if (side === undefined) return false;
    facts.side = side.groups?.["inside"] === undefined ? "outside" : "inside";
    return true;
  }

  #level(): boolean {
    const share =
      this.#take(
        RegExp(`(?:${LEVEL_WORD}:?(?: (?:up )?(?:to|at|of|is))? )?(?<n>${N}) ?%(?: full)?(?!\\p{L})`, "iuy"),
      ) ?? undefined;
    if (share !== undefined) {
      const percent = Number((share.groups?.["n"] ?? "").replace(",", "."));
      if (!(percent > 0 && percent <= 100))
        halt(`In ${quote(this.#text)}: I cannot fill it to ${quote(share[0])}.`);
      this.#put("levelShare", between(percent / 100, percent / 100), "levels");
      return true;
    }
    const level =
      this.#take(
        RegExp(
          `(?:${LEVEL_WORD}:?(?: (?:up )?(?:to|at|of|is))?|(?:up )?to) (?<q>${LENGTH})(?: (?:deep|high))?`,
          "iuy",
        ),
      ) ?? this.#take(RegExp(`(?<q>${LENGTH}) (?:deep|(?:of )?water)(?!\\p{L})`, "iuy"));
    if (level !== undefined) {
      this.#put("levelCm", this.#quantity(level, readLength), "levels");
      return true;
    }
    const bare = this.#take(
      RegExp(`${LEVEL_WORD}:?(?: (?:up )?(?:to|at|of|is))? (?<q>${N})(?!\\d|[.,']\\d| ?[\\p{L}%"'])`, "iuy"),
    );
    if (bare === undefined) return false;
    const figures = bare.groups?.["q"] ?? "";
    if (this.#sideUnit === undefined) this.#askUnit(figures, this.#at);
    // A level is measured with the same tape as the sides.
    const read = readLength(`${figures} ${this.#sideUnit}`, this.#habits);
    this.#put("levelCm", this.#settled(read, this.#at - figures.length, this.#at).estimate, "levels");
    return true;
  }

  #sides(): boolean {
    const facts = this.#facts;
    const form = this.#take(RegExp(`(?:${FORM})(?!\\p{L})`, "iuy"));
    if (form !== undefined) {
      this.#formWord = form[0];
      facts.form = FORM_WORDS.find(([, words]) => RegExp(`^(?:${words})$`, "iu").test(form[0]))?.[0];
      return true;
    }
    const cut = this.#take(RegExp(`cut(?:[ -]?out)?:?(?: of)? (?<q>${SIDES})`, "iuy"));
    if (cut !== undefined) {
      this.#put("cutCm", this.#sideList(cut), "corners cut out");
      return true;
    }
    const lone = (
      [
        ["diameterCm", "diameter|dia\\.?|radius"],
        ["heightCm", "height|[x*]"],
        ["bowCm", "bow"],
      ] as const
    ).find(([field, words]) => {
      const found = this.#take(
        RegExp(`(?:${words}):?(?: of)? ?(?<q>${LENGTH})(?: (?:high|tall|long))?`, "iuy"),
      );
      if (found !== undefined) this.#put(field, this.#length(found), `lengths for one thing`);
      return found !== undefined;
    });
    if (lone !== undefined) return true;
    const across = this.#take(RegExp(`(?<q>${LENGTH}) (?:in )?(?:diameter|dia|across)(?!\\p{L})`, "iuy"));
    if (across !== undefined) {
      this.#put("diameterCm", this.#length(across), "diameters");
      return true;
    }
    const high = this.#take(RegExp(`(?<q>${LENGTH}) (?:high|tall|long)(?!\\p{L})`, "iuy"));
    if (high !== undefined) {
      this.#put("heightCm", this.#length(high), "heights");
      return true;
    }
    const sides = this.#take(RegExp(`(?<q>${SIDES})`, "iuy"));
    if (sides === undefined) return false;
    this.#put("sidesCm", this.#sideList(sides), "sets of dimensions");
    return true;
  }

  #litres(): boolean {
    const litres = this.#take(RegExp(`(?<q>${VOLUME})`, "iuy"));
    if (litres !== undefined) {
      this.#put("litres", this.#quantity(litres, readVolume), "volumes");
      return true;
    }
    if (this.#take(/(?:measured|metered)(?: fill| net)?(?!\p{L})/iuy)) {
      this.#facts.isMeasured = true;
      return true;
    }
    if (
      this.#take(
        /(?:label(?:led)?|nominal|rated|brim(?:ful)?|printed|gross|to the (?:brim|rim))(?: volume)?(?!\p{L})/iuy,
      )
    ) {
      this.#facts.isMeasured = false;
      return true;
    }
    return this.#take(/(?:each|and|with|holds|holding|of)(?!\p{L})/iuy) !== undefined;
  }

  /** Words that mean nothing else are the name, when none was given yet: "90 L drum". */
  #nameOrRefuse() {
    const words = this.#take(/\p{L}[^,:;\d]*/iuy) ?? this.#take(/[^,]+/iuy);
    const piece = words?.[0].trim() ?? this.#text.slice(this.#at);
    if (this.#facts.name === "" && /^\p{L}/u.test(piece)) {
      this.#facts.name = tidyName(piece);
      return;
    }
    halt(
      `In ${quote(this.#text)} I cannot read ${quote(piece)}. A container is a name, a volume or dimensions, and, where they apply, level, wall, rock, sand, “measured”, “label” or “not in system”.`,
    );
  }

  #sideList(match: RegExpExecArray): readonly Centimetres[] {
    const text = match.groups?.["q"] ?? "";
    const pieces = text.split(/(?<=[\d"'\p{L}]) ?(?:x|\*|by) ?(?=\d)/iu);
    const unitOf = (piece: string) => RegExp(`${LENGTH_UNIT}$`, "iu").exec(piece)?.[0];
    const last = pieces.findLast((piece) => unitOf(piece) !== undefined);
    if (last === undefined) this.#askUnit(text, this.#at);
    let unit = unitOf(last ?? "") ?? "";
    this.#sideUnit = unit;
    const sides: Centimetres[] = [];
    for (const piece of pieces.toReversed()) {
      unit = unitOf(piece) ?? unit;
      const start = match.index + match[0].indexOf(piece);
      const whole = unitOf(piece) === undefined ? `${piece} ${unit}` : piece;
      sides.unshift(
        this.#settled(readLength(whole, this.#habits), start, start + piece.length).estimate.best,
      );
    }
    return sides;
  }

  /** An exact length; of a range, the middle. */
  #length(match: RegExpExecArray): Centimetres {
    return this.#quantity(match, readLength).best;
  }

  #quantity<Q extends number>(
    match: RegExpExecArray,
    read: (text: string, habits: Habits) => Read<{ readonly estimate: Estimate<Q> }>,
  ): Estimate<Q> {
    const text = match.groups?.["q"] ?? "";
    const start = match.index + match[0].indexOf(text);
    return this.#settled(read(text, this.#habits), start, start + text.length).estimate;
  }

  /** The value read, or the question or complaint about that piece, put in terms of the whole part. */
  #settled<T>(read: Read<T>, start: number, end: number): T {
    if (read.kind === "read") return read.value;
    const within = `In ${quote(this.#text)}: `;
    if (read.kind === "unreadable") halt(within + read.message);
    throw new Halt({
      kind: "ask",
      question: within + read.question,
      choices: read.choices.map((choice) => ({
        ...choice,
        text: `${this.#text.slice(0, start)}${choice.text}${this.#text.slice(end)}`,
      })),
    });
  }

  #askUnit(figures: string, end: number): never {
    throw new Halt({
      kind: "ask",
      question: `In ${quote(this.#text)}: ${quote(figures)} has no unit. Which do you mean?`,
      choices: ["cm", "in"].map((unit) => ({
        label: `${figures} ${unit}`,
        text: `${this.#text.slice(0, end)} ${unit}${this.#text.slice(end)}`,
      })),
    });
  }

  /** Nothing typed is dropped in silence: what is said twice is refused. */
  #put<F extends keyof Facts>(field: F, value: Facts[F], plural: string) {
    if (this.#facts[field] !== undefined) {
      halt(`${quote(this.#text)} gives two ${plural}. Give one, or part the containers with “;”.`);
    }
    this.#facts[field] = value;
  }

  #startsFigure(at: number): boolean {
    return FIRST_FIGURE.exec(this.#text.slice(at))?.index === 0;
  }

  /** Past separators; false at the end. */
  #skip(): boolean {
    while (/[ ,.:]/.test(this.#text[this.#at] ?? "")) this.#at += 1;
    return this.#at < this.#text.length;
  }

  #take(sticky: RegExp): RegExpExecArray | undefined {
    sticky.lastIndex = this.#at;
    const match = sticky.exec(this.#text);
    if (match === null) return undefined;
    this.#at = sticky.lastIndex;
    return match;
  }
}

/** A name that, said back at the front of a line, does not read as a count of copies. */
function tidyName(words: string): string {
  const plain = words
    .replace(/[():;]/g, " ")
    .replace(/\s+/g, " ")
    .replace(/^(?:[\s,.-]+|\d{1,3}(?: ?[x*] ?| (?=\S)))+/iu, "");
  const name = Array.from(plain)
    .slice(0, LONGEST_NAME)
    .join("")
    .replace(/[\s,.-]+$/, "");
  return name === "" || /\p{L}/u.test(name) ? name : `container ${name}`;
}
