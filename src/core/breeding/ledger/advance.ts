import { dayAfter, daysBetween, quarantineUntil } from "../calendar.ts";
import { correctedIn } from "./corrections.ts";
import { Draft } from "./draft.ts";
import type { Count, Fact, LedgerEvent } from "./facts.ts";
import { type Batch, type DayRow, emptyState, type GroupState, keyOf } from "./state.ts";

/** Counts and harvests of a culture kept at hand; older ones stand in the ledger. */
const CULTURE_COUNTS = 40;
/** Days a duty stays at hand after its day. */
const DUTY_DAYS = 60;
/** Own hatching times kept at hand. */
const MOST_HATCHES = 200;
/** Closed transfers stay at hand so long: those who had animals are told of an alert. */
const TRANSFER_DAYS = 400;

/** The state once these events have come to pass; the one given stays as it was. A correction reaches back, so
 *  it must be replayed from the start: `isReplayNeeded` tells. */
export function advance(
  state: GroupState,
  events: readonly LedgerEvent[],
  voided: ReadonlySet<number> = new Set(),
): GroupState {
  const draft = new Draft(state);
  for (const event of events) {
    if (!voided.has(event.number)) apply(draft, event);
    draft.state.lastEvent = event.number;
  }
  return draft.state;
}

/** The duty of watching one batch hatch. */
export function hatchSlot(batch: string): string {
  return `hatch ${batch}`;
}

export function isReplayNeeded(events: readonly LedgerEvent[]): boolean {
  return events.some(({ fact }) => fact.kind === "corrected");
}

/** A ledger from its first event, or from a state that none of its corrections reaches behind, leaving out
 *  what was corrected. */
export function replay(events: readonly LedgerEvent[], from: GroupState = emptyState()): GroupState {
  return advance(from, events, correctedIn(events));
}

function apply(draft: Draft, event: LedgerEvent): void {
  const { state } = draft;
  const { fact, day } = event;
  switch (fact.kind) {
    case "group started":
      state.name = fact.name;
      state.zone = fact.zone;
      state.currency = fact.currency;
      return;
    case "tank noted": {
      const known = draft.edit("tanks", keyOf(fact.tank));
      draft.put("tanks", keyOf(fact.tank), {
        ...known,
        name: fact.tank,
        litres: fact.litres,
        water: fact.water,
        zone: fact.zone,
      });
      return;
    }
    case "quarantine begun":
      for (const tank of waterOf(draft, fact.tank)) {
        tank.quarantineDays = fact.days;
        tank.quarantineUntil = quarantineUntil(day, fact.days, []);
      }
      return;
    case "animal noted":
      draft.put("animals", keyOf(fact.animal), {
        name: fact.animal,
        species: fact.species,
        sex: fact.sex,
        sires: fact.sires,
        ...(fact.dam === undefined ? {} : { dam: fact.dam }),
        origin: fact.origin,
        ...(fact.tank === undefined ? {} : { tank: fact.tank }),
        owner: fact.owner,
      });
      if (fact.tank !== undefined) restartQuarantine(draft, fact.tank, day);
      return;
    case "animal gone": {
      const animal = draft.edit("animals", keyOf(fact.animal));
      if (animal !== undefined) animal.gone = fact.why;
      return;
    }
    case "pair formed":
      draft.put("pairs", keyOf(fact.pair), {
        name: fact.pair,
        animals: fact.animals,
        tank: fact.tank,
        isParted: false,
      });
      return;
    case "pair parted": {
      const pair = draft.edit("pairs", keyOf(fact.pair));
      if (pair !== undefined) pair.isParted = true;
      return;
    }
    case "tin tested":
      draft.put("tins", keyOf(fact.tin), { name: fact.tin, naupliiPerG: fact.naupliiPerG, day });
      return;
    case "alert raised":
      draft.put("alerts", keyOf(fact.water), { water: fact.water, batch: fact.batch, day });
      return;
    case "alert lifted":
      draft.drop("alerts", keyOf(fact.water));
      return;
    case "seen too":
    case "corrected":
      return;
    case "role set":
    case "person left":
    case "away":
    case "spent":
    case "paid":
      applyToPeople(draft, event, fact);
      return;
    case "duty planned":
    case "duty given up":
    case "duty taken":
    case "duty done":
      applyToDuties(draft, event, fact);
      return;
    case "wanted":
    case "want closed":
    case "transfer offered":
    case "transfer confirmed":
    case "transfer dropped":
      applyToTransfers(draft, event, fact);
      return;
    case "culture started":
    case "culture counted":
    case "culture harvested":
    case "culture ended":
      applyToCultures(draft, event, fact);
      return;
    default:
      applyToBatches(draft, event, fact);
  }
}

type Of<K extends Fact["kind"]> = Extract<Fact, { kind: K }>;

function applyToPeople(
  draft: Draft,
  { day }: LedgerEvent,
  fact: Of<"role set" | "person left" | "away" | "spent" | "paid">,
): void {
  const { state } = draft;
  switch (fact.kind) {
    case "role set": {
      const known = draft.edit("people", String(fact.person));
      if (known?.isHere === true) known.role = fact.role;
      else {
        // A newcomer starts level with the least loaded, or all duties would fall to them.
        const loads = Object.values(state.people)
          .filter(({ isHere, role }) => isHere && role !== "observer")
          .map(({ load }) => load);
        draft.put("people", String(fact.person), {
          number: fact.person,
          role: fact.role,
          isHere: true,
          since: day,
          load: loads.length === 0 ? 0 : Math.min(...loads),
          done: known?.done ?? 0,
        });
      }
      return;
    }
    case "person left": {
      const person = draft.edit("people", String(fact.person));
      if (person !== undefined) person.isHere = false;
      mindKeepers(draft);
      for (const { number, person: who, doneBy } of Object.values(state.duties))
        if (who === fact.person && doneBy === undefined) {
          const duty = draft.edit("duties", String(number));
          if (duty !== undefined) delete duty.person;
        }
      for (const { number, person: who } of Object.values(state.wants))
        if (who === fact.person) draft.drop("wants", String(number));
      for (const { number, from, to, day: closed } of Object.values(state.transfers))
        if (closed === undefined && (to === fact.person || from === fact.person))
          draft.drop("transfers", String(number));
      for (const { name, keeper } of Object.values(state.cultures))
        if (keeper === fact.person) {
          const culture = draft.edit("cultures", keyOf(name));
          if (culture !== undefined) delete culture.keeper;
        }
      state.absences = state.absences.filter((absence) => absence.person !== fact.person);
      return;
    }
    case "away":
      state.absences = [
        ...state.absences.filter(({ until }) => until >= dayAfter(day, -DUTY_DAYS)),
        { person: fact.person, from: fact.from, until: fact.until },
      ];
      return;
    case "spent":
      state.spentCents += fact.cents;
      draft.addTo(fact.payer, fact.cents);
      for (const { person, cents } of fact.shares) draft.addTo(person, -cents);
      return;
    case "paid":
      draft.addTo(fact.from, fact.cents);
      draft.addTo(fact.to, -fact.cents);
      return;
  }
}

/** A group is never without a keeper: the helper who has been there longest becomes one. */
function mindKeepers(draft: Draft): void {
  const here = Object.values(draft.state.people).filter(({ isHere }) => isHere);
  if (here.some(({ role }) => role === "keeper")) return;
  const next =
    here.filter(({ role }) => role === "helper").sort((a, b) => (a.since < b.since ? -1 : 1))[0] ?? here[0];
  const person = next === undefined ? undefined : draft.edit("people", String(next.number));
  if (person !== undefined) person.role = "keeper";
}

function applyToDuties(
  draft: Draft,
  { day, by }: LedgerEvent,
  fact: Of<"duty planned" | "duty given up" | "duty taken" | "duty done">,
): void {
  const { state } = draft;
  if (fact.kind === "duty planned") {
    state.last.duty = Math.max(state.last.duty, fact.duty);
    draft.put("duties", String(fact.duty), {
      number: fact.duty,
      day: fact.day,
      slot: fact.slot,
      ...(fact.person === undefined ? {} : { person: fact.person }),
    });
    const oldest = dayAfter(day, -DUTY_DAYS);
    for (const old of Object.values(state.duties)) {
      if (old.day >= oldest) break;
      draft.drop("duties", String(old.number));
    }
    return;
  }
  const duty = draft.edit("duties", String(fact.duty));
  if (duty === undefined) return;
  switch (fact.kind) {
    case "duty given up":
      if (duty.person !== undefined) duty.givenUpBy = duty.person;
      else duty.givenUpBy = by;
      delete duty.person;
      return;
    case "duty taken":
      duty.person = fact.person;
      return;
    case "duty done": {
      if (duty.doneBy !== undefined) return;
      duty.doneBy = fact.person;
      const doer = draft.edit("people", String(fact.person));
      if (doer === undefined) return;
      doer.load += 1;
      doer.done += 1;
      doer.lastDuty = duty.day;
      return;
    }
  }
}

function applyToTransfers(
  draft: Draft,
  { day, by }: LedgerEvent,
  fact: Of<"wanted" | "want closed" | "transfer offered" | "transfer confirmed" | "transfer dropped">,
): void {
  const { state } = draft;
  switch (fact.kind) {
    case "wanted":
      state.last.want = Math.max(state.last.want, fact.want);
      draft.put("wants", String(fact.want), {
        number: fact.want,
        person: fact.person,
        species: fact.species,
        animals: fact.number,
        isReady: fact.isReady,
        since: day,
      });
      return;
    case "want closed":
      draft.drop("wants", String(fact.want));
      return;
    case "transfer offered": {
      const batch = state.batches[keyOf(fact.batch)];
      state.last.transfer = Math.max(state.last.transfer, fact.transfer);
      draft.put("transfers", String(fact.transfer), {
        number: fact.transfer,
        batch: fact.batch,
        species: batch?.species ?? "",
        animals: fact.number,
        from: by,
        to: fact.to,
        hasGiver: false,
        hasReceiver: false,
        water: waterNameOf(state, batch?.tank ?? ""),
      });
      const oldest = dayAfter(day, -TRANSFER_DAYS);
      for (const old of Object.values(state.transfers)) {
        if ((old.day ?? day) >= oldest) break;
        draft.drop("transfers", String(old.number));
      }
      return;
    }
    case "transfer dropped":
      draft.drop("transfers", String(fact.transfer));
      return;
    case "transfer confirmed": {
      const transfer = draft.edit("transfers", String(fact.transfer));
      if (transfer === undefined || transfer.day !== undefined) return;
      if (fact.side === "giver") transfer.hasGiver = true;
      else transfer.hasReceiver = true;
      if (!transfer.hasGiver || !transfer.hasReceiver) return;
      transfer.day = day;
      const batch = draft.edit("batches", keyOf(transfer.batch));
      if (batch !== undefined) leave(batch, day, transfer.animals, 2);
      for (const want of Object.values(state.wants))
        if (want.person === transfer.to && keyOf(want.species) === keyOf(transfer.species)) {
          const open = draft.edit("wants", String(want.number));
          if (open === undefined) continue;
          open.animals -= transfer.animals;
          if (open.animals <= 0) draft.drop("wants", String(want.number));
          break;
        }
      return;
    }
  }
}

function applyToCultures(
  draft: Draft,
  { at, day }: LedgerEvent,
  fact: Of<"culture started" | "culture counted" | "culture harvested" | "culture ended">,
): void {
  if (fact.kind === "culture started") {
    draft.put("cultures", keyOf(fact.culture), {
      name: fact.culture,
      organism: fact.organism,
      litres: fact.litres,
      place: fact.place,
      keeper: fact.keeper,
      ...(fact.parent === undefined ? {} : { parent: fact.parent }),
      started: day,
      counts: [],
      harvests: [],
    });
    return;
  }
  const culture = draft.edit("cultures", keyOf(fact.culture));
  if (culture === undefined) return;
  switch (fact.kind) {
    case "culture counted":
      culture.counts = [
        ...culture.counts.slice(1 - CULTURE_COUNTS),
        { at, ...fact.perML, ...(fact.eggShare === undefined ? {} : { eggShare: fact.eggShare }) },
      ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
      return;
    case "culture harvested":
      culture.harvests = [...culture.harvests.slice(1 - CULTURE_COUNTS), { at, litres: fact.litres }];
      return;
    case "culture ended":
      culture.ended = { day, why: fact.why };
      return;
  }
}

type BatchFact = Of<
  | "spawned"
  | "stage reached"
  | "counted"
  | "died"
  | "culled"
  | "lost"
  | "moved"
  | "split"
  | "merged"
  | "weighed"
>;

function applyToBatches(draft: Draft, event: LedgerEvent, fact: BatchFact): void {
  const { state } = draft;
  const { day } = event;
  if (fact.kind === "spawned") {
    state.last.spawn = Math.max(state.last.spawn, fact.spawn);
    state.last.batch += 1;
    draft.put("batches", keyOf(fact.batch), {
      id: fact.batch,
      species: fact.species,
      spawns: [fact.spawn],
      ...(fact.pair === undefined ? {} : { pair: fact.pair }),
      tank: fact.tank,
      stage: "eggs",
      laidDay: day,
      laidAt: event.at,
      ...(fact.temperatureC === undefined ? {} : { temperatureC: fact.temperatureC }),
      ...(fact.eggs === undefined ? {} : { eggs: fact.eggs }),
      rows: [],
      counts: [],
      stages: [{ stage: "eggs", day }],
      sizes: [],
      culled: 0,
      isClosed: false,
    });
    return;
  }
  const batch = draft.edit("batches", keyOf(fact.batch));
  if (batch === undefined) return;
  switch (fact.kind) {
    case "stage reached":
      batch.stage = fact.stage;
      batch.stages.push({
        stage: fact.stage,
        day,
        ...(fact.criterion === undefined ? {} : { criterion: fact.criterion }),
      });
      if (fact.stage === "hatched" && batch.hatchDay === undefined) {
        batch.hatchDay = day;
        // The nights still planned for watching fall away.
        for (const duty of Object.values(state.duties))
          if (duty.slot === hatchSlot(batch.id) && duty.day > day && duty.doneBy === undefined)
            draft.drop("duties", String(duty.number));
        state.hatches = [
          ...state.hatches.slice(1 - MOST_HATCHES),
          {
            species: batch.species,
            ...(batch.pair === undefined ? {} : { pair: batch.pair }),
            days: daysBetween(batch.laidDay, day),
            ...(batch.temperatureC === undefined ? {} : { temperatureC: batch.temperatureC }),
          },
        ];
      }
      if (fact.stage === "lost") close(batch, day);
      else if (fact.count !== undefined) counted(batch, day, fact.count);
      return;
    case "counted":
      counted(batch, day, fact.count);
      return;
    case "died":
      leave(batch, day, fact.number, 1);
      batch.lastDeaths = {
        event: event.number,
        by: event.by,
        number: fact.number,
        enteredAt: event.enteredAt,
      };
      return;
    case "culled":
      batch.culled += fact.number;
      leave(batch, day, fact.number, 1);
      return;
    case "lost":
      leave(batch, day, fact.number, 4);
      return;
    case "moved":
      batch.tank = fact.tank;
      restartQuarantine(draft, fact.tank, day);
      return;
    case "split": {
      const count: Count = { best: fact.number, low: fact.number, high: fact.number, how: "exact" };
      leave(batch, day, fact.number, 2);
      state.last.batch += 1;
      draft.put("batches", keyOf(fact.into), {
        id: fact.into,
        species: batch.species,
        spawns: [...batch.spawns],
        ...(batch.pair === undefined ? {} : { pair: batch.pair }),
        tank: fact.tank,
        stage: batch.stage,
        laidDay: batch.laidDay,
        laidAt: batch.laidAt,
        ...(batch.hatchDay === undefined ? {} : { hatchDay: batch.hatchDay }),
        alive: count,
        start: { day, count },
        rows: [],
        counts: [{ day, count }],
        stages: [{ stage: batch.stage, day }],
        sizes: [],
        culled: 0,
        isClosed: false,
      });
      restartQuarantine(draft, fact.tank, day);
      return;
    }
    case "merged": {
      const into = draft.edit("batches", keyOf(fact.into));
      if (into === undefined) return;
      const { alive } = batch;
      into.spawns = [...new Set([...into.spawns, ...batch.spawns])];
      if (into.pair !== batch.pair) delete into.pair;
      if (alive !== undefined) {
        join(into, day, alive);
        leave(batch, day, alive.best, 2);
      }
      batch.isClosed = true;
      return;
    }
    case "weighed":
      batch.sizes.push({
        day,
        meanG: fact.meanG,
        feedG: fact.feedG ?? 0,
        deadSince: deadIn(batch),
        aliveThen: batch.alive?.best ?? 0,
      });
      return;
  }
}

function deadIn(batch: Batch): number {
  return batch.rows.reduce((sum, [, deaths, , , missing]) => sum + deaths + missing, 0);
}

function rowOf(batch: Batch, day: string): DayRow {
  const last = batch.rows.at(-1);
  if (last?.[0] === day) return last;
  const known = batch.rows.find(([its]) => its === day);
  if (known !== undefined) return known;
  const row: DayRow = [day, 0, 0, 0, 0];
  batch.rows.push(row);
  if (last !== undefined && last[0] > day) batch.rows.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return row;
}

/** A new count takes the place of what was reckoned; the difference is kept as missing or as found. */
function counted(batch: Batch, day: string, count: Count): void {
  batch.counts.push({ day, count });
  const isBeforeHatch = batch.stage === "eggs";
  if (isBeforeHatch) {
    batch.eggs = count;
    return;
  }
  if (batch.start === undefined || batch.alive === undefined) {
    batch.start = { day, count };
    batch.alive = count;
    return;
  }
  const difference = batch.alive.best - count.best;
  const row = rowOf(batch, day);
  if (difference > 0) row[4] += difference;
  else if (difference < 0) row[3] -= difference;
  batch.alive = count;
  if (count.high === 0) batch.isClosed = true;
}

/** So many go, by death (1), alive (2) or unaccounted for (4); more than were reckoned means more were there. */
function leave(batch: Batch, day: string, number: number, column: 1 | 2 | 4): void {
  const row = rowOf(batch, day);
  row[column] += number;
  if (batch.alive === undefined) {
    row[3] += number;
    return;
  }
  const { best, low, high, how } = batch.alive;
  if (number > best) row[3] += number - best;
  batch.alive = {
    best: Math.max(0, best - number),
    low: Math.max(0, low - number),
    high: Math.max(0, high - number),
    how,
  };
  if (batch.alive.high === 0) batch.isClosed = true;
}

function join(batch: Batch, day: string, count: Count): void {
  if (batch.alive === undefined || batch.start === undefined) {
    batch.alive = count;
    batch.start = { day, count };
    return;
  }
  rowOf(batch, day)[3] += count.best;
  const { alive } = batch;
  batch.alive = {
    best: alive.best + count.best,
    low: alive.low + count.low,
    high: alive.high + count.high,
    how: weaker(alive.how, count.how),
  };
}

function weaker(a: Count["how"], b: Count["how"]): Count["how"] {
  return a === "guess" || b === "guess" ? "guess" : a === "exact" ? b : a;
}

function close(batch: Batch, day: string): void {
  if (batch.alive !== undefined && batch.alive.best > 0) leave(batch, day, batch.alive.best, 4);
  batch.isClosed = true;
}

export function waterNameOf(state: GroupState, tank: string): string {
  return state.tanks[keyOf(tank)]?.water ?? tank;
}

function waterOf(draft: Draft, tank: string) {
  const water = waterNameOf(draft.state, tank);
  return Object.values(draft.state.tanks)
    .filter((each) => each.water === water)
    .flatMap(({ name }) => draft.edit("tanks", keyOf(name)) ?? []);
}

/** An arrival starts the clock anew for all that share the water, while it runs. */
function restartQuarantine(draft: Draft, tank: string, day: string): void {
  const place = draft.state.tanks[keyOf(tank)];
  if (place?.quarantineUntil === undefined || place.quarantineUntil <= day) return;
  for (const each of waterOf(draft, tank))
    if (each.quarantineDays !== undefined) each.quarantineUntil = dayAfter(day, each.quarantineDays);
}
