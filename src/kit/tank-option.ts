import type { Read } from "../core/quantity/read.ts";
import type { Tank } from "../records/tank.ts";
import type { Context, ReadContext } from "./context.ts";
import { nearest } from "./nearest.ts";
import { type Option, reading } from "./option.ts";
import { listed, quoted } from "./text.ts";

/** A tank the member may see, by its name, an alias or an unmistakable beginning. */
export function tankOption(description = "Which tank; your default one if left out"): Option<Tank, true> {
  return { ...reading(description, "Lagoon", readTank, suggestTank), kind: "tank" };
}

function readTank(text: string, context: ReadContext): Read<Tank> {
  const { request } = context;
  const tanks = visibleTanks(context);
  const wanted = text.toLowerCase();
  const exact = tanks.filter((tank) =>
    [...wordsFor(tank), saidOf(tank, request.member), numbered(tank)].some(
      (word) => word.toLowerCase() === wanted,
    ),
  );
  const found =
    exact.length > 0
      ? exact
      : tanks.filter((tank) => wordsFor(tank).some((word) => word.toLowerCase().startsWith(wanted)));
  const [only, ...others] = found;
  if (only !== undefined && others.length === 0)
    return { kind: "read", value: only, readAs: saidOf(only, request.member) };
  if (only === undefined) return { kind: "unreadable", message: unknownTank(text, tanks) };
  const mine = found.filter(({ owner }) => owner === request.member);
  const [myOnly, ...myOthers] = mine;
  if (exact.length > 0 && myOnly !== undefined && myOthers.length === 0)
    return { kind: "read", value: myOnly, readAs: saidOf(myOnly, request.member) };
  return {
    kind: "ask",
    question: `${quoted(text)} fits ${found.length} tanks. Which one?`,
    choices: found.slice(0, 20).map((tank) => {
      const said = saidOf(tank, request.member);
      const isPlain = found.filter((each) => saidOf(each, request.member) === said).length === 1;
      return { label: isPlain ? said : numbered(tank), text: isPlain ? said : numbered(tank) };
    }),
  };
}

function unknownTank(text: string, tanks: readonly Tank[]): string {
  if (tanks.length === 0)
    return `There is no tank ${quoted(text)} here, and you keep none yet. Describe one with /tank add.`;
  const names = tanks.map(({ name }) => name);
  const close = nearest(text, tanks.flatMap(wordsFor));
  return `There is no tank ${quoted(text)} that you may see. ${close === undefined ? `Try ${listed(names.slice(0, 8), "or")}.` : `Did you mean ${quoted(close)}?`}`;
}

function wordsFor(tank: Tank): readonly string[] {
  return [tank.name, ...tank.aliases];
}

function saidOf(tank: Tank, member: string): string {
  return tank.owner === member
    ? tank.name
    : `${tank.name} (shared by ${tank.shared?.by ?? "another member"})`;
}

/** What tells two tanks apart when both name and owner read the same. */
function numbered({ name, id }: Tank): string {
  return `${name} no. ${id}`;
}

/** The member's own tanks, and those they may read here and now. */
export function visibleTanks({
  records,
  request,
  now,
}: Pick<ReadContext, "records" | "request" | "now">): readonly Tank[] {
  const viewer = { member: request.member, club: request.club, now: new Date(now).toISOString() };
  return records.tanks.visible(viewer);
}

/** Whose tank an answer rests on, and until when it may be read; nothing for the member's own. */
export function sharedLine({ name, shared }: Tank): string | undefined {
  if (shared === undefined) return undefined;
  const end = shared.until === undefined ? "" : ` until ${shared.until.slice(0, 10)}`;
  return `${name} is ${shared.by}’s tank, shared${end}; only they can change it.`;
}

function suggestTank(typed: string, context: ReadContext): readonly string[] {
  return visibleTanks(context)
    .flatMap(wordsFor)
    .filter((word) => word.toLowerCase().startsWith(typed.toLowerCase()));
}

/**
 * The tank a sum is about: the one named, else the member's default one. A volume typed by hand, with no
 * tank named, is some other water: then there is none, and nothing is taken from the records.
 */
export function tankInMind(
  given: Tank | undefined,
  typedVolume: unknown,
  { records, member }: Context,
): Tank | undefined {
  return given ?? (typedVolume === undefined ? records.tanks.own(member.id)[0] : undefined);
}
