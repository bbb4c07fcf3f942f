// Cases of the rule setting-reach.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "positions that exclude one another": (c) => {
      c.card.tc!.impossible = [{ when: { J1: "300", J2: "3" }, why: "One jumper." }];
    },
  },
  bad: {
    "a setting with nothing to set": (c) => {
      c.card.tc!.settings!.push({ id: "J5", name: "Nothing", by: "solder", positions: [{ id: "on" }] });
    },
    "a position barred for good": (c) => {
      c.card.tc!.impossible = [{ when: { J1: "310" }, why: "Never fitted." }];
    },
    "the factory positions barred": (c) => {
      c.card.tc!.settings![1]!.default = "3";
      c.card.tc!.settings![0]!.default = "310";
    },
  },
} satisfies RuleCases;
