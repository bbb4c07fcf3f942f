// A fact that refers to a source by a short name refers to one the record declares.

import { type Kind, kinds } from "../../records/index.js";
import { allOf, type Catalogue } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const sourceNames: Rule = {
  name: "source-names",
  says: "A source a fact refers to by a short name is declared in the record.",
  why: "A fact that leads to no source cannot be weighed or looked up.",
  mend: "Write the short name as the record's sources have it, or add the source.",
  scope: ["bus", "board", "firmware", "card", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const { kind, record } of everything(catalogue)) {
      const declared = (record.sources ?? []).map((s) => s.id);
      for (const { path, source } of sourcesIn(record, [])) {
        // Words are free: "club night, May" is a source in itself. One word alone is meant as a name.
        if (/\s/.test(source) || declared.includes(source)) continue;
        const home = record.sources ? ref(kind, record.id, "sources") : undefined;
        yield noSuch("source of this record", source, declared, ref(kind, record.id, ...path), home);
      }
    }
  },
};

function* everything(catalogue: Catalogue) {
  for (const kind of Object.keys(kinds) as Kind[]) for (const record of allOf(catalogue, kind).values()) yield { kind, record };
}

function* sourcesIn(value: unknown, path: readonly (string | number)[]): Iterable<{ path: readonly (string | number)[]; source: string }> {
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    const here = [...path, Array.isArray(value) ? Number(key) : key];
    if (key === "source" && typeof inner === "string") yield { path: here, source: inner };
    else yield* sourcesIn(inner, here);
  }
}
