// A span of firmware names versions its family has, and holds at least one of them.
import type { FirmwareRange } from "../../records/index.js";
import { spans } from "../names.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";
import { inRange, rangeText, versionIndex } from "../versions.js";

export const spanVersions: Rule = {
  name: "span-versions",
  says: "A span of firmware names versions of its family, and at least one version lies in it.",
  why: "A range with a version nobody knows, or with no version in it, excludes or allows the wrong firmware.",
  mend: "Write the versions as the family lists them; from comes before upTo in its order.",
  scope: ["card", "conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const { from, span } of spans(catalogue)) {
      const family = catalogue.firmware.get(span.family);
      if (!family) continue;
      const below = (field: string, i?: number): Ref => ({ ...from, pointer: `${from.pointer}/${field}${i === undefined ? "" : `/${i}`}` });
      const home = ref("firmware", family.id, "versions");
      const names = family.versions.map((v) => v.id);
      const strange = [...named(span, below)].filter(({ version }) => versionIndex(family, version) < 0);
      for (const { version, at } of strange) yield noSuch(`version of ${family.name}`, version, names, at, home);
      if (strange.length > 0) continue;
      if (!names.some((v) => inRange(family, v, span))) {
        yield {
          says: `No version of ${family.name} lies in the span "${rangeText(span)}".`,
          at: from,
          expected: `a span over the order ${names.join(", ")}`,
          related: [{ says: "The order is declared here.", at: home }],
          hint: "The order of the list counts, not the spelling: from stands before upTo and before.",
        };
      } else if (span.upTo !== undefined && span.before !== undefined) {
        yield { says: "The span ends twice, with upTo and with before.", at: below("before"), hint: "Keep one of them." };
      } else {
        const { except, ...whole } = span;
        for (const [i, version] of (except ?? []).entries()) {
          if (inRange(family, version, whole)) continue;
          yield { says: `${version} is excepted, but does not lie in the span.`, at: below("except", i), hint: "Leave it out." };
        }
      }
    }
  },
};

function* named(span: FirmwareRange, below: (field: string, i?: number) => Ref): Iterable<{ version: string; at: Ref }> {
  for (const field of ["from", "upTo", "before"] as const) {
    const version = span[field];
    if (version !== undefined) yield { version, at: below(field) };
  }
  for (const field of ["except", "only"] as const) {
    for (const [i, version] of (span[field] ?? []).entries()) yield { version, at: below(field, i) };
  }
}
