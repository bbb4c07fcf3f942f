// Cases of the rule dangling-reference.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card that needs a card on record": (c) => {
      const { enable: _, ...tc } = c.card.tc!;
      c.card.other = {
        ...tc,
        id: "other",
        name: "Other card",
        model: "other",
        needs: { cards: [{ any_of: ["tc"], why: "Its clock." }] },
      };
    },
  },
  bad: {
    "an id with a slip": (c) => {
      c.card.tc!.needs!.cards = [{ any_of: ["tcc"], why: "Its clock." }];
    },
    "an id of nothing like it": (c) => {
      c.build.tbd!.at_hand!.parts = ["zz-9000"];
    },
    "an id of digits, which stands in quotes": (c) => {
      const { sources } = c.part["t-r"] ?? {};
      c.part["27256"] = { id: "27256", name: "Device of digits", ...(sources ? { sources } : {}), type: "sundry", what: "A socket." };
      Object.assign(c.build.tbd?.at_hand ?? {}, { parts: ["27266"] });
    },
    "a part that is gone": (c) => {
      c.conflict.tx!.remedies = [{ says: "Fit a pull-up.", leaves: "nothing", costs: "part", part: "t-resistor" }];
    },
  },
} satisfies RuleCases;
