import type { Band } from "../../src/core/trends/draws.ts";
import { bandOf } from "../../src/core/trends/draws.ts";
import { levelsAt } from "../../src/core/trends/future.ts";
import { productionNow } from "../../src/core/trends/production.ts";
import { plainLikelihood, plainStateSpace } from "./baselines.ts";
import { hasEnough } from "./enough.ts";
import { coverage, everyTank, scoreOf } from "./score.ts";
import { REGIMES, simulate } from "./world.ts";

const seed = Number(process.argv[2] ?? 1);
const each = Number(process.argv[3] ?? 50);
const withBaselines = process.argv[4] !== "quick";
const only = process.argv[5];

const records = REGIMES.filter((r) => !only || r === only).flatMap((regime) =>
  Array.from({ length: each }, (_, i) => simulate(seed, regime, i)),
);
const started = performance.now();
const rows = records.map((record) => {
  const t0 = performance.now();
  const p = productionNow(record.readings, record.events, record.now);
  const mine = p && {
    net: p.net,
    refusal: p.refusal,
    forecast: bandOf(levelsAt(p.draws, record.now, record.now + 14, record.planned)),
    rising: p.draws.filter((d) => d.comparison > 0).length / p.draws.length,
    up: p.draws.filter((d) => d.production - d.uptakePerDay * d.level > 0).length / p.draws.length,
    level: bandOf(Float64Array.from(p.draws, (d) => d.level)),
    half: p.timeline.halfSpanDays,
  };
  const ms = performance.now() - t0;
  return {
    record,
    ms,
    enough: hasEnough(record),
    mine: mine && !mine.refusal ? mine : undefined,
    refusal: mine?.refusal?.why ?? (mine ? "" : "no readings"),
    ml: withBaselines ? plainLikelihood(record) : undefined,
    ss: withBaselines ? plainStateSpace(record) : undefined,
  };
});
const nets = everyTank(rows.map((r) => r.record.truth.netPerDay));
const laters = everyTank(rows.map((r) => r.record.truth.levelIn14));
type Row = (typeof rows)[number];
const pct = (x: number) => (100 * x).toFixed(1).padStart(5);
function scores(set: readonly Row[], pick: (r: Row) => { net: Band; forecast: Band } | undefined) {
  const sum = { n80: 0, n95: 0, f80: 0, f95: 0 };
  for (const r of set) {
    const e = pick(r);
    const n = scoreOf(e?.net ?? nets, r.record.truth.netPerDay);
    const f = scoreOf(e?.forecast ?? laters, r.record.truth.levelIn14);
    sum.n80 += n.s80;
    sum.n95 += n.s95;
    sum.f80 += f.s80;
    sum.f95 += f.s95;
  }
  return [sum.n80, sum.n95, sum.f80, sum.f95].map((x) => x / set.length);
}
function report(name: string, set: readonly Row[]) {
  if (set.length === 0) return;
  const answered = set.filter((r) => r.mine);
  const enough = set.filter((r) => r.enough);
  const without = set.filter((r) => !r.enough);
  const net = coverage(answered.map((r) => ({ band: r.mine!.net, truth: r.record.truth.netPerDay })));
  const later = coverage(answered.map((r) => ({ band: r.mine!.forecast, truth: r.record.truth.levelIn14 })));
  const lev = coverage(answered.map((r) => ({ band: r.mine!.level, truth: r.record.truth.levelNow })));
  const diff = (r: Row) => {
    const h = r.mine!.half,
      n = r.record.now;
    return r.record.truth.meanBetween(n - h, n) - r.record.truth.meanBetween(n - 2 * h, n - h);
  };
  const opp = answered.filter(
    (r) => (r.mine!.rising > 0.95 && diff(r) < 0) || (r.mine!.rising < 0.05 && diff(r) > 0),
  ).length;
  const called = answered.filter((r) => r.mine!.rising > 0.95 || r.mine!.rising < 0.05).length;
  const oppUp = answered.filter(
    (r) =>
      (r.mine!.up > 0.95 && r.record.truth.netPerDay < 0) ||
      (r.mine!.up < 0.05 && r.record.truth.netPerDay > 0),
  ).length;
  const s = [scores(set, (r) => r.mine), scores(set, (r) => r.ml), scores(set, (r) => r.ss)];
  const f = (a: number[]) => a.map((x) => x.toFixed(2).padStart(7)).join("");
  console.log(
    name.padEnd(16),
    `n${set.length}`.padEnd(5),
    `ans ${answered.length}`.padEnd(8),
    `net ${pct(net.c80)}${pct(net.c95)}  fc ${pct(later.c80)}${pct(later.c95)} lev ${pct(lev.c80)}${pct(lev.c95)}`,
    ` opp ${opp}/${called} ${oppUp}`,
    ` ref ${enough.filter((r) => !r.mine).length}/${enough.length} ansno ${without.filter((r) => r.mine).length}/${without.length}`,
    `|${f(s[0]!)} |${withBaselines ? `${f(s[1]!)} |${f(s[2]!)}` : ""}`,
  );
  if (withBaselines && name === "all") {
    for (const k of [1, 2])
      console.log("   better by %", s[0]!.map((x, i) => pct(1 - x / s[k]![i]!)).join(" "));
    for (const [nm, pick] of [
      ["ml", (r: Row) => r.ml],
      ["ss", (r: Row) => r.ss],
    ] as const) {
      const an = set.filter(pick);
      console.log(
        "  ",
        nm,
        an.length,
        coverage(an.map((r) => ({ band: pick(r)!.net, truth: r.record.truth.netPerDay }))),
        coverage(an.map((r) => ({ band: pick(r)!.forecast, truth: r.record.truth.levelIn14 }))),
      );
      const both = an.filter((r) => r.mine);
      const a = scores(both, (r) => r.mine),
        b = scores(both, pick);
      console.log("   both answered", both.length, a.map((x, i) => pct(1 - x / b[i]!)).join(" "));
    }
  }
}
for (const regime of REGIMES)
  report(
    regime,
    rows.filter((r) => r.record.regime === regime),
  );
report("all", rows);
console.log(
  "ms each",
  rows.reduce((s, r) => s + r.ms, 0) / rows.length,
  "total s",
  (performance.now() - started) / 1000,
);
