// What a source says about which release follows which agrees with the order of the list.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";
import { versionIndex } from "../versions.js";

export const orderOfReleases: Rule = {
  name: "order-of-releases",
  says: "A firmware version stands after the one it follows.",
  why: "Ranges such as from R4 go by the order of the list; a release in the wrong place lets cards run where they do not.",
  mend: "Move the release behind the one it follows, or correct follows.",
  scope: ["firmware"],
  *check({ catalogue }): Iterable<Draft> {
    for (const family of catalogue.firmware.values()) {
      for (const [i, version] of family.versions.entries()) {
        if (version.follows === undefined) continue;
        const at = ref("firmware", family.id, "versions", i, "follows");
        const of = versionIndex(family, version.follows);
        if (of < 0) {
          const others = family.versions.map((v) => v.id).filter((v) => v !== version.id);
          yield noSuch(`version of ${family.name}`, version.follows, others, at);
        } else if (of >= i) {
          yield {
            says:
              of === i
                ? `${version.id} cannot follow itself.`
                : `${version.id} is said to follow ${version.follows}, but stands before it.`,
            at,
            ...(of === i
              ? {}
              : { related: [{ says: `${version.follows} stands here.`, at: ref("firmware", family.id, "versions", of, "id") }] }),
            hint:
              of === i
                ? "Name the release before it, or leave it out."
                : `Move ${version.id} below ${version.follows}: the order of the list is the only order.`,
          };
        }
      }
    }
  },
};
