import { GLOSSARY, GLOSSARY_WORDS, type Term, termNamed } from "../src/core/help/glossary.ts";
import {
  capitalised,
  defineCommand,
  listed,
  optional,
  quoted,
  type Reply,
  reading,
} from "../src/kit/index.ts";
import { nearest } from "../src/kit/nearest.ts";

export default defineCommand({
  name: "glossary",
  summary: "Words of the trade in plain words",
  options: {
    word: optional(
      reading<Term>(
        "The word; all of them if left out",
        "cycling",
        (text) => {
          const found = termNamed(text);
          if (found !== undefined) return { kind: "read", value: found, readAs: found.term };
          const close = nearest(text, GLOSSARY_WORDS);
          return {
            kind: "unreadable",
            message: `${quoted(text)} is not explained here yet. ${close === undefined ? "/glossary lists every word." : `Did you mean ${quoted(close)}?`}`,
          };
        },
        (typed) => GLOSSARY_WORDS.filter((word) => word.toLowerCase().startsWith(typed.toLowerCase())),
      ),
    ),
  },
  examples: ["/glossary", "/glossary word:cycling"],
  audience: "channel",
  run({ word }, { audience }): Reply {
    return word === undefined
      ? {
          kind: "reply",
          ok: true,
          title: `${GLOSSARY.length} words of the trade`,
          body: [GLOSSARY.map(({ term }) => term).join(" · "), "/glossary word:cycling explains one."],
          cautions: [],
          audience,
        }
      : {
          kind: "reply",
          ok: true,
          title: capitalised(word.term),
          body: [word.means, ...(word.also === undefined ? [] : [`Also called: ${listed(word.also)}.`])],
          cautions: [],
          audience,
        };
  },
});
