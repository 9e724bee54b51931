import {
  type Context,
  choice,
  defineCommand,
  optional,
  quantity,
  quoted,
  type Reply,
  tankOption,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { sayWhen } from "../../src/kit/when-option.ts";
import type { MemberId } from "../../src/records/ids.ts";
import type { Reader } from "../../src/records/tank.ts";
import { ownTank } from "./shared.ts";

export default defineCommand({
  name: "share",
  summary: "Let this club, or one helper, read a tank of yours; or stop that",
  options: {
    tank: tankOption("Which tank"),
    to: optional(choice("The club you are asking from, or you alone again", ["club", "only me"])),
    helper: optional(words("One member instead, e.g. @bruno", "@bruno", 60)),
    for: optional(quantity.span("How long they may read it; until you end it if left out", "2 weeks")),
  },
  examples: [
    "/tank share tank:Lagoon",
    "/tank share tank:Lagoon helper:@bruno for:2 weeks",
    "/tank share tank:Lagoon to:only me",
  ],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const { tanks } = context.records;
    const owner = context.member.id;
    if (input.to === "only me" && input.helper === undefined) {
      tanks.unshare(owner, tank.id);
      return told(`${tank.name} is private again`, "Only you can see it.", context);
    }
    const reader = input.helper === undefined ? clubOf(context) : helperOf(input.helper, context);
    if (input.to === "only me") {
      tanks.unshare(owner, tank.id, reader);
      return told(`${tank.name} is closed to that helper`, "Others it is shared with still see it.", context);
    }
    const until = input.for === undefined ? undefined : endOf(input.for.estimate.best, context);
    tanks.share(owner, tank.id, { reader, ...(until === undefined ? {} : { until }) });
    return told(
      `${tank.name} is now open to ${reader.kind === "club" ? "this club" : "your helper"}`,
      `They may read it and use it in sums${until === undefined ? "" : ` until ${sayWhen(until, context.member, context.now)}`}; nobody but you can change it. /tank share to:only me ends it.`,
      context,
    );
  },
});

function clubOf({ request }: Context): Reader {
  if (request.club === undefined)
    throw new UserError(
      "not-now",
      "This is a private talk: type it in the club's server, so that it is clear with whom you share, or name a helper.",
    );
  return { kind: "club", id: request.club };
}

/** A mention on a chat platform, or a name in the terminal; of the same place as the owner. */
function helperOf(text: string, { member }: Context): Reader {
  const [place = ""] = member.id.split(":");
  const mentioned = /^<@!?(\d{5,20})>$/.exec(text)?.[1];
  const name = mentioned ?? /^@?([\p{L}\p{N}_.-]{1,32})$/u.exec(text)?.[1];
  if (name === undefined || (place === "discord" && !/^\d{5,20}$/.test(name)))
    throw new UserError(
      "bad-input",
      `${quoted(text)} is nobody I can find. Mention the member, e.g. @bruno.`,
    );
  const id = `${place}:${name.toLowerCase()}` as MemberId;
  if (id === member.id) throw new UserError("bad-input", "That is you: you can read your own tanks already.");
  return { kind: "helper", id };
}

function endOf(hours: number, { now }: Context): string {
  const end = new Date(now + Math.min(hours, LONGEST_HOURS) * HOUR_MS);
  return end.toISOString();
}

const HOUR_MS = 3_600_000;
/** Ten years. */
const LONGEST_HOURS = 87_600;

function told(title: string, line: string, { audience }: Context): Reply {
  return { kind: "reply", ok: true, title, body: [line], cautions: [], audience };
}
