import { ZONES } from "../../src/core/breeding/ledger/facts.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { groupOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { litresOption, nameOption, numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply } from "../../src/kit/index.ts";

const MOST_QUARANTINE_DAYS = 365;

export default defineCommand({
  name: "tank",
  summary: "Note a tank of the breeding group, or begin its quarantine",
  options: {
    name: nameOption("What everybody calls it", "tank 3"),
    litres: litresOption("The water really in it", "40 L"),
    zone: choice("What it is for, from the most delicate to the least", ZONES),
    water: optional(nameOption("Tanks that share water share this name; its own if left out", "rack A")),
    quarantine: optional(numberOption("Begin a quarantine of so many days now", "30", MOST_QUARANTINE_DAYS)),
  },
  examples: ["/group tank name:tank 3 litres:40 L zone:hatchery water:rack A"],
  run({ name, litres, zone, water, quarantine }, context): Reply {
    writeFacts(context, ({ state }) => ({
      facts: [
        {
          kind: "tank noted",
          tank: name,
          litres: litres,
          water: water ?? state.tanks[keyOf(name)]?.water ?? name,
          zone,
        },
        ...(quarantine === undefined
          ? []
          : [{ kind: "quarantine begun", tank: name, days: quarantine } as const]),
      ],
      result: undefined,
    }));
    const place = groupOf(context).state.tanks[keyOf(name)];
    return told(context, `${name} noted`, [
      `${showNumber(litres, 3)} L, ${zone}; shares water as “${place?.water ?? name}”.`,
      ...(place?.quarantineUntil === undefined
        ? []
        : [
            `Quarantine until ${sayDay(place.quarantineUntil)}; every arrival in that water starts the days anew. It has nets and buckets of its own.`,
          ]),
    ]);
  },
});
