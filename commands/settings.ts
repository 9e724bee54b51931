import { IANAZone } from "luxon";
import type { Habits } from "../src/core/quantity/read.ts";
import { GRAVITY_SCALE_NAMES, GRAVITY_SCALES, sayGravityScale } from "../src/kit/gravity-scales.ts";
import {
  type Context,
  choice,
  defineCommand,
  optional,
  quoted,
  type Reply,
  reading,
  UserError,
} from "../src/kit/index.ts";

const zone = reading("Your time zone, e.g. Europe/Lisbon", "Europe/Lisbon", (text) =>
  IANAZone.isValidZone(text)
    ? { kind: "read", value: text, readAs: text }
    : {
        kind: "unreadable",
        message: `${quoted(text)} is not a time zone I know. Try “Europe/Lisbon”, “America/Chicago” or “UTC”.`,
      },
);

export default defineCommand({
  name: "settings",
  summary: "How you write and measure: gallons, decimal mark, hydrometer, time zone",
  options: {
    gallon: optional(choice("What you mean by “gal”", ["US", "imperial"])),
    decimal: optional(choice("Your mark between whole and part", ["point", "comma"])),
    gravity: optional(choice("The two temperatures of your specific gravity scale", GRAVITY_SCALE_NAMES)),
    conductivity: optional(choice("What your conductivity meter shows", ["at 25 °C", "as measured"])),
    zone: optional(zone),
    for: optional(choice("For you, or the club's default (stewards only)", ["me", "club"])),
    reset: optional(choice("Forget all these settings of yours", ["yes"])),
  },
  examples: ["/settings", "/settings gallon:US zone:America/Chicago", "/settings gravity:25/25 °C"],
  run(input, context): Reply {
    const { records, member, request } = context;
    const { gallon, decimal, conductivity } = input;
    const habits: Habits = {
      ...(gallon === undefined ? {} : { gallon }),
      ...(decimal === undefined ? {} : { decimal }),
      ...(conductivity === undefined ? {} : { conductivity }),
      ...(input.gravity === undefined ? {} : { gravity: GRAVITY_SCALES[input.gravity] }),
    };
    if (input.for === "club") {
      if (input.zone !== undefined)
        throw new UserError(
          "bad-input",
          "A club has no time zone of its own: each member sets theirs. Nothing was set.",
        );
      return {
        ...shown(setForClub(habits, context), undefined),
        title: "The club's defaults",
        audience: context.audience,
      };
    }
    if (input.reset === "yes") records.members.forgetHabits(member.id);
    if (Object.keys(habits).length > 0) records.members.remember(member.id, habits);
    if (input.zone !== undefined) records.members.setZone(member.id, input.zone);
    const now = records.members.member(member.id, request.club);
    return { ...shown(now.habits, now.zone), title: "Your settings", audience: context.audience };
  },
});

/** Sets the club's defaults and returns all of them. Throws: UserError for whoever may not. */
function setForClub(habits: Habits, { request, records }: Context): Habits {
  if (request.club === undefined)
    throw new UserError("not-now", "This is a private talk: set the club's defaults in its server.");
  if (!request.isSteward)
    throw new UserError(
      "not-yours",
      "Only those who may manage the server can set the club's defaults. Leave out for: to set yours.",
    );
  return records.members.setClubHabits(request.club, habits);
}

function shown(habits: Habits, timeZone: string | undefined): Omit<Reply, "title" | "audience"> {
  const { gallon, decimal, gravity, conductivity } = habits;
  return {
    kind: "reply",
    ok: true,
    body: [
      `“gal” means: ${gallon === undefined ? "asked once" : `${gallon} gallons`}.`,
      `Decimal mark: ${decimal ?? "point or comma; asked about when unclear"}.`,
      `Specific gravity scale: ${gravity === undefined ? "asked once" : sayGravityScale(gravity)}.`,
      `Conductivity: ${conductivity ?? "asked once"}.`,
      ...(timeZone === undefined ? [] : [`Time zone: ${timeZone}.`]),
    ],
    cautions: [],
  };
}
