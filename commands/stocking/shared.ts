import type { MgNPerL } from "../../src/core/nitrogen/nitrogen-units.ts";
import { readFood } from "../../src/core/nitrogen/read-food.ts";
import { readLivestock } from "../../src/core/nitrogen/read-livestock.ts";
import { readMedia } from "../../src/core/nitrogen/read-media.ts";
import type {
  AnimalGroup,
  Food,
  Growth,
  InstalledMedia,
  StockingSituation,
} from "../../src/core/nitrogen/stocking-input.ts";
import { type Estimate, exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { readFlow } from "../../src/core/quantity/flow.ts";
import { isRead, type Read } from "../../src/core/quantity/read.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type Days, type LitresPerHour } from "../../src/core/quantity/units.ts";
import type { Caution } from "../../src/core/result.ts";
import {
  askFor,
  type Context,
  choice,
  type InputOf,
  type Option,
  optional,
  type Question,
  quantity,
  reading,
  type TakenFigure,
  tankInMind,
  tankOption,
} from "../../src/kit/index.ts";
import { tankSalinity, tankTemperature, tankVolume } from "../../src/kit/tank-figures.ts";
import type { Tank } from "../../src/records/tank.ts";

export const livestock = (description: string): Option<readonly AnimalGroup[], true> =>
  reading(description, "1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm", (text, { habits }) =>
    readLivestock(text, habits),
  );

export const food = (description: string): Option<readonly Food[], true> =>
  reading(description, "280 g prawn 3 times a week", (text, { habits }) => readFood(text, habits));

export const media = (description: string): Option<readonly InstalledMedia[], true> =>
  reading(description, "60 L ceramic rings; 40 L foam 20 ppi", (text, { habits }) => readMedia(text, habits));

/** What a stocking sum is made from; all of it may stand in the tank's notes. */
export const situationOptions = {
  food: optional(food("Food as given, e.g. 280 g prawn 3 times a week; your tank's if left out")),
  growth: optional(choice("Are they grown or growing?", ["adult", "growing"])),
  media: optional(media("Filter media, e.g. 60 L ceramic rings; your tank's if left out")),
  flow: optional(quantity.flow("What really passes the filter; your tank's if left out", "6000 L/h")),
  change: optional(quantity.fraction("Share of water you change each time", "30 %")),
  every: optional(quantity.span("How often you change it", "10 days")),
  volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
  salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
  temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
  tank: optional(tankOption()),
};

type SituationInput = InputOf<typeof situationOptions> & {
  readonly livestock?: readonly AnimalGroup[] | undefined;
};

export interface Situation {
  readonly situation: StockingSituation;
  readonly tank: Tank | undefined;
  readonly taken: readonly TakenFigure[];
  readonly cautions: readonly Caution[];
}

/** Puts typed figures and the tank's notes together; a question when volume, salinity or heat is missing. */
export function situationOf(input: SituationInput, context: Context, title: string): Situation | Question {
  const tank = tankInMind(input.tank, input.volume, context);
  const { habits } = context.member;
  const taken: TakenFigure[] = [];
  const noted = <T>(
    given: T | undefined,
    name: string,
    text: string | undefined,
    read: (text: string) => Read<T>,
  ): T | undefined => {
    if (given !== undefined || text === undefined || tank === undefined) return given;
    const again = read(text);
    if (!isRead(again)) return undefined;
    taken.push({ name, from: `${tank.name}, as noted`, readAs: again.readAs });
    return again.value;
  };
  const water = input.volume === undefined && tank !== undefined ? tankVolume(tank, context) : undefined;
  const volumeL = input.volume?.estimate ?? water?.estimate;
  if (volumeL === undefined)
    return askFor(
      context,
      { name: "volume", example: "2300 L" },
      { title, text: "How much water is in the system?" },
    );
  const keptSalinity =
    input.salinity === undefined && tank !== undefined ? tankSalinity(tank, context) : undefined;
  const salinity = input.salinity?.salinity ?? keptSalinity?.estimate;
  if (salinity === undefined)
    return askFor(
      context,
      { name: "salinity", example: "34 ppt" },
      { title, text: "How salty is the water? (0 ppt for fresh)" },
    );
  const keptHeat =
    input.temperature === undefined && tank !== undefined ? tankTemperature(tank, context) : undefined;
  const temperatureC = input.temperature?.estimate ?? keptHeat?.estimate;
  if (temperatureC === undefined)
    return askFor(
      context,
      { name: "temperature", example: "26 °C" },
      { title, text: "How warm is the water?" },
    );
  for (const each of [water, keptSalinity, keptHeat]) if (each !== undefined) taken.push(each.taken);
  const animals = noted(input.livestock, "animals", tank?.notes.livestock, (text) =>
    readLivestock(text, habits),
  );
  const foods = noted(input.food, "food", tank?.notes.food, (text) => readFood(text, habits));
  const beds = noted(input.media, "filter media", tank?.notes.media, (text) => readMedia(text, habits));
  const flow: Estimate<LitresPerHour> | undefined =
    input.flow?.estimate ??
    noted(undefined, "flow", tank?.notes.flow, (text) => readFlow(text, habits))?.estimate;
  const growth: Growth = input.growth ?? "not said";
  return {
    tank,
    taken,
    cautions: water?.cautions ?? [],
    situation: {
      volumeL,
      salinity,
      temperatureC,
      animals: animals ?? [],
      food: foods ?? [],
      growth,
      ...(beds === undefined ? {} : { media: beds }),
      ...(flow === undefined ? {} : { netFlowLPerH: flow }),
      ...(input.change === undefined || input.every === undefined
        ? {}
        : {
            waterChange: {
              changed: input.change,
              everyDays: mapEstimate(input.every.estimate, (hours) => as<Days>(hours / 24)).best,
              sourceNitrate: exactly(as<MgNPerL>(0)),
            },
          }),
    },
  };
}

/** How much of a capacity is taken: "50 % used (38–68)", or beyond it "needs 12 times (2–35) what there is". */
export function used(share: Estimate): string {
  return share.best > 1
    ? `needs ${showEstimate(share, "", { significant: 2 }).trim()} times what there is`
    : `${showEstimate(
        mapEstimate(share, (each) => each * 100),
        "%",
        { significant: 2 },
      )} used`;
}
