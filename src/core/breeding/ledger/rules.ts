import { waterNameOf } from "./advance.ts";
import type { Fact, FactKind } from "./facts.ts";
import { type Batch, type GroupState, keyOf, type Person } from "./state.ts";

/** What only a keeper may do. */
const KEEPER_ONLY: readonly FactKind[] = ["role set", "tank noted", "quarantine begun", "alert lifted"];

/** What everybody in the group may do for themselves, observers too. */
const FOR_ALL: readonly FactKind[] = [
  "wanted",
  "want closed",
  "transfer confirmed",
  "transfer dropped",
  "person left",
  "paid",
];

/** Why this may not be written down now, in a sentence; undefined when it may. */
export function objectionTo(state: GroupState, by: Person, fact: Fact): string | undefined {
  return notAllowed(by, fact) ?? impossible(state, by, fact);
}

function notAllowed({ role, isHere, number }: Person, fact: Fact): string | undefined {
  if (!isHere) return "You have left this group: a keeper can add you again with /group role.";
  if (role === "keeper" || FOR_ALL.includes(fact.kind)) return undefined;
  if (role === "observer")
    return "You are an observer here: you may read everything, and ask for young. A keeper can make you a helper with /group role.";
  if (fact.kind === "corrected" || !KEEPER_ONLY.includes(fact.kind)) return undefined;
  if (fact.kind === "role set" && fact.person === number && fact.role === "observer") return undefined;
  return "Only a keeper may do that. /group show lists them.";
}

function impossible(state: GroupState, by: Person, fact: Fact): string | undefined {
  switch (fact.kind) {
    case "pair formed": {
      const missing = fact.animals.find((animal) => state.animals[keyOf(animal)] === undefined);
      return missing === undefined
        ? noTank(state, fact.tank)
        : `There is no animal “${missing}” here: note it with /brood add.`;
    }
    case "spawned":
      return noTank(state, fact.tank);
    case "quarantine begun":
      return noTank(state, fact.tank);
    case "died":
    case "culled":
    case "lost":
      return tooMany(open(state, fact.batch), fact.number) ?? closed(state, fact.batch);
    case "counted":
    case "weighed":
    case "stage reached":
      return closed(state, fact.batch);
    case "moved":
      return (
        closed(state, fact.batch) ?? noTank(state, fact.tank) ?? betweenWaters(state, fact.batch, fact.tank)
      );
    case "split":
      return (
        closed(state, fact.batch) ??
        noTank(state, fact.tank) ??
        tooMany(open(state, fact.batch), fact.number) ??
        uncounted(state, fact.batch) ??
        betweenWaters(state, fact.batch, fact.tank)
      );
    case "merged": {
      const [from, into] = [open(state, fact.batch), open(state, fact.into)];
      if (from === undefined || into === undefined || from.id === into.id)
        return "Two open batches are needed to merge. /batch list shows them.";
      if (from.species.toLowerCase() !== into.species.toLowerCase())
        return `${from.id} is ${from.species} and ${into.id} is ${into.species}: they cannot be one batch.`;
      return uncounted(state, from.id) ?? betweenWaters(state, from.id, into.tank);
    }
    case "transfer offered": {
      const batch = open(state, fact.batch);
      const promised = Object.values(state.transfers)
        .filter((each) => each.day === undefined && keyOf(each.batch) === keyOf(fact.batch))
        .reduce((sum, { animals }) => sum + animals, 0);
      if (state.people[fact.to]?.isHere !== true) return "The receiver is not in this group.";
      if (fact.to === by.number)
        return "Giver and receiver are one: move them with /batch move or /batch split.";
      return (
        closed(state, fact.batch) ??
        uncounted(state, fact.batch) ??
        frozen(state, batch?.tank ?? "") ??
        tooMany(batch, fact.number + promised)
      );
    }
    case "transfer confirmed": {
      const transfer = state.transfers[fact.transfer];
      if (transfer === undefined || transfer.day !== undefined)
        return `There is no open transfer ${fact.transfer}.`;
      const isReceiver = transfer.to === by.number;
      if (fact.side === "receiver" && !isReceiver) return "Only the receiver can confirm that side.";
      if (fact.side === "giver" && (isReceiver || by.role === "observer"))
        return "The giver's side is for a keeper or helper, and not for the receiver.";
      return (
        frozen(state, state.batches[keyOf(transfer.batch)]?.tank ?? "") ??
        tooMany(open(state, transfer.batch), transfer.animals) ??
        closed(state, transfer.batch)
      );
    }
    case "transfer dropped": {
      const transfer = state.transfers[fact.transfer];
      if (transfer === undefined || transfer.day !== undefined)
        return `There is no open transfer ${fact.transfer}.`;
      return transfer.to === by.number || by.role !== "observer"
        ? undefined
        : "That transfer is not yours to call off.";
    }
    case "want closed": {
      const want = state.wants[fact.want];
      return want?.person === by.number ? undefined : "That wish is not yours.";
    }
    case "person left":
      return fact.person === by.number || by.role === "keeper"
        ? undefined
        : "Only a keeper may take somebody else out of the group.";
    case "paid":
      return fact.from === by.number || fact.to === by.number || by.role === "keeper"
        ? undefined
        : "A payment is noted by one of the two, or by a keeper.";
    case "culture counted":
    case "culture harvested":
    case "culture ended": {
      const culture = state.cultures[keyOf(fact.culture)];
      if (culture === undefined) return `There is no culture “${fact.culture}”. /culture show lists them.`;
      if (culture.ended !== undefined) return `${culture.name} ended on ${culture.ended.day}.`;
      return fact.kind === "culture harvested" && fact.litres > culture.litres
        ? `${culture.name} holds ${culture.litres} L: more cannot be taken at once.`
        : undefined;
    }
    case "culture started": {
      const known = state.cultures[keyOf(fact.culture)];
      return known !== undefined && known.ended === undefined
        ? `There is a culture “${known.name}” already, and it runs.`
        : undefined;
    }
    case "duty given up": {
      const duty = state.duties[fact.duty];
      if (duty === undefined || duty.doneBy !== undefined) return "There is no such duty open.";
      return duty.person === by.number || by.role === "keeper" ? undefined : "That duty is not yours.";
    }
    case "duty taken":
    case "duty done": {
      const duty = state.duties[fact.duty];
      if (duty === undefined) return "There is no such duty.";
      if (duty.doneBy !== undefined) return "That duty is noted as done already.";
      return fact.kind === "duty taken" && duty.person !== undefined && duty.person !== by.number
        ? "That duty is somebody's: they give it up first, with /rota cannot."
        : undefined;
    }
    case "alert lifted":
      return state.alerts[keyOf(fact.water)] === undefined ? "There is no alert on that water." : undefined;
    default:
      return undefined;
  }
}

function open(state: GroupState, batch: string): Batch | undefined {
  const found = state.batches[keyOf(batch)];
  return found?.isClosed === false ? found : undefined;
}

function closed(state: GroupState, batch: string): string | undefined {
  const found = state.batches[keyOf(batch)];
  if (found === undefined) return `There is no batch “${batch}”. /batch list shows them.`;
  return found.isClosed ? `${found.id} is closed: none are left in it.` : undefined;
}

/** A number known exactly cannot be exceeded; one that was guessed or sampled can. */
function tooMany(batch: Batch | undefined, number: number): string | undefined {
  if (batch?.alive === undefined || batch.alive.how !== "exact" || number <= batch.alive.best)
    return undefined;
  return `${number} is more than the ${batch.alive.best} counted in ${batch.id}, promised ones included. Count it anew with /batch count if that is wrong.`;
}

function uncounted(state: GroupState, batch: string): string | undefined {
  const found = state.batches[keyOf(batch)];
  return found !== undefined && found.alive === undefined
    ? `${found.id} has not been counted yet: totals must balance, so count it first with /batch count.`
    : undefined;
}

function noTank(state: GroupState, tank: string): string | undefined {
  return state.tanks[keyOf(tank)] === undefined
    ? `There is no tank “${tank}” in this group: a keeper notes it with /group tank.`
    : undefined;
}

function frozen(state: GroupState, tank: string): string | undefined {
  const water = waterNameOf(state, tank);
  const alert = state.alerts[keyOf(water)];
  return alert === undefined
    ? undefined
    : `${water} is under an alert since ${alert.day}: nothing leaves or enters it until a keeper lifts that with /group clear.`;
}

function betweenWaters(state: GroupState, batch: string, tank: string): string | undefined {
  const from = state.batches[keyOf(batch)]?.tank ?? "";
  return waterNameOf(state, from) === waterNameOf(state, tank)
    ? undefined
    : (frozen(state, from) ?? frozen(state, tank));
}
