// At most one mode is the one to fall back to.
import { itemAt } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const safestMode: Rule = {
  name: "safest-mode",
  says: "At most one mode of a build is the safest.",
  why: "The machine falls back into one mode when the plug is out; it cannot fall back into two.",
  mend: "Leave safest with the mode in which least can go wrong.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      const safe = [...(build.modes ?? []).entries()].filter(([, m]) => m.safest);
      for (const [i, m] of safe.slice(1))
        yield {
          says: `${m.id} and ${itemAt(safe, 0)[1].id} are both called the safest mode.`,
          at: ref("build", build.id, "modes", i, "safest"),
          related: [{ says: "The other one.", at: ref("build", build.id, "modes", itemAt(safe, 0)[0], "safest") }],
          hint: "Keep the one the machine should fall into when a wire breaks.",
        };
    }
  },
};
