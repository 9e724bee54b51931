import { describe, expect, it } from "vitest";
import { cloudyTriage } from "../../../../src/core/cloudy/cloudy-triage.ts";
import { CLOUDY_FINDINGS, URGENT_ACTIONS } from "../../../../src/core/cloudy/findings.ts";
import {
  CLOUDY_QUESTIONS,
  type CloudyAnswers,
  type CloudyQuestionId,
  nextCloudyQuestion,
} from "../../../../src/core/cloudy/questions.ts";
import { SOURCES } from "../../../../src/core/sources.ts";

/** Every way through the questions. */
function everyWay(answers: CloudyAnswers = {}, asked: readonly string[] = []): readonly CloudyAnswers[] {
  const next = nextCloudyQuestion(answers);
  if (next === undefined) return [answers];
  expect(asked).not.toContain(next);
  return CLOUDY_QUESTIONS[next].answers.flatMap((answer) =>
    everyWay({ ...answers, [next]: answer }, [...asked, next]),
  );
}

const ways = everyWay();
const quiet = ways.filter(({ animals }) => animals === "all as usual");

describe("the questions", () => {
  it("end on every way, and ask about the animals first", () => {
    // By hand: white 4·3·3·6, green 4·3·3·3, brown 4·3, specks 4·3·6, bubbles 4·6, and three kinds of trouble.
    expect(ways).toHaveLength(216 + 108 + 12 + 72 + 24 + 3);
    expect(nextCloudyQuestion({})).toBe("animals");
  });

  it("can each be reached, and so can every finding", () => {
    for (const id of Object.keys(CLOUDY_QUESTIONS) as CloudyQuestionId[])
      expect(ways.some((way) => way[id] !== undefined)).toBe(true);
    const found = new Set(quiet.flatMap((way) => cloudyTriage(way).value.findings.map(({ name }) => name)));
    expect(CLOUDY_FINDINGS.map(({ name }) => name).filter((name) => !found.has(name))).toEqual([]);
  });

  it("name only questions and answers there are", () => {
    const conditions: readonly object[] = [
      ...CLOUDY_FINDINGS.map(({ when }) => when),
      ...Object.values(CLOUDY_QUESTIONS).flatMap((each) => ("askedWhen" in each ? [each.askedWhen] : [])),
    ];
    for (const when of conditions)
      for (const [id, answers] of Object.entries(when) as [CloudyQuestionId, readonly string[]][])
        for (const answer of answers) expect(CLOUDY_QUESTIONS[id].answers).toContain(answer);
  });

  it("fit the fronts: short enough to be a choice", () => {
    for (const { text, answers } of Object.values(CLOUDY_QUESTIONS)) {
      expect(text.length).toBeLessThanOrEqual(100);
      for (const answer of answers) expect(answer.length).toBeLessThanOrEqual(80);
    }
  });
});

describe("the triage", () => {
  it("finds something to test and to do on every way, and always says it is no diagnosis", () => {
    for (const way of ways) {
      const { value, cautions } = cloudyTriage(way);
      expect(value.tests).toContain("ammonia");
      expect(cautions.map(({ code }) => code)).toContain("triage-is-no-diagnosis");
    }
    expect(quiet.filter((way) => cloudyTriage(way).value.actions.length === 0)).toEqual([]);
  });

  it("puts air first, then a matched change, and a vet, whenever animals are in trouble", () => {
    for (const animals of ["gasping at the surface", "lying or listless", "some dead"] as const) {
      const { value, cautions } = cloudyTriage({ animals });
      expect(value.urgent).toBe(URGENT_ACTIONS);
      expect(cautions[0]).toMatchObject({ code: "animals-in-distress", level: "danger" });
    }
    expect(URGENT_ACTIONS[0]).toMatch(/^Air first/);
    const change = URGENT_ACTIONS.find((each) => each.startsWith("Change"));
    expect(change).toMatch(/temperature and salinity/);
    expect(URGENT_ACTIONS.at(-1)).toMatch(/vet/);
  });

  it("says on whose word each finding stands, and sells nothing", () => {
    for (const { source, says, actions, tests } of CLOUDY_FINDINGS) {
      expect(Object.keys(SOURCES)).toContain(source);
      const words = [says, ...actions, ...tests].join(" ");
      expect(words).not.toMatch(
        /\bbuy\b|product|flocculant|clarifier|algaecide|antibiotic|steriliser|\bmg of\b/i,
      );
    }
  });

  it("never lets carbon or a smell of sulphide pass without its warning", () => {
    for (const way of quiet) {
      const codes = cloudyTriage(way).cautions.map(({ code }) => code);
      if (way.smell === "rotten eggs") expect(codes).toContain("sulphide-in-the-sand");
      if (way.look === "white or grey haze" && way.lately === "carbon source dosed")
        expect(codes).toContain("stop-carbon-now");
    }
  });
});
