import { ammoniumDose } from "../core/dosing/ammonium-dose.ts";
import { carbonRamp } from "../core/dosing/carbon-ramp.ts";
import { parameter, unitText } from "../core/log/parameters.ts";
import { readFood } from "../core/nitrogen/read-food.ts";
import { changeVolume, mealOf } from "../core/plans/amounts.ts";
import { judgeAmmoniumDose, rampWeek, type TankLog } from "../core/plans/regimens.ts";
import { sayTask, type Task } from "../core/plans/task.ts";
import { between, type Estimate, exactly } from "../core/quantity/estimate.ts";
import { isRead } from "../core/quantity/read.ts";
import { readSalinity } from "../core/quantity/salinity.ts";
import { showEstimate, showIn, showVolume } from "../core/quantity/show.ts";
import { as, type DegreesC, type Fraction, type Litres } from "../core/quantity/units.ts";
import { type Caution, caution } from "../core/result.ts";
import { netVolume } from "../core/tank/net-volume.ts";
import { saltMix } from "../core/water/salt-mix.ts";
import type { DutyWords, Plan } from "../records/plan.ts";
import type { Tank } from "../records/tank.ts";
import { sayCaution, sayRefusal } from "../wording/index.ts";
import { ago, type FigureContext, tankSalinity, tankTemperature } from "./tank-figures.ts";
import { capitalised } from "./text.ts";
import { showRange, wantedRange } from "./wanted-range.ts";

/** What is to be done and how much of it, as the tank stands now; or why nothing is. */
export type Settled =
  | { readonly kind: "do"; readonly words: DutyWords }
  | { readonly kind: "hold"; readonly why: string };

/** Room temperature to tropical, when nothing is known of the new water. Source: assumption. */
const USUAL_MIXING_C = between(as<DegreesC>(20), as<DegreesC>(28), as<DegreesC>(25));

/** Settles the amount of a plan that falls due, by the core and the tank's own record. */
export function dutyWords(
  plan: Pick<Plan, "task" | "typed">,
  tank: Tank,
  log: TankLog,
  context: FigureContext,
): Settled {
  const { task } = plan;
  switch (task.kind) {
    case "words":
      return say(task, [], [], { event: "note", text: task.words, words: `note: ${task.words}` });
    case "test":
      return say(task, testLines(task, tank, context), []);
    case "event":
      return eventWords(task, tank, context);
    case "switch off":
      return {
        kind: "do",
        words: {
          title: sayTask(task),
          lines: [],
          cautions: offCautions(task),
          event: { event: "equipment off", text: task.device, words: `${task.device} off` },
          device: task.device,
          hours: task.hours,
          ...(task.because === undefined ? {} : { because: task.because }),
        },
      };
    case "ethanol step":
      return ethanolWords(task, tank, log);
    case "ammonium dose":
      return ammoniumWords(task, tank, log);
  }
}

/** The second half of a pair: nothing but the way back. */
export function wayBackWords({ device = "", because, hours }: DutyWords): DutyWords {
  return {
    title: `${device} back on`,
    lines: [],
    cautions: [],
    event: { event: "equipment on", text: device, words: `${device} on` },
    device,
    ...(because === undefined ? {} : { because }),
    ...(hours === undefined ? {} : { hours }),
  };
}

function say(
  task: Task,
  lines: readonly string[],
  cautions: readonly Caution[],
  event?: DutyWords["event"],
): Settled {
  return {
    kind: "do",
    words: {
      title: sayTask(task),
      lines,
      cautions: spoken(cautions),
      ...(event === undefined ? {} : { event }),
    },
  };
}

/** What can hurt or spoil goes along; what is merely good to know stands in the command's own answer. */
function spoken(cautions: readonly Caution[]): DutyWords["cautions"] {
  return cautions
    .filter(({ level }) => level !== "note")
    .map((each) => ({ level: each.level, text: capitalised(sayCaution(each)) }));
}

function offCautions({ device, because = "" }: Extract<Task, { kind: "switch off" }>): DutyWords["cautions"] {
  return spoken([
    ...(/pump|air|aerat|skimmer|filter/i.test(device) ? [caution("off-needs-watching", { device })] : []),
    ...(/medic|treat|drug|copper|antibio|vet\b/i.test(because) ? [caution("window-by-vet", {})] : []),
  ]);
}

function eventWords(task: Extract<Task, { kind: "event" }>, tank: Tank, context: FigureContext): Settled {
  const { event, amount, text, words } = task;
  const logged = {
    event,
    ...(amount === undefined ? {} : { amount: amount.best, unit: amount.unit }),
    text,
    words,
  };
  if (event === "water change" && amount !== undefined) {
    const { lines, cautions } = newWater(amount, tank, context);
    return say(task, lines, cautions, logged);
  }
  if (event === "feeding" && amount === undefined) return say(task, rationLines(tank, context), [], logged);
  return say(task, [], [], logged);
}

/** The litres a change takes and, for a salt-water tank, the salt in them. */
function newWater(
  amount: NonNullable<Extract<Task, { kind: "event" }>["amount"]>,
  tank: Tank,
  context: FigureContext,
): { readonly lines: readonly string[]; readonly cautions: readonly Caution[] } {
  const { habits } = context.member;
  const net = netVolume(tank.containers);
  if (net.kind === "no-answer")
    return { lines: [capitalised(sayRefusal(net.reason))], cautions: net.cautions };
  const litres = changeVolume(amount, net.value.totalL);
  const water = `${showVolume(litres, habits)} of new water`;
  if (tank.kind === "fresh") return { lines: [`${water}.`], cautions: [] };
  const noted = tank.notes.salinity === undefined ? undefined : readSalinity(tank.notes.salinity, habits);
  const salinity =
    noted !== undefined && isRead(noted) ? noted.value.salinity : tankSalinity(tank, context)?.estimate;
  if (salinity === undefined)
    return {
      lines: [`${water}. The salt cannot be worked out: note the salinity with /tank note salinity:34 ppt.`],
      cautions: [],
    };
  const mix = saltMix({
    volume: { kind: "final", litres },
    salinity,
    temperature: tankTemperature(tank, context)?.estimate ?? USUAL_MIXING_C,
    yieldFactor: context.records.saltProducts.of(context.member.id)[0]?.yieldFactor,
  });
  if (mix.kind === "no-answer")
    return { lines: [`${water}.`, capitalised(sayRefusal(mix.reason))], cautions: mix.cautions };
  return {
    lines: [
      `${water} at ${showEstimate(salinity, "ppt", { significant: 3 })}: ${showEstimate(mix.value.saltKg, "kg", { significant: 3 })} of salt mix.`,
    ],
    cautions: mix.cautions,
  };
}

function rationLines(tank: Tank, context: FigureContext): readonly string[] {
  const { food } = tank.notes;
  if (food === undefined) return ["No ration is noted: /tank note food:40 g prawn 3 times a week keeps one."];
  const read = readFood(food, context.member.habits);
  if (!isRead(read)) return [`As noted: ${food}.`];
  return read.value.map(
    (each) => `${capitalised(each.label)}: ${showEstimate(mealOf(each), "g", { significant: 3 })} a meal.`,
  );
}

function testLines(
  { parameters }: Extract<Task, { kind: "test" }>,
  tank: Tank,
  context: FigureContext,
): readonly string[] {
  return parameters.flatMap((id) => {
    const subject = parameter(id);
    const last = context.records.log.latest(tank.owner, tank.id, id);
    if (last === undefined) return [];
    const wanted = wantedRange(subject, tank, context);
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = wanted ?? {};
    const isOutside = last.best < low || last.best > high;
    const range = wanted === undefined || !isOutside ? "" : `, outside ${showRange(wanted, subject)}`;
    const shown = showEstimate({ best: last.best, low: last.low, high: last.high }, unitText(subject));
    return [
      Number.isFinite(last.low) && Number.isFinite(last.high)
        ? `Last ${subject.name}: ${shown}, ${ago(last.at, context.now)}${range}.`
        : `Last ${subject.name}: ${last.readAs}, ${ago(last.at, context.now)}.`,
    ];
  });
}

function volumeOf(tank: Tank): { readonly litres: Estimate<Litres> } | { readonly why: string } {
  const net = netVolume(tank.containers);
  return net.kind === "no-answer" ? { why: sayRefusal(net.reason) } : { litres: net.value.totalL };
}

function ethanolWords(task: Extract<Task, { kind: "ethanol step" }>, tank: Tank, log: TankLog): Settled {
  const { percent, dosesPerDay } = task;
  const volume = volumeOf(tank);
  if ("why" in volume) return { kind: "hold", why: volume.why };
  const doses = log.events("dose").filter(({ text }) => /alcohol|ethanol|carbon/i.test(text));
  const week = rampWeek(
    doses.map(({ at }) => at),
    log.readings("nitrate"),
  );
  const isOff = (pattern: RegExp): boolean => log.off.some((device) => pattern.test(device));
  const ramp = carbonRamp({
    route: "aerobic assimilation",
    systemVolume: volume.litres,
    reservoirPercent: exactly(percent),
    weeks: week,
    dosesPerDay,
    conditions: {
      arePumpsRunning: !isOff(/pump/i),
      isAerationRunning: !isOff(/air|aerat/i),
      isSkimmerRunning: !isOff(/skimmer/i),
      // Asked of the member on every reminder: no record can know it.
      areFishEating: true,
      isDenatured: false,
    },
  });
  if (ramp.kind === "no-answer") return { kind: "hold", why: sayRefusal(ramp.reason) };
  const today = ramp.value.weeks.at(-1);
  if (today === undefined) return { kind: "hold", why: "the ramp has no step for today" };
  const daily = showIn(today.daily, "volume", "mL", { significant: 3 });
  const each = showIn(today.perDose, "volume", "mL", { significant: 3 });
  return say(
    task,
    [
      `Week ${week} of doses: ${daily} of the ${percent} % mix today, in ${dosesPerDay} doses of ${each}.`,
      "Only if everything runs and the fish eat today; otherwise skip it.",
    ],
    ramp.cautions,
    {
      event: "dose",
      amount: today.daily.best,
      unit: "L",
      text: `alcohol ${percent} %`,
      words: `dose ${daily} alcohol ${percent} %`,
    },
  );
}

function ammoniumWords(task: Extract<Task, { kind: "ammonium dose" }>, tank: Tank, log: TankLog): Settled {
  const verdict = judgeAmmoniumDose(log);
  if (verdict.kind !== "go") return { kind: "hold", why: verdict.why ?? "" };
  const volume = volumeOf(tank);
  if ("why" in volume) return { kind: "hold", why: volume.why };
  const dose = ammoniumDose({
    systemVolume: volume.litres,
    target: exactly(task.mgPerL),
    form: "TAN",
    purity: exactly(as<Fraction>(1)),
    hasAnimals: tank.notes.livestock !== undefined || log.events("livestock in").length > 0,
  });
  if (dose.kind === "no-answer") return { kind: "hold", why: sayRefusal(dose.reason) };
  const { mass } = dose.value;
  const shown = showEstimate(mass, "g", { significant: 3 });
  return say(
    task,
    [`${shown} of pure ammonium chloride, for ${task.mgPerL} mg/L as nitrogen.`],
    dose.cautions,
    {
      event: "dose",
      amount: mass.best / 1000,
      unit: "kg",
      text: "ammonium chloride",
      words: `dose ${shown} ammonium chloride`,
    },
  );
}
