// A switch joins terminals it has, in positions it has.
import { partsOfType } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const switchContacts: Rule = {
  name: "switch-contacts",
  says: "A switch says for each of its positions which of its terminals are joined, and uses every terminal.",
  why: "Wires and the proof of the wiring follow from what each position joins.",
  mend: "Say for every position which terminals are joined, as a meter shows it; use every terminal.",
  scope: ["part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const s of partsOfType(catalogue, "switch")) {
      const at = (...path: (string | number)[]) => ref("part", s.id, ...path);
      for (const [position, pairs] of Object.entries(s.closes)) {
        if (!s.positions.includes(position))
          yield { ...noSuch("position of this switch", position, s.positions, at("closes", position), at("positions")), on: "key" };
        for (const [i, pair] of pairs.entries()) {
          const where = at("closes", position, i);
          for (const [j, t] of pair.entries())
            if (!s.terminals.includes(t))
              yield noSuch("terminal on this switch", t, s.terminals, at("closes", position, i, j), at("terminals"));
          if (pair[0] === pair[1]) yield { says: `${pair[0]} is joined to itself.`, at: where, hint: "Name two different terminals." };
        }
      }
      const untold = s.positions.filter((p) => !Object.hasOwn(s.closes, p));
      if (untold.length > 0)
        yield {
          says: `What is joined in position ${untold.join(", ")} is not said.`,
          at: at("closes"),
          on: "key",
          hint: "Add it; write [] where nothing is joined.",
        };
      const used = new Set(Object.values(s.closes).flat(2));
      const idle = s.terminals.filter((t) => !used.has(t));
      if (idle.length > 0)
        yield {
          level: "warning",
          says: `Terminal ${idle.join(", ")} is joined to nothing in any position.`,
          at: at("terminals"),
          hint: "Add what it is joined to, or take it out.",
        };
      if (s.positions.length > 1 && new Set(s.positions.map((p) => JSON.stringify(s.closes[p] ?? []))).size === 1)
        yield {
          says: "Every position joins the same terminals, so the switch switches nothing.",
          at: at("closes"),
          on: "key",
          hint: "Compare it with the data sheet.",
        };
    }
  },
};
