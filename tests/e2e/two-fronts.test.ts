import { afterAll, beforeAll, expect, it } from "vitest";
import { Conversation } from "../../src/console/conversation.ts";
import type { Outcome } from "../../src/kit/reply.ts";
import { type Club, openClub } from "../support/club.ts";
import { buttonOf, type DiscordClub, openDiscordClub, slashCall } from "../support/discord-club.ts";
import type { Message } from "../support/loopback/index.ts";

/** A line; a choice taken by its label; or an answer in the member's own words. */
interface Step {
  readonly as?: string;
  readonly say?: string;
  readonly pick?: string;
  readonly type?: string;
}

/** Two keepers of an invented club: one describes a system, asks and logs, the other looks in. */
const STORY: readonly Step[] = [
  { say: "/tank list" },
  {
    say: "/tank add name:Lagoon kind:marine containers:display 240x100x70 cm inside, level 62 cm, rock 180 kg; settling drum 55 gal measured; 2 x drum 110 L label; algae tank 100x60x50 cm inside, level 38 cm",
  },
  { pick: "US gal" },
  {
    say: "/tank note livestock:1 grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn media:60 L ceramic rings salinity:34 ppt temperature:26 °C",
  },
  { pick: "brown-marbled grouper" },
  {
    say: "/tank note livestock:1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn 3 times a week media:60 L ceramic rings salinity:34 ppt temperature:26 °C",
  },
  { say: "/tank name alias:DT" },
  // The four questions: salt, dose, water change, stocking.
  { say: "/salt mix volume:200 L tank:Lagoon" },
  { say: "/salt mix volume:30 gal salinity:1.026" },
  { pick: "25/25" },
  { say: "/salt adjust to:35 ppt" },
  { pick: "dry salt" },
  { say: "/dose raise by:20 mg/L" },
  { say: "/dose dilute target:1:5 volume:500 mL" },
  { pick: "1 in 5" },
  { say: "/dose together first:bleach second:vinegar" },
  { say: "/dose vet medicine:as on the note dose:0.5 mg/L strength:10 mg/mL volume:200 L" },
  { pick: "Yes, I have it in writing" },
  { pick: "Yes, every figure" },
  { say: "/dose pump daily:48 mL doses:0 flow:1.5 mL/min" },
  { say: "/change plan now:80 mg/L target:20 mg/L" },
  { say: "/change routine rise:4.8 mg/L every:10 days" },
  { type: "30 %" },
  { say: "/stocking load" },
  { say: "/stocking add animal:1 picasso triggerfish 12 cm" },
  // The record.
  { say: "/log no3 20, sg 1.0255, temp 25.5, wc 30 %, note glass *cleaned* by @everyone" },
  { say: "/log no3 22 when:5/3" },
  { pick: "5 March 2025" },
  { say: "/log no3 21 when:tomorrow" },
  { type: "2 days ago" },
  { say: "/correct reading:1 to:no3 21" },
  { say: "/readings" },
  { say: "/undo" },
  { say: "/log wibble 3" },
  { type: "no3 23" },
  { say: "/instrument add name:nitrate chart for:nitrate steps:0 5 10 20 40 80" },
  // The other member sees nothing, then what is shared, and changes nothing.
  { as: "bruno", say: "/tank show tank:Lagoon" },
  { say: "/tank share tank:Lagoon" },
  { as: "bruno", say: "/tank show tank:Lagoon" },
  { as: "bruno", say: "/log no3 5 tank:Lagoon" },
  { as: "bruno", say: "/salt topoff evaporated:12 L full:34 ppt volume:300 L" },
  { say: "/tank remove tank:DT" },
  { pick: "Keep it" },
  { say: "/help command:undo" },
];

const HOME = "ines";

let discord: DiscordClub;
let terminal: Club;
let told: readonly Outcome[];
let shown: readonly Message[];
beforeAll(async () => {
  discord = await openDiscordClub();
  terminal = openClub();
  told = await throughTheTerminal();
  shown = await throughDiscord();
}, 60_000);
afterAll(async () => {
  await discord.close();
  terminal.store.close();
});

async function throughTheTerminal(): Promise<readonly Outcome[]> {
  const talks = new Map<string, Conversation>();
  const outcomes: Outcome[] = [];
  for (const { as = HOME, say, pick, type } of STORY) {
    const talk = talks.get(as) ?? new Conversation(terminal.app, as);
    talks.set(as, talk);
    const choice = talk.openQuestion?.choices.findIndex(({ label }) => label.includes(pick ?? "")) ?? -1;
    const said = await talk.take(say ?? type ?? String(choice + 1));
    if (said.kind !== "outcome") throw new Error(`not answered: ${JSON.stringify(said)}`);
    outcomes.push(said.outcome);
  }
  return outcomes;
}

async function throughDiscord(): Promise<readonly Message[]> {
  const { platform } = discord;
  const last = new Map<string, Message>();
  const messages: Message[] = [];
  for (const { as = HOME, say, pick, type } of STORY) {
    const message = last.get(as);
    const exchange =
      say !== undefined
        ? await platform.slash(slashCall(say, as))
        : message === undefined
          ? undefined
          : type !== undefined
            ? await answerInWords(as, message, type)
            : await choose(as, message, pick ?? "");
    if (exchange === undefined) throw new Error("nothing to answer yet");
    const told = await exchange.final();
    last.set(as, told);
    messages.push(told);
  }
  return messages;
}

async function answerInWords(user: string, message: Message, text: string) {
  const customId = buttonOf(message, "Type");
  const opened = await discord.platform.press({ user, message, customId });
  return discord.platform.submitModal({ opened, fields: { text } });
}

async function choose(user: string, message: Message, label: string) {
  const button = message.buttons.find((each) => each.label.includes(label));
  if (button?.customId !== undefined)
    return discord.platform.press({ user, message, customId: button.customId });
  const menu = menuOf(message);
  const value = menu.options.find((each) => each.label.includes(label))?.value ?? "";
  return discord.platform.select({ user, message, customId: menu.custom_id, values: [value] });
}

interface Menu {
  readonly custom_id: string;
  readonly options: readonly { readonly label: string; readonly value: string }[];
}

function menuOf(message: Message): Menu {
  const rows = message.components as unknown as readonly { readonly components: readonly Partial<Menu>[] }[];
  const found = rows.flatMap((row) => row.components).find((each) => each.options !== undefined);
  return { custom_id: found?.custom_id ?? "", options: found?.options ?? [] };
}

/** A message as it reads, without the marks that keep its text from being markup. */
function plain(text: string): string {
  return text.replace(/\\(?=[^\w\s])/g, "");
}

it("tells one story in the terminal and on the chat platform", () => {
  expect(shown).toHaveLength(STORY.length);
  for (const [at, outcome] of told.entries()) {
    const message = shown[at];
    if (message === undefined) throw new Error("no message");
    const text = plain(message.text);
    const where = JSON.stringify(STORY[at]);
    expect(text, where).toContain(outcome.title);
    for (const caution of outcome.cautions) expect(text, where).toContain(caution.text);
    for (const line of outcome.body) expect(text, where).toContain(line);
    if (outcome.kind === "reply") {
      if (outcome.headline !== undefined) expect(text, where).toContain(`# ${outcome.headline}`);
      for (const row of outcome.table?.rows ?? [])
        for (const cell of row) expect(text, where).toContain(cell);
      expect(message.buttons.some(({ label }) => label === "Show the working")).toBe(
        outcome.working !== undefined,
      );
    } else {
      expect(text, where).toContain(outcome.text);
      const offered = [...message.buttons, ...menuOf(message).options].map(({ label }) => label);
      for (const { label } of outcome.choices) expect(offered, where).toContain(label.slice(0, 80));
    }
    expect(message.pings).toEqual({ everyone: false, users: [], roles: [] });
  }
  expect(terminal.defects).toEqual([]);
  expect(discord.club.defects).toEqual([]);
});

it("holds questions, refusals and answers alike", () => {
  // A story that only ever succeeds would prove little.
  const kinds = told.map((each) => (each.kind === "question" ? "question" : each.ok ? "answer" : "refusal"));
  expect(kinds.filter((kind) => kind === "question").length).toBeGreaterThan(8);
  expect(kinds.filter((kind) => kind === "refusal").length).toBeGreaterThan(2);
  expect(kinds.filter((kind) => kind === "answer").length).toBeGreaterThan(18);
});
