import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CONSOLE_CLUB, Conversation } from "../../src/console/conversation.ts";
import type { GroupState } from "../../src/core/breeding/ledger/state.ts";
import { batchTotals } from "../../src/core/breeding/ledger/totals.ts";
import { DAY } from "../support/breeding-club.ts";
import { type Club, openClub, START, textOf } from "../support/club.ts";
import { type DiscordClub, openDiscordClub, slashCall } from "../support/discord-club.ts";

// A season of an invented group: twelve weeks, five members, three pairs, nine spawns, two culture crashes and
// one disease scare. The tallies beside the script are plain sums kept by hand while it is written down; the
// program's own arithmetic has no part in them.

const WEEKS = 12;
const SPAWNS = 9;
const KEEPERS = ["Ines", "Bruno", "Thalia", "Milena"];

interface Line {
  readonly day: number;
  readonly as: string;
  readonly text: string;
  /** The answer must hold this. */
  readonly holds?: string;
}

interface Tally {
  start: number;
  joined: number;
  dead: number;
  left: number;
  missing: number;
}

const batches = new Map<string, Tally>();
const duties = new Map<string, number>();
const cents = new Map<string, number>();
let given = 0;
let spent = 0;

/** Alerts stand on these days: whatever would leave or enter waits until they are over. */
const SCARE = { from: 60, until: 63 };

function season(): readonly Line[] {
  const lines: Line[] = [];
  const add = (day: number, as: string, text: string, holds?: string): void => {
    lines.push({ day, as, text, ...(holds === undefined ? {} : { holds }) });
  };
  add(0, "ines", "/group start name:Lagoon breeders as:Ines");
  for (const name of ["Bruno", "Thalia", "Milena", "Otto"])
    add(0, name.toLowerCase(), `/group join as:${name}`);
  for (const name of ["Bruno", "Thalia", "Milena"])
    add(0, "ines", `/group role who:${name} role:helper`, "is now helper");
  for (const tank of ["tank 1", "tank 2", "tank 3"])
    add(0, "ines", `/group tank name:${tank} litres:80 L zone:broodstock`);
  add(0, "ines", "/group tank name:grow-out litres:400 L zone:grow-out");
  for (const pair of [1, 2, 3]) {
    add(0, "ines", `/brood add name:F${pair} species:clownfish sex:female origin:wild`);
    add(0, "ines", `/brood add name:M${pair} species:clownfish sex:male origin:wild`);
    add(
      0,
      "thalia",
      `/brood pair name:pair ${pair} first:F${pair} second:M${pair} tank:tank ${pair}`,
      "Inbreeding of their young: 0",
    );
  }
  add(0, "otto", "/juveniles want species:clownfish number:90 ready:yes");
  // Live food: two cultures, each of which crashes once and is started anew from the other.
  add(0, "bruno", "/culture start name:rot A organism:rotifers litres:20 L place:cellar");
  add(0, "milena", "/culture start name:rot B organism:rotifers litres:20 L place:kitchen");
  for (let day = 1; day < 7 * WEEKS; day += 3) {
    if (day < 20 || day > 24)
      add(day, "bruno", `/culture count culture:rot A count:${20 + (day % 5)} 21 22 in 0.1 mL`);
    if (day < 50 || day > 54)
      add(day, "milena", `/culture count culture:rot B count:18 ${19 + (day % 4)} 20 in 0.1 mL`);
  }
  add(20, "bruno", "/culture end culture:rot A why:crashed", "rot B at kitchen, kept by Milena");
  add(24, "bruno", "/culture start name:rot A organism:rotifers litres:20 L place:cellar from:rot B");
  add(50, "milena", "/culture end culture:rot B why:crashed", "rot A at cellar, kept by Bruno");
  add(54, "milena", "/culture start name:rot B organism:rotifers litres:20 L place:kitchen from:rot A");
  // A rota for each week, and somebody who does each evening's duty.
  for (let week = 0; week < WEEKS; week += 1) add(7 * week, "ines", "/rota plan days:7");
  for (let day = 0; day < 7 * WEEKS; day += 1) {
    const who = KEEPERS[(3 * day + Math.floor(day / 5)) % 4] ?? "Ines";
    add(day, who.toLowerCase(), `/rota done by:${who}`, `By ${who}`);
    duties.set(who, (duties.get(who) ?? 0) + 1);
  }
  // A purchase a week, shared by the four who keep and help: equal parts, the odd cents to the first names.
  for (let week = 0; week < WEEKS; week += 1) {
    const payer = KEEPERS[week % 4] ?? "Ines";
    const price = 1999 + 371 * week;
    add(
      7 * week + 1,
      payer.toLowerCase(),
      `/cost add what:salt amount:${(price / 100).toFixed(2)} €`,
      "sum to the cent",
    );
    spent += price;
    cents.set(payer, (cents.get(payer) ?? 0) + price);
    KEEPERS.forEach((name, index) => {
      // Person numbers follow the order of joining: Ines, Bruno, Thalia, Milena.
      const part = Math.floor(price / 4) + (index < price % 4 ? 1 : 0);
      cents.set(name, (cents.get(name) ?? 0) - part);
    });
  }
  return [...lines, ...spawnLines()].sort((a, b) => a.day - b.day);
}

/** The life of nine clutches; ids are given out in the order in which things happen. */
function spawnLines(): readonly Line[] {
  type Step = { readonly day: number; readonly rank: number; write(): readonly Omit<Line, "day">[] };
  const steps: Step[] = [];
  let id = 0;
  let transfers = 0;
  const wait = (day: number): number => (day >= SCARE.from && day <= SCARE.until ? SCARE.until + 1 : day);
  for (let k = 0; k < SPAWNS; k += 1) {
    const laid = 8 * k;
    const hatch = laid + 7 + (k % 3);
    const names = { main: "", young: "" };
    const tally: Tally = { start: 0, joined: 0, dead: 0, left: 0, missing: 0 };
    const young: Tally = { start: 0, joined: 0, dead: 0, left: 0, missing: 0 };
    const at = (day: number, write: Step["write"]): void => {
      if (day < 7 * WEEKS) steps.push({ day, rank: k, write });
    };
    at(laid, () => {
      id += 1;
      names.main = `B${id}`;
      batches.set(names.main, tally);
      return [
        {
          as: "thalia",
          text: `/spawn eggs tank:tank ${(k % 3) + 1} count:about 300`,
          holds: `${names.main}: clownfish`,
        },
      ];
    });
    at(hatch, () => {
      tally.start = 200 + 10 * k;
      return [
        {
          as: "bruno",
          text: `/spawn hatched batch:${names.main} count:${tally.start}`,
          holds: "has hatched",
        },
      ];
    });
    for (const later of [4, 8])
      at(hatch + later, () => {
        tally.dead += 2;
        return [{ as: "milena", text: `/batch deaths number:2 batch:${names.main}`, holds: "2 dead noted" }];
      });
    at(hatch + 10, () => {
      // Of 200 + 10k four are known to be dead; 150 + 10k are counted: 46 are missing.
      tally.missing += 46;
      return [{ as: "ines", text: `/batch count batch:${names.main} count:${150 + 10 * k}` }];
    });
    at(wait(hatch + 12), () => {
      id += 1;
      names.young = `B${id}`;
      tally.left += 60;
      young.start = 60;
      batches.set(names.young, young);
      return [
        {
          as: "ines",
          text: `/batch split number:60 batch:${names.main} to:grow-out`,
          holds: `split off as ${names.young}`,
        },
      ];
    });
    at(wait(hatch + 18), () => {
      transfers += 1;
      given += 9;
      young.left += 9;
      return [
        {
          as: "ines",
          text: `/juveniles give batch:${names.young} number:9 to:Otto`,
          holds: `Transfer ${transfers}`,
        },
        { as: "ines", text: `/juveniles confirm transfer:${transfers}`, holds: "Waiting for Otto" },
        { as: "otto", text: `/juveniles confirm transfer:${transfers}`, holds: "9 clownfish are with Otto" },
      ];
    });
    // The scare: twelve of the third clutch's young in one evening, and nothing leaves until it is over.
    if (k === 2)
      at(SCARE.from, () => {
        young.dead += 12;
        return [
          { as: "milena", text: `/batch deaths number:12 batch:${names.young}`, holds: "Ask a vet" },
          {
            as: "ines",
            text: `/juveniles give batch:${names.young} number:3 to:Otto`,
            holds: "under an alert",
          },
        ];
      });
  }
  steps.push({
    day: SCARE.until,
    rank: SPAWNS,
    write: () => [
      { as: "bruno", text: "/group clear water:grow-out", holds: "Only a keeper" },
      { as: "ines", text: "/group clear water:grow-out", holds: "alert lifted" },
    ],
  });
  return steps
    .sort((a, b) => a.day - b.day || a.rank - b.rank)
    .flatMap(({ day, write }) => write().map((line) => ({ day, ...line })));
}

const SEASON = season();
const CLOSING: readonly string[] = ["/group show", "/cost balance", "/group month", "/batch show batch:B1"];

let terminal: Club;
let discord: DiscordClub;
const closing: { terminal: string[]; discord: string[] } = { terminal: [], discord: [] };

beforeAll(async () => {
  terminal = openClub();
  discord = await openDiscordClub();
  const talks = new Map<string, Conversation>();
  const inTerminal = async (as: string, text: string): Promise<string> => {
    const talk = talks.get(as) ?? new Conversation(terminal.app, as);
    talks.set(as, talk);
    const said = await talk.take(text);
    if (said.kind !== "outcome") throw new Error(`not answered: ${text}`);
    return textOf(said.outcome);
  };
  const inDiscord = async (as: string, text: string): Promise<string> =>
    (await (await discord.platform.slash(slashCall(text, as))).final()).text;
  for (const { day, as, text, holds } of SEASON) {
    terminal.now = START + day * DAY;
    discord.club.now = START + day * DAY;
    for (const told of [await inTerminal(as, text), await inDiscord(as, text)])
      if (holds !== undefined && !told.includes(holds))
        throw new Error(`day ${day}, ${as}: ${text}\n${told}`);
  }
  for (const line of CLOSING) {
    closing.terminal.push(await inTerminal("ines", line));
    closing.discord.push(await inDiscord("ines", line));
  }
}, 120_000);

afterAll(async () => {
  await discord.close();
  terminal.store.close();
});

function stateOf(club: Club, front: "terminal" | "discord"): GroupState {
  const id = front === "terminal" ? CONSOLE_CLUB : clubOfDiscord();
  const state = club.store.records.breeding.state(id as typeof CONSOLE_CLUB);
  if (state === undefined) throw new Error("no group");
  return state;
}

function clubOfDiscord(): string {
  return `discord:${discord.platform.guild.id}`;
}

describe.each(["terminal", "discord"] as const)("a season through the %s", (front) => {
  const state = (): GroupState => stateOf(front === "terminal" ? terminal : discord.club, front);

  it("has every batch where the tally has it", () => {
    const found = Object.values(state().batches);
    expect(found).toHaveLength(batches.size);
    for (const batch of found) {
      const tally = batches.get(batch.id);
      if (tally === undefined) throw new Error(`no tally for ${batch.id}`);
      const { start, joined, dead, left, missing } = tally;
      expect({ id: batch.id, ...batchTotals(batch) }).toEqual({
        id: batch.id,
        start,
        joined,
        dead,
        leftAlive: left,
        missing,
        alive: start + joined - dead - left - missing,
      });
    }
  });

  it("has nine spawns of three pairs, two crashes and one alert that was lifted", () => {
    expect(state().last.spawn).toBe(SPAWNS);
    expect(new Set(Object.values(state().batches).map(({ pair }) => pair)).size).toBe(3);
    expect(state().alerts).toEqual({});
    expect(Object.values(state().transfers).reduce((sum, { animals }) => sum + animals, 0)).toBe(given);
    const club = front === "terminal" ? CONSOLE_CLUB : (clubOfDiscord() as typeof CONSOLE_CLUB);
    const store = front === "terminal" ? terminal.store : discord.club.store;
    const kinds = store.records.breeding.everything(club).map(({ fact }) => fact.kind);
    expect(kinds.filter((kind) => kind === "culture ended")).toHaveLength(2);
    expect(kinds.filter((kind) => kind === "alert raised")).toHaveLength(1);
  });

  it("credits every duty to whoever did it", () => {
    for (const name of KEEPERS) {
      const number = KEEPERS.indexOf(name) + 1;
      expect(state().people[String(number)]?.done).toBe(duties.get(name));
      expect(closing[front][0]).toContain(
        `${name}: ${name === "Ines" ? "keeper" : "helper"}, ${duties.get(name)} dut`,
      );
    }
  });

  it("balances to the cent", () => {
    const total = [...cents.values()].reduce((sum, each) => sum + each, 0);
    expect(total).toBe(0);
    KEEPERS.forEach((name, index) => {
      expect(state().balances[String(index + 1)]).toBe(cents.get(name));
    });
    expect(state().spentCents).toBe(spent);
    expect(closing[front][1]).toContain(`${(spent / 100).toFixed(2)} € spent in all`);
  });

  it("says the same on the cards", () => {
    const first = batches.get("B1");
    if (first === undefined) throw new Error("no first batch");
    const alive = first.start - first.dead - first.left - first.missing;
    expect(closing[front][3]).toContain(
      `${first.start} at the start + 0 joined = ${alive} alive + ${first.dead} dead + ${first.left} left alive + ${first.missing} missing`,
    );
    const all = [...batches.values()].reduce(
      (sum, { start, joined, dead, left, missing }) => sum + start + joined - dead - left - missing,
      0,
    );
    expect(closing[front][2]).toContain(`Alive now, as far as counted: ${all.toLocaleString("en")}`);
  });
});

it("comes to one and the same state through both fronts", () => {
  expect(stateOf(discord.club, "discord")).toEqual(stateOf(terminal, "terminal"));
});
