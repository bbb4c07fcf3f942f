// What works with a loss names the loss, in a conflict and in what a remedy leaves.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const lossNamed: Rule = {
  name: "loss-named",
  says: "A conflict that degrades, and a remedy that leaves something, name the loss.",
  why: "A machine that works with a loss is only an answer when its owner knows which loss.",
  mend: "Say in loss what no longer works, or works worse.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const c of catalogue.conflicts.values()) {
      const hint = "Add loss: what no longer works, or works less well.";
      if (c.effect === "degrades" && c.loss === undefined)
        yield { says: "The conflict degrades the machine, but the loss is not named.", at: ref("conflict", c.id, "effect"), hint };
      if (c.effect !== "degrades" && c.loss !== undefined)
        yield {
          level: "warning",
          says: `A loss is named, but the effect is ${c.effect}.`,
          at: ref("conflict", c.id, "loss"),
          hint: "Correct the effect, or say it in the cause.",
        };
      for (const [i, r] of (c.remedies ?? []).entries()) {
        if (r.leaves === "degrades" && r.loss === undefined)
          yield { says: "The remedy leaves a loss, but does not name it.", at: ref("conflict", c.id, "remedies", i, "leaves"), hint };
      }
    }
  },
};
