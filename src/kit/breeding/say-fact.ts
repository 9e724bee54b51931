import type { Fact } from "../../core/breeding/ledger/facts.ts";
import { sayCount } from "../../core/breeding/read-count.ts";
import { type Group, nameOf, sayDay } from "./group.ts";

/** An entry of the ledger in a few words. */
export function sayFact(fact: Fact, group: Pick<Group, "people" | "state">): string {
  const who = (number: number): string => nameOf(group, number);
  const money = (cents: number): string => `${(cents / 100).toFixed(2)} ${group.state.currency}`;
  switch (fact.kind) {
    case "group started":
      return `${fact.name} began`;
    case "role set":
      return `${who(fact.person)} is ${fact.role}`;
    case "person left":
      return `${who(fact.person)} left`;
    case "tank noted":
      return `tank ${fact.tank}: ${fact.litres} L, ${fact.zone}, water ${fact.water}`;
    case "quarantine begun":
      return `${fact.tank}: quarantine of ${fact.days} days`;
    case "animal noted":
      return `${fact.animal}, ${fact.species}, ${fact.sex}, ${fact.origin}`;
    case "animal gone":
      return `${fact.animal} ${fact.why}`;
    case "pair formed":
      return `${fact.pair}: ${fact.animals.join(" and ")} in ${fact.tank}`;
    case "pair parted":
      return `${fact.pair} parted`;
    case "spawned":
      return `${fact.batch}: eggs in ${fact.tank}${fact.pair === undefined ? "" : ` of ${fact.pair}`}${fact.eggs === undefined ? "" : `, ${sayCount(fact.eggs)}`}`;
    case "stage reached":
      return `${fact.batch}: ${fact.stage}${fact.criterion === undefined ? "" : ` (${fact.criterion})`}${fact.count === undefined ? "" : `, ${sayCount(fact.count)}`}`;
    case "counted":
      return `${fact.batch}: ${sayCount(fact.count)}`;
    case "died":
      return `${fact.batch}: ${fact.number} dead`;
    case "seen too":
      return `saw entry ${fact.event}, too`;
    case "culled":
      return `${fact.batch}: culled, ${fact.number}`;
    case "lost":
      return `${fact.batch}: ${fact.number} not accounted for`;
    case "moved":
      return `${fact.batch} moved to ${fact.tank}`;
    case "split":
      return `${fact.number} of ${fact.batch} split off as ${fact.into} in ${fact.tank}`;
    case "merged":
      return `${fact.batch} merged into ${fact.into}`;
    case "weighed":
      return `${fact.batch}: ${fact.meanG} g each${fact.feedG === undefined ? "" : `, ${fact.feedG} g fed since`}`;
    case "culture started":
      return `culture ${fact.culture}: ${fact.organism}, ${fact.litres} L at ${fact.place}`;
    case "culture counted":
      return `${fact.culture}: ${Number(fact.perML.best.toPrecision(3))} per mL`;
    case "culture harvested":
      return `${fact.culture}: ${fact.litres} L harvested`;
    case "culture ended":
      return `${fact.culture} ${fact.why}`;
    case "tin tested":
      return `tin ${fact.tin}: ${Math.round(fact.naupliiPerG).toLocaleString("en")} nauplii per gram`;
    case "duty planned":
      return `${sayDay(fact.day)}, ${fact.slot}: ${fact.person === undefined ? "open" : who(fact.person)}`;
    case "duty given up":
      return `duty ${fact.duty} given up`;
    case "duty taken":
      return `duty ${fact.duty} taken by ${who(fact.person)}`;
    case "duty done":
      return `duty ${fact.duty} done by ${who(fact.person)}`;
    case "away":
      return `${who(fact.person)} away ${sayDay(fact.from)} to ${sayDay(fact.until)}`;
    case "wanted":
      return `${who(fact.person)} would like ${fact.number} ${fact.species}`;
    case "want closed":
      return `wish ${fact.want} withdrawn`;
    case "transfer offered":
      return `transfer ${fact.transfer}: ${fact.number} of ${fact.batch} to ${who(fact.to)}`;
    case "transfer confirmed":
      return `transfer ${fact.transfer} confirmed by the ${fact.side}`;
    case "transfer dropped":
      return `transfer ${fact.transfer} called off`;
    case "alert raised":
      return `alert on ${fact.water} (${fact.batch})`;
    case "alert lifted":
      return `alert on ${fact.water} lifted`;
    case "spent":
      return `${fact.what}: ${money(fact.cents)}, paid by ${who(fact.payer)}`;
    case "paid":
      return `${who(fact.from)} paid ${who(fact.to)} ${money(fact.cents)}`;
    case "corrected":
      return `entry ${fact.event} taken back`;
  }
}
