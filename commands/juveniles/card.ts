import { QUARANTINE_DAYS } from "../../src/core/breeding/calendar.ts";
import { caution } from "../../src/core/result.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { lineageLines } from "../../src/kit/breeding/lineage.ts";
import { anyBatchOption } from "../../src/kit/breeding/options.ts";
import { handoverCautions, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";
import { printableHtml, printableText } from "../../src/kit/printable-page.ts";

export default defineCommand({
  name: "card",
  summary: "The lineage card that goes with the young of a batch, to print",
  options: { batch: anyBatchOption("Which batch") },
  examples: ["/juveniles card batch:B3"],
  run({ batch }, context): Reply {
    const group = groupOf(context);
    const lines = lineageLines(batch, group);
    const keeping = [
      `Quarantine: ${QUARANTINE_DAYS} days, with nets and buckets of its own.`,
      "Never release them, nor their water; check with your authority what may be kept and passed on.",
      "Pass this card on with them.",
    ];
    const page = {
      title: `${batch.species}, ${batch.id}`,
      note: `From ${group.state.name}, ${group.today}.`,
      sections: [
        { heading: "Descent", isOrdered: false, lines: [...lines] },
        { heading: "Keeping", isOrdered: false, lines: keeping },
      ],
    };
    return told(context, `Lineage card: ${batch.id}`, lines, {
      cautions: [
        caution("breeding-quarantine-reminder", { days: QUARANTINE_DAYS }),
        ...handoverCautions(batch.species),
      ],
      files: [
        {
          name: `lineage-${batch.id}.html`,
          mediaType: "text/html",
          content: printableHtml(page),
          encoding: "utf8",
          altText: printableText(page),
        },
      ],
    });
  },
});
