import type { BreedingCautions, BreedingRefusals } from "../core/breeding/cautions.ts";
import type { Wording } from "./wording.ts";

function two(value: number): string {
  return Number(value.toPrecision(2)).toString();
}

function all(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** The sentence for each caution of the breeding room. */
export const breedingCautionWording: Wording<BreedingCautions> = {
  "breeding-clumped": ({ chance }) =>
    `The scoops differ too much to be chance (p ${chance < 0.001 ? "below 0.001" : two(chance)}): the animals stand clumped. Stir gently and count anew; the range is not to be trusted.`,
  "breeding-few-counted": ({ counted, needed }) =>
    `Only ${counted} were counted. About ${needed} in all the scoops together bring the range down to ± 20 %.`,
  "breeding-not-independent": () =>
    "Animals in one tank share its fate: the range allows for chance, not for a crash of the whole tank.",
  "breeding-survival-rests-on-estimates": () =>
    "Some of these numbers are samples or guesses: the curve is no firmer than they are.",
  "breeding-day-is-a-prompt": ({ until }) =>
    `Look each evening; the days are a prompt, not a promise. Nothing by ${until}? Then look closely and note what you see.`,
  "breeding-diapause": ({ from }) =>
    `These eggs may rest for weeks or months: no hatching day can be given. Check from ${from}.`,
  "breeding-temperature-beyond": ({ temperature, from, to }) =>
    `${two(temperature)} °C lies outside ${two(from)}–${two(to)} °C, where the days were seen. Warmer is mostly sooner, yet how much is not known.`,
  "breeding-culture-falling": ({ culture, changePerDay, counts }) =>
    `${culture} has shrunk over its last ${counts} counts (${two(-100 * changePerDay)} % less a day): set up the back-up tonight and harvest nothing from it.`,
  "breeding-culture-slow": ({ culture, mostPercent, wantedPercent }) =>
    `${culture} grows enough for ${two(mostPercent)} % a day, not for the ${two(wantedPercent)} % that are taken: it will thin out.`,
  "breeding-culture-eggs-falling": ({ culture }) =>
    `Fewer animals in ${culture} carry eggs than before: that comes ahead of a crash. Get the back-up ready.`,
  "breeding-culture-stale": ({ culture, days }) =>
    `${culture} was last counted ${days} days ago: count it before you rely on this.`,
  "breeding-no-backup": ({ culture }) => `${culture} has no back-up: start a second vessel in another place.`,
  "breeding-backup-near": ({ culture, place }) =>
    `The back-up of ${culture} stands in the same place (${place}): one mishap takes both.`,
  "breeding-culture-short": ({ missing }) =>
    `The cultures cannot give all of it: about ${Math.round(missing).toLocaleString("en")} are missing.`,
  "breeding-tin-unknown": () =>
    "How well these cysts hatch is not known: test the tin and keep the figure with /culture tin.",
  "breeding-deaths-alert": ({ deaths, meanPerDay, days, water }) =>
    `${deaths} dead in a day against ${two(meanPerDay)} a day over the ${days} days before: this is out of the ordinary for ${water}.`,
  "breeding-frozen": ({ water }) =>
    `Nothing leaves ${water} until a keeper lifts it with /group clear: no animals, water, nets or plants.`,
  "breeding-see-vet": () =>
    "Ask a vet who knows fish what it is before anything is given; keep one freshly dead animal cold, not frozen, for that.",
  "breeding-told-recipients": ({ people }) =>
    `Tell those who had animals from that water in the last 30 days: ${all(people)}.`,
  "breeding-water-step-up": ({ from, to }) =>
    `That goes from ${from} towards ${to}: animals and nets go the other way only, from the most delicate to the least. Use other nets and buckets, or disinfect and dry them first.`,
  "breeding-in-quarantine": ({ tank, until }) =>
    `${tank} is in quarantine until ${until}; moving animals starts the clock anew for the whole water.`,
  "breeding-close-kin": ({ kin }) => `${kin}: avoid this pair where there is a choice.`,
  "breeding-at-least": () =>
    "Some ancestors are not known, so the true figure may be higher: read it as at least.",
  "breeding-shop-stock": () =>
    "Two traded animals are not known to be unrelated: brothers and sisters often come in one shipment.",
  "breeding-no-population": ({ effective }) =>
    `These breeders count for ${two(effective)}: no club pair is a population. Swap young with other groups, in equal numbers from each family.`,
  "breeding-mixes-origins": () =>
    "The two differ in origin: note it on every card, so that nobody passes the young on as pure.",
  "breeding-never-release": () => "Never release animals, plants or water outdoors, nor flush them.",
  "breeding-authority": ({ species }) =>
    `What may be kept, moved or sold differs from place to place: check ${species} with your authority first.`,
  "breeding-papers": ({ species }) =>
    `${species} is protected by treaty: papers may be needed to keep or move it, above all across a border. Check with your authority first.`,
  "breeding-quarantine-reminder": ({ days }) =>
    `The receiver keeps them ${days} days in quarantine, with nets and buckets of their own.`,
  "breeding-cull-is-yours": () =>
    "Whether to cull is the owner's to decide, and how is a vet's to say; only the number is kept here.",
  "breeding-not-ready": ({ people }) =>
    `The tank is not said to be ready at ${all(people)}: the group decides.`,
};

/** The sentence for each refusal of the breeding room. */
export const breedingRefusalWording: Wording<BreedingRefusals> = {
  "breeding-pedigree-loop": ({ animal }) =>
    `${animal} would be its own ancestor: one of the parents is noted wrongly. Put that right first.`,
  "breeding-no-scoops": () => "Nothing can be said from no scoops: count at least two, stirred in between.",
  "breeding-no-growth-yet": ({ culture }) =>
    `${culture} has been counted once at most: growth needs two counts, best a day apart.`,
  "breeding-no-hatch-figures": ({ species }) =>
    `No hatching days are known for ${species}, neither from your own spawns nor from print. Note when it hatches, and the next one will be told.`,
  "breeding-too-many-go": ({ asked, there }) => `${asked} cannot go: at most ${there} are there.`,
};
