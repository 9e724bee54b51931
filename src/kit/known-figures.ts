import { DateTime } from "luxon";
import { type ParameterId, parameter, unitText } from "../core/log/parameters.ts";
import type { Estimate } from "../core/quantity/estimate.ts";
import { type Habits, isRead, type Read } from "../core/quantity/read.ts";
import type { SalinityEntry } from "../core/quantity/salinity.ts";
import { showEstimate } from "../core/quantity/show.ts";
import type { DegreesC, Litres, PracticalSalinity } from "../core/quantity/units.ts";
import type { Caution } from "../core/result.ts";
import type { Tank, TankNotes } from "../records/tank.ts";
import type { TakenFigure } from "./answer-reply.ts";
import { askFor } from "./ask.ts";
import type { Context } from "./context.ts";
import type { Question } from "./reply.ts";
import { ago, type Taken, tankSalinity, tankTemperature, tankVolume } from "./tank-figures.ts";
import { tankInMind } from "./tank-option.ts";

const QUESTIONS = {
  volume: { example: "2300 L", text: "How much water is in the system? /tank add would remember it." },
  salinity: { example: "34 ppt", text: "How salty is the water? (0 ppt for fresh)" },
  temperature: { example: "26 °C", text: "How warm is the water?" },
} as const;

interface Given<Q extends number> {
  readonly estimate: Estimate<Q>;
}

/** The figures of one sum: what was typed, else the tank's own; `taken` names whatever was not typed. */
export interface KnownFigures {
  readonly tank: Tank | undefined;
  readonly taken: TakenFigure[];
  readonly cautions: Caution[];
  /** A title that begins with the tank's name, once any figure came from it. */
  titled(title: string): string;
  volume(given: Given<Litres> | undefined): Estimate<Litres> | undefined;
  salinity(given: SalinityEntry | undefined): Estimate<PracticalSalinity> | undefined;
  temperature(given: Given<DegreesC> | undefined): Estimate<DegreesC> | undefined;
  /** The newest logged reading, in the parameter's canonical unit, unless it is older than so many days. */
  logged(id: ParameterId, mostDays: number): Estimate | undefined;
  /** What the tank's notes say under one heading, when it can be read. */
  noted<T>(
    name: string,
    heading: keyof TankNotes,
    read: (text: string, habits: Habits) => Read<T>,
  ): T | undefined;
  /** Adds a figure that was assumed. */
  assume(figure: TakenFigure): void;
  /** The one question for a figure that is neither typed nor known. */
  ask(what: keyof typeof QUESTIONS, title: string): Question;
}

/** Gathers figures from what was typed and from the tank in mind. */
export function knownFigures(given: Tank | undefined, typedVolume: unknown, context: Context): KnownFigures {
  const tank = tankInMind(given, typedVolume, context);
  const taken: TakenFigure[] = [];
  const cautions: Caution[] = [];
  let isTankUsed = false;
  function keep<Q extends number>(figure: Taken<Q> | undefined): Estimate<Q> | undefined {
    if (figure === undefined) return undefined;
    isTankUsed = true;
    taken.push(figure.taken);
    cautions.push(...figure.cautions);
    return figure.estimate;
  }
  return {
    tank,
    taken,
    cautions,
    titled: (title) =>
      tank === undefined || !isTankUsed
        ? title
        : `${tank.name}: ${title.slice(0, 1).toLowerCase()}${title.slice(1)}`,
    volume: (typed) => typed?.estimate ?? (tank === undefined ? undefined : keep(tankVolume(tank, context))),
    salinity: (typed) =>
      typed?.salinity ?? (tank === undefined ? undefined : keep(tankSalinity(tank, context))),
    temperature: (typed) =>
      typed?.estimate ?? (tank === undefined ? undefined : keep(tankTemperature(tank, context))),
    logged: (id, mostDays) => (tank === undefined ? undefined : keep(recent(id, mostDays, tank, context))),
    noted(name, heading, read) {
      const text = tank?.notes[heading];
      const again = text === undefined ? undefined : read(text, context.member.habits);
      if (tank === undefined || again === undefined || !isRead(again)) return undefined;
      isTankUsed = true;
      taken.push({ name, from: `${tank.name}, as noted`, readAs: again.readAs });
      return again.value;
    },
    assume: (figure) => {
      taken.push(figure);
    },
    ask: (what, title) =>
      askFor(
        context,
        { name: what, example: QUESTIONS[what].example },
        { title, text: QUESTIONS[what].text },
      ),
  };
}

/** A reading that is too old, or open to one side, says too little about today's water. */
function recent(id: ParameterId, mostDays: number, tank: Tank, context: Context): Taken<number> | undefined {
  const found = context.records.log.latest(tank.owner, tank.id, id);
  if (found === undefined || ![found.low, found.best, found.high].every(Number.isFinite)) return undefined;
  const now = DateTime.fromMillis(context.now, { zone: "utc" });
  const age = now.diff(DateTime.fromISO(found.at, { zone: "utc" }), "days").days;
  if (!(age <= mostDays)) return undefined;
  const { name } = parameter(id);
  const estimate = { best: found.best, low: found.low, high: found.high };
  return {
    estimate,
    taken: {
      name,
      from: `${tank.name}, logged ${ago(found.at, context.now)}`,
      readAs: showEstimate(estimate, unitText(parameter(id))),
    },
    cautions: [],
  };
}
