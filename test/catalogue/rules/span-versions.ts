// Cases of the rule span-versions.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "one version alone": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", only: ["R1A"] }];
    },
    "up to, but not": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", upTo: "R1A", except: ["R1"] }];
    },
  },
  bad: {
    "a version the family lacks": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", from: "R1B" }];
    },
    "a reversed span": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", from: "R1A", upTo: "R1" }];
    },
    "a span before the first version": (c) => {
      c.conflict.tx!.when.firmware = [{ family: "tm", before: "R1" }];
      delete c.conflict.tx!.when.boards;
    },
    "a span that ends twice": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", upTo: "R1A", before: "R1A" }];
    },
    "an exception outside the span": (c) => {
      c.card.tc!.needs!.firmware = [{ family: "tm", from: "R1A", except: ["R1"] }];
    },
  },
} satisfies RuleCases;
