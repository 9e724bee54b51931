import { waterNameOf } from "../../src/core/breeding/ledger/advance.ts";
import { type DeathLook, deathLook, notedJustNow } from "../../src/core/breeding/ledger/death-alert.ts";
import type { Fact } from "../../src/core/breeding/ledger/facts.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { withDeaths } from "../../src/core/breeding/ledger/with-deaths.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { recentReceivers } from "../../src/core/breeding/tonight.ts";
import { caution } from "../../src/core/result.ts";
import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Outcome, optional, words } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

interface Noted {
  readonly by: number;
  readonly number: number;
}

/** What became of the line: written, found to be the same as another's, or to be asked about. */
type Written =
  | { readonly kind: "ask"; readonly last: Noted }
  | { readonly kind: "same"; readonly last: Noted }
  | { readonly kind: "written"; readonly look: DeathLook; readonly water: string };

export default defineCommand({
  name: "deaths",
  summary: "Note dead animals of a batch: weighed against its own mean, with an alert when out of line",
  options: {
    number: numberOption("How many were found dead"),
    batch: batchOption(),
    when: optional(whenOption("When; now if left out")),
    note: optional(words("What was seen", "two with torn fins", 200)),
  },
  examples: ["/batch deaths number:6 batch:grow-out"],
  run({ number, batch, when, note }, context): Outcome {
    const answer = context.request.answers["same"];
    const written = writeFacts<Written>(
      context,
      ({ state, me, today }) => {
        const current = state.batches[keyOf(batch.id)] ?? batch;
        // Looked up within the lock: two who log at once cannot both miss each other.
        const last = notedJustNow(current, me.number, context.now);
        if (last !== undefined && answer === undefined && when === undefined)
          return { facts: [], result: { kind: "ask", last } };
        if (last !== undefined && answer === "same")
          return {
            facts: [{ kind: "seen too", event: last.event }],
            result: { kind: "same", last },
          };
        const look = deathLook(withDeaths(current, today, number), today);
        const water = waterNameOf(state, current.tank);
        const isNewAlert = look.isAlarming && when === undefined && state.alerts[keyOf(water)] === undefined;
        const facts: readonly Fact[] = [
          { kind: "died", batch: batch.id, number },
          ...(isNewAlert ? [{ kind: "alert raised", water, batch: batch.id } as const] : []),
        ];
        return { facts, result: { kind: "written", look, water } };
      },
      { at: when, note },
    );
    const group = groupOf(context);
    if (written.kind === "ask")
      return {
        kind: "question",
        isMistake: false,
        title: `${batch.id}: the same event?`,
        text: `${nameOf(group, written.last.by)} noted ${written.last.number} dead in ${batch.id} a moment ago. Are your ${number} the same?`,
        body: ["Nothing has been counted twice: choose, and it is kept."],
        cautions: [],
        choices: [
          { label: "The same event", settle: { answers: { same: "same" } } },
          { label: `${number} more`, settle: { answers: { same: "more" } } },
        ],
        audience: "asker",
      };
    if (written.kind === "same")
      return told(context, `${batch.id}: the same event`, [
        `Noted as seen by you, too; ${written.last.number} dead stand in the ledger once.`,
      ]);
    const { look, water } = written;
    const after = group.state.batches[keyOf(batch.id)];
    const told30 = recentReceivers(group.state, water, group.today).map((each) => nameOf(group, each));
    return told(
      context,
      `${batch.id} in ${batch.tank}: ${number} dead noted`,
      [
        `Today ${look.today}, against a mean of ${Number(look.meanPerDay.toPrecision(2))} a day over the ${look.days} days before.`,
        ...(after?.alive === undefined ? [] : [`Left: ${sayCount(after.alive)}.`]),
        ...(look.isAlarming ? [] : ["Within its own ordinary: no alert."]),
      ],
      {
        cautions: look.isAlarming
          ? [
              caution(
                "breeding-deaths-alert",
                {
                  deaths: look.today,
                  meanPerDay: look.meanPerDay,
                  days: look.days,
                  water,
                },
                "danger",
              ),
              caution("breeding-frozen", { water }),
              caution("breeding-see-vet", {}),
              ...(told30.length === 0 ? [] : [caution("breeding-told-recipients", { people: told30 })]),
            ]
          : [],
      },
    );
  },
});
