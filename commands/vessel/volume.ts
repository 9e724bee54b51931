import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { netVolume } from "../../src/core/tank/net-volume.ts";
import { readContainers } from "../../src/core/tank/read-containers.ts";
import { showContainer } from "../../src/core/tank/show-container.ts";
import { answerReply, askFor, defineCommand, fills, reading } from "../../src/kit/index.ts";

const TITLE = "Water in a container";
const EXAMPLE = "drum on its side 46.5 x 65 cm inside, level 15 cm";

export default defineCommand({
  name: "volume",
  summary: "Water in a container of any shape, less rock and sand; a measured fill goes first",
  options: {
    container: reading(
      "Shape, inside or outside, level, rock, sand; or litres measured",
      EXAMPLE,
      (text, { habits }) => {
        const read = readContainers(text, habits);
        return read.kind === "read" ? { ...read, value: { containers: read.value, typed: text } } : read;
      },
    ),
  },
  examples: [
    `/vessel volume container:${EXAMPLE}`,
    "/vessel volume container:bow front 183 x 46 x 65 cm bow 15 cm inside, level 60 cm, rock 40 kg",
    "/vessel volume container:box 260x100x78 cm outside, wall 25 mm, level 70 cm, sand 4 cm deep",
  ],
  audience: "channel",
  run({ container: { containers, typed } }, context) {
    const doubtful = containers.find(
      ({ volume }) => volume.kind === "dimensions" && volume.measured === "not said",
    );
    if (doubtful !== undefined && containers.length === 1)
      return askFor(
        context,
        { name: "container", example: EXAMPLE },
        {
          title: TITLE,
          text: "Are these inside or outside dimensions? Thick walls take up several per cent.",
          choices: [
            fills("inside", "container", `${typed}, inside`),
            fills("outside", "container", `${typed}, outside`),
          ],
        },
      );
    const { habits } = context.member;
    const net = netVolume(containers.map((each) => ({ ...each, inSystem: true })));
    // A single container is asked about here, so that none of them is called a display means nothing.
    const cautions = net.cautions.filter(({ code }) => code !== "no-display-named");
    return answerReply({ ...net, cautions }, context, {
      title: TITLE,
      headline: ({ totalL }) => `${showVolume(totalL, habits)} of water`,
      body: () => [`Read as ${containers.map(showContainer).join("; ")}.`],
      table: (it) => ({
        columns: ["container", "to the level, L", "rock takes, L", "sand takes, L", "water, L"],
        rows: it.containers.map((each) => [
          each.name,
          ...[each.grossL, each.rockL, each.sandL, each.netL].map((litres) =>
            showEstimate(litres, "", { significant: 3 }).trim(),
          ),
        ]),
      }),
    });
  },
});
