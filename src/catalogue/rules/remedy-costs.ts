// A remedy that needs a part names it where the part has a record, and remedies stand cheapest first.
import { itemAt, Remedy } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

/** Dearer towards the end, as the schema lists them. */
const order = Remedy.properties.costs.enum as readonly string[];

export const remedyCosts: Rule = {
  name: "remedy-costs",
  says: "Remedies stand cheapest first, and one that names a part costs at least a part.",
  why: "The first remedy is what people try first; a dear one in front costs them a part or a trace for nothing.",
  mend: "Order the remedies by what they cost, and say costs: part where a part is named.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const c of catalogue.conflicts.values()) {
      const remedies = c.remedies ?? [];
      for (const [i, r] of remedies.entries()) {
        const at = ref("conflict", c.id, "remedies", i, "costs");
        const dearer = remedies.findIndex((o, j) => j < i && order.indexOf(o.costs) > order.indexOf(r.costs));
        if (dearer >= 0)
          yield {
            level: "warning",
            says: `This remedy (${r.costs}) stands after a dearer one (${itemAt(remedies, dearer).costs}).`,
            at,
            related: [{ says: "The dearer one.", at: ref("conflict", c.id, "remedies", dearer, "costs") }],
            hint: `Move it up; from cheap to dear: ${order.join(", ")}.`,
          };
        if (r.part !== undefined && order.indexOf(r.costs) < order.indexOf("part"))
          yield {
            says: `The remedy names a part, but is said to cost only a ${r.costs}.`,
            at,
            related: [{ says: "The part.", at: ref("conflict", c.id, "remedies", i, "part") }],
            hint: "Write costs: part, or leave the part out.",
          };
      }
    }
  },
};
