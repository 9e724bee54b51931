import { showEstimate, showNumber, showVolume } from "../../src/core/quantity/show.ts";
import type { Container } from "../../src/core/tank/container.ts";
import { netVolume } from "../../src/core/tank/net-volume.ts";
import { readContainers } from "../../src/core/tank/read-containers.ts";
import { showContainer } from "../../src/core/tank/show-container.ts";
import {
  answerReply,
  type Context,
  type Option,
  quoted,
  type Reply,
  reading,
  UserError,
  words,
} from "../../src/kit/index.ts";
import type { Tank } from "../../src/records/tank.ts";

export const CONTAINERS_EXAMPLE =
  "display 240x100x70 cm inside, level 62 cm, rock 180 kg; 3 x drum 110 L measured";

export interface Described {
  readonly containers: readonly Container[];
  readonly typed: string;
}

/** A whole system in one text. */
export function containers(description: string): Option<Described, true> {
  return reading(description, CONTAINERS_EXAMPLE, (text, { habits }) => {
    const read = readContainers(text, habits);
    return read.kind === "read" ? { ...read, value: { containers: read.value, typed: text } } : read;
  });
}

export function tankName(description: string): Option<string, true> {
  const option = words(description, "Lagoon", 40);
  return {
    ...option,
    read(text, context) {
      if (!/[\p{L}\p{N}]/u.test(text))
        return {
          kind: "unreadable",
          message: `${quoted(text)} has no letter or digit to call a tank by. Try “Lagoon”.`,
        };
      return option.read(text.replace(/\s+/g, " "), context);
    },
  };
}

/** Throws: UserError unless the tank is the member's own. */
export function ownOnly(tank: Tank, { member }: Context): Tank {
  if (tank.owner !== member.id)
    throw new UserError(
      "not-yours",
      `${tank.name} belongs to another member, and this is theirs alone to do. You may look at its water and readings, and use it in sums.`,
    );
  return tank;
}

/** The member's own tank, named or default. Throws: UserError when they keep none. */
export function ownTank(given: Tank | undefined, context: Context): Tank {
  const tank = given ?? context.records.tanks.own(context.member.id)[0];
  if (tank === undefined)
    throw new UserError(
      "not-found",
      `You keep no tank here yet. Describe one: /tank add name:Lagoon kind:marine containers:${CONTAINERS_EXAMPLE}`,
    );
  return ownOnly(tank, context);
}

/** A tank's water, container by container, and how it was got. */
export function volumeReply(tank: Tank, context: Context, before: readonly string[]): Reply {
  const { habits } = context.member;
  return answerReply(netVolume(tank.containers), context, {
    title: tank.name,
    headline: ({ totalL }) => `${showVolume(totalL, habits)} of water, net`,
    body: ({ displayL }) => [
      ...before,
      ...(displayL === undefined || tank.containers.length < 2
        ? []
        : [`The display holds ${showVolume(displayL, habits)} of it.`]),
    ],
    table: (net) => ({
      columns: ["container", "role", "net L", "share", "from"],
      rows: net.containers.map((each) => [
        each.name,
        each.role,
        showEstimate(each.netL, "", { significant: 3 }),
        each.share === undefined ? "apart" : `${showNumber(each.share * 100, 2)} %`,
        each.basis === "label" ? "label, not measured" : each.basis,
      ]),
    }),
  });
}

export function saidBack(described: Described): string {
  return `Understood: ${described.containers.map((each) => showContainer(each)).join("; ")}.`;
}
