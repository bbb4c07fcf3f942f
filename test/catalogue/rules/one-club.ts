// Cases of the rule one-club.
import type { RuleCases } from "../../support/rule-cases.js";

const another = { id: "another", name: "Another club", about: "They keep other machines.", licence: "CC0" };

export default {
  good: {
    "a folder without a club record": (c) => {
      c.club = {};
    },
  },
  bad: {
    "two club records": (c) => {
      c.club.another = another;
    },
    "three club records, the first by file name kept": (c) => {
      c.club.another = another;
      c.club["zz-third"] = { ...another, id: "zz-third", name: "A third" };
    },
  },
} satisfies RuleCases;
