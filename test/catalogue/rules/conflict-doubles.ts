// Cases of the rule conflict-doubles.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "the same conditions in another class": (c) => {
      c.conflict.ty = { ...c.conflict.tx!, id: "ty", name: "Ty conflict", class: "timing" };
    },
  },
  bad: {
    "the same conflict": (c) => {
      c.conflict.ty = { ...c.conflict.tx!, id: "ty", name: "Ty conflict" };
    },
    "the same condition written otherwise, another status": (c) => {
      const { settle: _, ...tx } = structuredClone(c.conflict.tx!);
      c.conflict.ty = { ...tx, id: "ty", name: "Ty conflict", status: "disproved" };
      c.conflict.ty.when.cards![0]!.settings = { J1: "300" };
    },
    "the same condition, another effect": (c) => {
      const { loss: _, ...tx } = c.conflict.tx!;
      c.conflict.ty = { ...tx, id: "ty", name: "Ty conflict", effect: "blocks" };
    },
  },
} satisfies RuleCases;
