import { type HatchWindow, hatchWindow } from "../../src/core/breeding/hatch-window.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { fills } from "../../src/kit/ask.ts";
import { countIn } from "../../src/kit/breeding/counting.ts";
import { dayIn, groupOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { countOption, nameOption, pairOption, placeOption } from "../../src/kit/breeding/options.ts";
import {
  answerReply,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  UserError,
} from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

export default defineCommand({
  name: "eggs",
  summary: "Eggs seen in a tank: when they are likely to hatch",
  options: {
    tank: placeOption("Where the eggs are"),
    pair: optional(pairOption("Whose they are; the pair of that tank if left out")),
    species: optional(nameOption("Only where no pair is noted", "clownfish")),
    count: optional(countOption("How many: 420, about 500, 400-600")),
    temperature: optional(quantity.temperature("The water's temperature", "26.5 °C")),
    when: optional(whenOption("When they were seen; now if left out")),
  },
  examples: ["/spawn eggs tank:tank 3", "/spawn eggs tank:tank 3 count:about 500 temperature:26.5 °C"],
  run(input, context): Outcome {
    const group = groupOf(context);
    const { state } = group;
    const living = Object.values(state.pairs).filter(
      ({ tank, isParted }) => !isParted && keyOf(tank) === keyOf(input.tank.name),
    );
    const pair = input.pair ?? (living.length === 1 ? living[0] : undefined);
    if (pair === undefined && living.length > 1 && input.species === undefined)
      return {
        kind: "question",
        isMistake: false,
        title: `Eggs in ${input.tank.name}`,
        text: "Several pairs live there. Whose eggs are they?",
        body: [],
        cautions: [],
        choices: living.map(({ name }) => fills(name, "pair", name)),
        audience: "asker",
      };
    const [animal] = (pair?.animals ?? []).flatMap((name) => state.animals[keyOf(name)] ?? []);
    const species = input.species ?? animal?.species;
    if (species === undefined)
      throw new UserError(
        "bad-input",
        `No pair is noted in ${input.tank.name}: say the species, e.g. species:clownfish, or note the pair with /brood pair.`,
      );
    const at = input.when ?? new Date(context.now).toISOString();
    const eggs = input.count === undefined ? undefined : countIn(input.count, undefined);
    const temperatureC = input.temperature?.estimate.best;
    const batch = writeFacts(
      context,
      ({ state: now }) => {
        const id = `B${now.last.batch + 1}`;
        return {
          facts: [
            {
              kind: "spawned",
              batch: id,
              spawn: now.last.spawn + 1,
              species,
              tank: input.tank.name,
              ...(pair === undefined ? {} : { pair: pair.name }),
              ...(eggs === undefined ? {} : { eggs }),
              ...(temperatureC === undefined ? {} : { temperatureC }),
            },
          ],
          result: id,
        };
      },
      { at: input.when },
    );
    const answer = hatchWindow(
      { species, pair: pair?.name, laidDay: dayIn(state.zone, at), temperatureC },
      state.hatches,
    );
    return answerReply<HatchWindow>(answer, context, {
      title: `${batch}: ${species} eggs in ${input.tank.name}${pair === undefined ? "" : `, ${pair.name}`}`,
      headline: ({ from, until }) => `Hatching likely ${sayDay(from)} to ${sayDay(until)}`,
      body: ({ basis, next }) => [
        `From ${basis}.`,
        ...(next === undefined
          ? []
          : [`Then ${next.what}: look from ${sayDay(next.from)} to ${sayDay(next.until)}.`]),
        `/rota hatch batch:${batch} plans who watches; /spawn hatched batch:${batch} notes it.`,
      ],
    });
  },
});
