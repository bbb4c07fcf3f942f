// Cases of the rule source-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a source in words": (c) => {
      c.board["tb-1"]!.fixed[0]!.source = "club night, May 1991";
    },
  },
  bad: {
    "a name that is not declared": (c) => {
      c.board["tb-1"]!.fixed[0]!.source = "mann";
    },
    "a name nothing like those declared": (c) => {
      c.bus.tb!.interrupts[1]!.share = { is: "never", source: "leaflet" };
    },
  },
} satisfies RuleCases;
