import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { afterAll, describe, expect, it } from "vitest";
import { openChartRoom } from "../../src/charts/index.ts";
import { runConsole } from "../../src/console/index.ts";
import { startDiscord } from "../../src/discord/index.ts";
import type { ChartSpec } from "../../src/kit/chart.ts";
import type { Outcome, Reply } from "../../src/kit/reply.ts";
import { type Club, openClub, START, textOf } from "../support/club.ts";
import { buttonOf, slashCall } from "../support/discord-club.ts";
import { startPlatform } from "../support/loopback/index.ts";

const DAY_MS = 86_400_000;
const TANK = "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm";
const CHART = "/instrument add name:nitrate chart for:nitrate steps:0 5 10 20 40 80 160";

/** Logs each line on its day; what looks like a slip is kept as typed. */
async function logged(club: Club, lines: readonly (readonly [day: number, line: string])[]): Promise<void> {
  for (const [day, line] of lines) {
    club.now = START + day * DAY_MS;
    let said: Outcome = await club.say(`/log ${line}`);
    if (said.kind === "question") said = await club.pick(said.choices.length);
    if (said.kind !== "reply" || !said.ok) throw new Error(`not logged: ${line}: ${textOf(said)}`);
  }
}

/** A published-form example: constructed data whose tank makes 3 mg/L a day. */
async function openLagoon(): Promise<Club> {
  const club = openClub();
  await club.ask(TANK);
  await club.ask(CHART);
  const rows = readFileSync("data/reference/trends-data/mass-balance-13.csv", "utf8")
    .trim()
    .split("\n")
    .slice(1);
  await logged(
    club,
    rows.map((row) => {
      const [t, kind, value, fraction] = row.split(",");
      return [Number(t), kind === "reading" ? `no3 ${value}` : `wc ${Number(fraction) * 100} %`] as const;
    }),
  );
  club.now += DAY_MS / 24;
  return club;
}

function chartOf(reply: Reply): ChartSpec {
  if (reply.chart === undefined) throw new Error(`no chart with: ${textOf(reply)}`);
  return reply.chart;
}

describe("/trend of what a tank makes", () => {
  it("tells the rate between changes, where the plan settles, and what keeps it under a limit", async () => {
    const club = await openLagoon();
    const reply = await club.ask("/trend of:nitrate source:5 limit:40");
    const [, rate, low, high] =
      /^Rising about ([\d.]+) mg\/L a day \(([\d.]+)–([\d.]+)\), left alone/.exec(reply.headline ?? "") ?? [];
    // The data were made with 3 mg/L a day; R 4.2.2 survival 3.5-3 gives 2.977, 95 % 2.09–3.65.
    expect(Number(rate)).toBeGreaterThan(2.09);
    expect(Number(rate)).toBeLessThan(3.65);
    expect(Number(low)).toBeLessThan(3);
    expect(Number(high)).toBeGreaterThan(3);
    const text = textOf(reply);
    expect(text).toContain("13 tests over 28 days, taking 3 water changes as logged");
    expect(text).toContain("Your 40 % every 7 days settles it between");
    // Settled peak 5 + 3 · 7 / 0.4 = 57.5 mg/L (mass balance): 40 % a week is not enough for 40 mg/L.
    expect(text).toMatch(
      /To stay under 40 mg\/L, nine times in ten: \d+ % every 7 days, or 40 % every \d days/,
    );
    expect(text).toContain("weakest figure: assumption");
    expect(reply.title).toBe("Lagoon: nitrate");
  });

  it("draws each reading as the span its colour stands for, with the level, the changes and what is to come", async () => {
    const club = await openLagoon();
    const chart = chartOf(await club.ask("/trend of:nitrate source:5"));
    const [panel] = chart.panels;
    expect(panel?.axisTitle).toBe("nitrate, mg/L as NO₃");
    // Half-way to the neighbouring steps of 0 5 10 20 40 80 160 (assumption of the chart's reader): 15–30, 30–60.
    const spans = panel?.series[0]?.marks.map((mark) =>
      mark.kind === "interval" ? [mark.low, mark.high] : [],
    );
    expect(spans).toHaveLength(13);
    expect(spans?.filter(([low, high]) => low === 15 && high === 30)).toHaveLength(2);
    expect(spans?.filter(([low, high]) => low === 30 && high === 60)).toHaveLength(11);
    expect(chart.events.map(({ label }) => label)).toEqual(["40 %", "40 %", "40 %"]);
    expect(panel?.target).toEqual({ high: 50 });
    expect(panel?.forecasts.map(({ name }) => name)).toEqual(["left alone", "with your changes"]);
    // A change of 40 % with new water of 5 leaves 0.6 · level + 2 (mass balance).
    const levels = panel?.fitted?.levels ?? [];
    const sides = levels.flatMap((level, i) =>
      levels[i + 1]?.at === level.at ? [[level.middle, levels[i + 1]?.middle ?? 0]] : [],
    );
    expect(sides).toHaveLength(3);
    for (const [before = 0, after = 0] of sides)
      expect(Math.abs(after - (0.6 * before + 2))).toBeLessThan(0.03 * before);
    expect(chart.altText).toMatch(
      /^nitrate, 13 readings\. Rising about .* now about .* Wanted: under 50 mg\/L as NO₃/,
    );
    expect(chart.altText).not.toContain("Lagoon");
    expect(JSON.parse(JSON.stringify(chart))).toEqual(chart);
  });

  it("refuses with what to measure next, and still shows the readings", async () => {
    const club = openClub();
    await club.ask(TANK);
    expect(textOf(await club.ask("/trend of:nitrate"))).toContain("log one today");
    await logged(club, [
      [0, "no3 10"],
      [9, "no3 20"],
    ]);
    const reply = await club.ask("/trend of:nitrate");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("2 tests over 9 days cannot show a rate: log two more");
    expect(chartOf(reply).panels[0]?.series[0]?.marks).toHaveLength(2);
    expect(chartOf(reply).panels[0]?.fitted).toBeUndefined();
  });

  it("says what could not be counted: a change of unknown size, tests with no kit named", async () => {
    const club = openClub();
    await club.ask(TANK);
    await logged(
      club,
      [0, 5, 10, 15, 20].map((day) => [day, `no3 ${10 + day}`] as const),
    );
    await logged(club, [[22, "water change"]]);
    const text = textOf(await club.ask("/trend of:nitrate"));
    expect(text).toContain("1 water change has no size in the log");
    expect(text).toContain("Some tests name no kit");
  });

  it("takes litres as a share of the tank's own water", async () => {
    const club = openClub();
    await club.ask(TANK);
    await logged(
      club,
      [0, 5, 10, 15, 20].map((day) => [day, `no3 ${10 + day}`] as const),
    );
    // 200 × 100 × 60 cm is 1200 L; 300 L of it are 25 %.
    await logged(club, [[22, "wc 300 L"]]);
    expect(chartOf(await club.ask("/trend of:nitrate")).events).toMatchObject([{ label: "25 %" }]);
  });

  it("reads a chart printed in another unit than readings are kept in", async () => {
    const club = openClub();
    await club.ask(TANK);
    await club.ask("/instrument add name:alk card for:alkalinity steps:6 7 8 9 10 11");
    await logged(
      club,
      [0, 4, 8, 12].map((day, i) => [day, `alk ${9 - (i % 2)} dKH`] as const),
    );
    const [first] = chartOf(await club.ask("/trend of:alkalinity")).panels[0]?.series[0]?.marks ?? [];
    // 9 dKH lies between 8.5 and 9.5 dKH; 1 dKH is 10 / 28.04 meq/L of half a CaO each: 0.35663 (definition).
    expect(first).toMatchObject({ kind: "interval" });
    if (first?.kind !== "interval") return;
    expect(first.low).toBeCloseTo(8.5 * 0.35663, 3);
    expect(first.high).toBeCloseTo(9.5 * 0.35663, 3);
  });

  it("belongs to the tank: a member it is shared with sees the same", async () => {
    const club = await openLagoon();
    await club.ask("/tank share tank:Lagoon");
    const mine = await club.ask("/trend of:nitrate source:5 tank:Lagoon");
    const theirs = await club.ask("/trend of:nitrate source:5 tank:Lagoon", "bruno");
    expect(theirs.headline).toBe(mine.headline);
    expect((await club.ask("/trend of:nitrate", "cleo")).ok).toBe(false);
  });

  it("takes nothing impossible", async () => {
    const club = await openLagoon();
    for (const line of [
      "limit:-5",
      "limit:1e400",
      "limit:NaN",
      "source:<script>",
      "since:'; DROP TABLE tank",
      "days:-3 days",
    ]) {
      const odd = await club.say(`/trend of:nitrate ${line}`);
      expect([line, odd.kind === "question" || !odd.ok]).toEqual([line, true]);
    }
    expect((await club.say("/trend of:happiness")).kind).toBe("question");
  });
});

describe("/trend since a dated change", () => {
  /** Two readings a week with a fine meter; the tank makes 2 mg/L a day, then 0.5, and nothing is changed. */
  async function openRefugium(): Promise<Club> {
    const club = openClub();
    await club.ask(TANK);
    await club.ask("/instrument add name:photometer for:nitrate error:0.5");
    const days = Array.from({ length: 25 }, (_, i) => i * 3);
    const level = (day: number): number => 5 + (day <= 36 ? 2 * day : 72 + 0.5 * (day - 36));
    await logged(club, [
      ...days.filter((day) => day <= 36).map((day) => [day, `no3 ${level(day)}`] as const),
      [36.5, "harvested 400 g of algae"],
      [38, "added 60 L live rock"],
      ...days.filter((day) => day > 38).map((day) => [day, `no3 ${level(day)}`] as const),
    ]);
    return club;
  }

  it("weighs it, and names what else was done that week", async () => {
    const club = await openRefugium();
    const reply = await club.ask("/trend of:nitrate since:harvest");
    const [, ratio] = /makes ([\d.]+) times/.exec(reply.headline ?? "") ?? [];
    // 0.5 / 2 by construction.
    expect(Number(ratio)).toBeGreaterThan(0.1);
    expect(Number(ratio)).toBeLessThan(0.45);
    expect(reply.title).toContain("since harvest");
    expect(textOf(reply)).toContain("After is not because");
    expect(textOf(await club.ask("/trend of:nitrate since:2026-04-09"))).toContain("harvest");
  });

  it("refuses when too little stands beside it, or when nothing of the kind was logged", async () => {
    const club = await openLagoon();
    await logged(club, [[30, "harvested 400 g"]]);
    const early = await club.ask("/trend of:nitrate since:harvest");
    expect(early.ok).toBe(false);
    expect(textOf(early)).toContain("Three over ten days on each side would do");
    const none = await club.ask("/trend of:nitrate since:party");
    expect(textOf(none)).toContain("Nothing logged matches “party”. The latest are: harvest");
    expect((await club.ask("/trend of:ph since:harvest")).ok).toBe(false);
  });

  it("sets a water change beside what it had to do", async () => {
    const club = await openLagoon();
    const reply = await club.ask("/trend of:nitrate source:5 since:water change");
    expect(reply.headline).toMatch(/^40 % took it from .* to /);
  });
});

describe("/trend of what only drifts", () => {
  it("tells the slope, the wanted range and when it is left", async () => {
    const club = openClub();
    await club.ask(TANK);
    await logged(
      club,
      Array.from({ length: 11 }, (_, day) => [day, `temp ${(25 + day / 10).toFixed(1)}`] as const),
    );
    const reply = await club.ask("/trend of:temperature");
    // 0.1 °C a day is 0.7 a week; 26 °C now, and the usual 27 is 1 °C further: 10 days (arithmetic).
    expect(reply.headline).toBe("Rising about 0.7 °C a week");
    expect(textOf(reply)).toContain("Now about 26 °C");
    expect(textOf(reply)).toContain("leaves that range in about 10 days");
    expect(chartOf(reply).panels[0]?.target).toEqual({ low: 24, high: 27 });
  });
});

describe("a chart on each front", { timeout: 60_000 }, () => {
  const charts = openChartRoom({ fontFile: "data/fonts/NotoSans-Regular.ttf", report: () => {} });
  const folder = mkdtempSync(join(tmpdir(), "standpipe-"));
  afterAll(async () => {
    await charts.close();
    rmSync(folder, { recursive: true });
  });

  async function typed(club: Club, line: string, asJson: boolean): Promise<string> {
    const output = new PassThrough();
    const text: Buffer[] = [];
    output.on("data", (piece: Buffer) => text.push(piece));
    await runConsole({
      app: club.app,
      draw: charts.draw,
      input: Readable.from([]),
      output,
      name: "ines",
      once: line,
      asJson,
      filesFolder: folder,
      historyFile: join(folder, "history"),
    });
    return Buffer.concat(text).toString("utf8");
  }

  it("is written as PNG and SVG beside the terminal, and told in words", async () => {
    const club = openClub();
    for (const line of [TANK, CHART]) await typed(club, line, false);
    for (const day of [0, 4, 8, 12]) {
      club.now = START + day * DAY_MS;
      await typed(club, `/log no3 ${5 + day}`, false);
    }
    const text = await typed(club, "/trend of:nitrate", false);
    expect(text).toContain("Chart: nitrate, 4 readings");
    expect(text).toContain(join(folder, "lagoon-nitrate.png"));
    expect(readdirSync(folder)).toEqual(expect.arrayContaining(["lagoon-nitrate.png", "lagoon-nitrate.svg"]));
    expect(readFileSync(join(folder, "lagoon-nitrate.png")).subarray(1, 4).toString()).toBe("PNG");
    expect(readFileSync(join(folder, "lagoon-nitrate.svg"), "utf8")).toContain("nitrate, mg/L as NO₃");
    const data = JSON.parse(await typed(club, "/trend of:nitrate", true)) as { outcome: Reply };
    expect(chartOf(data.outcome).panels[0]?.series[0]?.marks).toHaveLength(4);
  });

  it("comes after a first sign when it takes long to draw", async () => {
    const platform = await startPlatform();
    const club = openClub();
    const bot = await startDiscord({
      app: club.app,
      draw: async (spec) => {
        await new Promise((resolve) => setTimeout(resolve, 1_800));
        return charts.draw(spec);
      },
      token: platform.token,
      apiUrl: platform.apiUrl,
      guildId: undefined,
      isOwnHost: () => false,
      isNews: () => true,
      log: () => {},
    });
    await platform.slash(slashCall(TANK, "ines"));
    for (const day of [0, 4, 8, 12]) {
      club.now = START + day * DAY_MS;
      await platform.slash(slashCall(`/log no3 ${5 + day}`, "ines"));
    }
    const exchange = await platform.slash(slashCall("/trend of:nitrate", "ines"));
    // Response type 5: deferred (the platform's own documentation of interactions).
    expect(exchange.response.type).toBe(5);
    expect((await exchange.final()).attachments).toMatchObject([{ filename: "chart.png" }]);
    await bot.stop();
    await platform.close();
  });

  it("is the embed's picture on the chat platform, with its words for those who cannot see it", async () => {
    const platform = await startPlatform();
    const club = openClub();
    const start = (draws: boolean) =>
      startDiscord({
        app: club.app,
        ...(draws ? { draw: charts.draw } : {}),
        token: platform.token,
        apiUrl: platform.apiUrl,
        guildId: undefined,
        isOwnHost: () => false,
        isNews: () => true,
        log: () => {},
      });
    let bot = await start(true);
    await platform.slash(slashCall(TANK, "ines"));
    for (const day of [0, 4, 8, 12]) {
      club.now = START + day * DAY_MS;
      await platform.slash(slashCall(`/log no3 ${5 + day}`, "ines"));
    }
    const exchange = await platform.slash(slashCall("/trend of:nitrate", "ines"));
    const message = await exchange.final();
    expect(message.attachments).toMatchObject([{ filename: "chart.png", contentType: "image/png" }]);
    expect(message.attachments[0]?.description).toMatch(/^nitrate, 4 readings/);
    expect(Buffer.from(message.attachments[0]?.bytes ?? []).toString("latin1", 1, 4)).toBe("PNG");
    expect(message.embeds).toMatchObject([{ image: { url: expect.stringContaining("chart.png") } }]);
    expect(message.text).not.toContain("Chart:");
    const posted = await platform.press({ user: "ines", message, customId: buttonOf(message, "Post") });
    expect(posted.response.isEphemeral).toBe(false);
    expect((await posted.final()).attachments).toMatchObject([{ filename: "chart.png" }]);
    await bot.stop();
    bot = await start(false);
    const bare = await (await platform.slash(slashCall("/trend of:nitrate", "ines"))).final();
    expect(bare.text).toContain("Chart: nitrate, 4 readings");
    await bot.stop();
    await platform.close();
    expect(club.defects).toEqual([]);
  });
});
