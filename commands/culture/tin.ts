import { hatchingEfficiency } from "../../src/core/breeding/brine-shrimp.ts";
import { testFigures } from "../../src/core/breeding/hatch-test.ts";
import { writeFacts } from "../../src/kit/breeding/group.ts";
import { countOption, nameOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, quantity, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "tin",
  summary: "Keep how well a tin of brine shrimp cysts hatches, from a hatching test",
  options: {
    name: nameOption("What the group calls the tin, with its year", "blue tin 2026"),
    count: countOption("Nauplii in samples of the test, e.g. 125 130 118 in 0.25 mL"),
    water: quantity.volume("Water of the test", "800 mL"),
    cysts: quantity.mass("Cysts put in", "1.6 g"),
  },
  examples: ["/culture tin name:blue tin 2026 count:125 130 118 in 0.25 mL water:800 mL cysts:1.6 g"],
  run({ name, count, water, cysts }, context): Reply {
    if (count.kind !== "scoops")
      throw new UserError(
        "bad-input",
        "The test is counted in samples of a known volume. Try “125 130 118 in 0.25 mL”.",
      );
    const test = testFigures(count, water.estimate.best, cysts.estimate.best);
    if (test === undefined)
      throw new UserError("bad-input", "From that test nothing hatched, or nothing was put in.");
    const naupliiPerG = hatchingEfficiency(test.meanPer250uL, test.flaskML, test.cystsG);
    writeFacts(context, () => ({
      facts: [{ kind: "tin tested", tin: name, naupliiPerG }],
      result: undefined,
    }));
    return told(context, `${name}: ${Math.round(naupliiPerG).toLocaleString("en")} nauplii per gram`, [
      "Nauplii per gram of product, not per hundred cysts: the two are never mixed. It falls with age; test again in some months.",
    ]);
  },
});
