import { allCommands, type Command, type CommandEntry, isFamily } from "../src/kit/command.ts";
import { defineCommand, optional, type Reply, words } from "../src/kit/index.ts";

export default defineCommand({
  name: "help",
  summary: "What this bot can do, and how to type it",
  options: { command: optional(words("One command to explain", "salt mix", 60)) },
  examples: ["/help", "/help command:salt mix"],
  run({ command: wanted }, { audience, commands }) {
    if (wanted === undefined) return { ...overview(commands), audience };
    const path = wanted.replace(/^\//, "").toLowerCase();
    const matches = allCommands(commands).filter(
      (each) => each.path === path || each.path.startsWith(`${path} `),
    );
    if (matches.length === 0)
      return { ...overview(commands), ok: false, title: `There is no command ${path}`, audience };
    return {
      kind: "reply",
      ok: true,
      title: `How to type /${path}`,
      body: matches.flatMap(explained),
      cautions: [],
      audience,
    };
  },
});

function overview(commands: readonly CommandEntry[]): Omit<Reply, "audience"> {
  return {
    kind: "reply",
    ok: true,
    title: "Sums and tank records for the club",
    body: [
      "Type quantities as you measure them: 55 US gal, 120x50x55 cm, 1.026 SG, 30-34 ppt, about 200 L.",
      "Describe your tank once with /tank add; every sum can then take its figures from there.",
      "Yours stays private unless you share it. /help with a command's name explains it.",
    ],
    table: {
      columns: ["command", "what it does"],
      rows: commands.flatMap((entry) =>
        isFamily(entry)
          ? entry.subcommands.map((sub) => [`/${entry.name} ${sub.name}`, sub.summary])
          : [[`/${entry.name}`, entry.summary]],
      ),
    },
    cautions: [
      {
        level: "note",
        text: "For sick animals ask a vet, for mains power a licensed electrician, for floors and big tanks a structural engineer.",
      },
    ],
  };
}

function explained({
  path,
  command,
}: {
  readonly path: string;
  readonly command: Command;
}): readonly string[] {
  return [
    `/${path}: ${command.summary}.`,
    ...Object.entries(command.options).map(
      ([name, option]) =>
        `${name}${option.isNeeded ? "" : " (may be left out)"}: ${option.description}.${/e\.g\./.test(option.description) ? "" : ` E.g. ${option.example}`}`,
    ),
    ...command.examples.map((example) => `Example: ${example}`),
  ];
}
