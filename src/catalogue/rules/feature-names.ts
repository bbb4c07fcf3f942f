// Features of firmware are declared by a family; versions drop only what was there; cards need only what exists.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const featureNames: Rule = {
  name: "feature-names",
  says: "A feature that is added, dropped or needed is declared by a firmware family.",
  why: "A feature nobody declares is brought by no firmware, so a card that needs it could run under none.",
  mend: "Write the feature as the firmware declares it, or declare it there first.",
  scope: ["firmware", "card"],
  *check({ catalogue }): Iterable<Draft> {
    const all = new Set<string>();
    for (const family of catalogue.firmware.values()) {
      const declared = (family.features ?? []).map((f) => f.id);
      for (const f of declared) all.add(f);
      const there = new Set<string>();
      for (const [v, version] of family.versions.entries()) {
        for (const field of ["adds", "removes"] as const) {
          for (const [i, f] of (version[field] ?? []).entries()) {
            const at = ref("firmware", family.id, "versions", v, field, i);
            const home = family.features ? ref("firmware", family.id, "features") : undefined;
            if (!declared.includes(f)) yield noSuch("feature of this firmware", f, declared, at, home);
            else if (field === "removes" && !there.has(f))
              yield {
                says: `${version.id} drops ${f}, which no version before it has.`,
                at,
                hint: "Add it to the version that brought it, or leave it out here.",
              };
            else if (field === "adds" && there.has(f))
              yield {
                says: `${version.id} adds ${f}, which was there already.`,
                at,
                hint: "Leave it out; features stay until they are dropped.",
              };
          }
          for (const f of version.adds ?? []) if (field === "adds") there.add(f);
        }
        for (const f of version.removes ?? []) there.delete(f);
      }
    }
    for (const card of catalogue.cards.values())
      for (const [i, f] of (card.needs?.features ?? []).entries())
        if (!all.has(f)) yield noSuch("feature of any firmware", f, all, ref("card", card.id, "needs", "features", i));
  },
};
