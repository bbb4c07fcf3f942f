// Parts chosen for the switched machine are of the sort they are chosen as.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { unresolvedNames } from "../unresolved.js";

export const switchParts: Rule = {
  name: "switch-parts",
  says: "The device, switch, connector and cable of a build are parts of that type.",
  why: "A device cannot be wired as a switch; the plan would be refused or worse.",
  mend: "Name a part of the type that is asked for.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values())
      for (const { about, path, what, name } of unresolvedNames(catalogue, build)) {
        const part = catalogue.parts.get(name);
        if (about !== "part-type" || !part) continue;
        yield {
          says: `${part.name} is no ${what}.`,
          at: ref("build", build.id, ...path),
          expected: `a part of type ${what === "memory device" ? "memory" : what}`,
          actual: part.type,
          related: [{ says: "Its type.", at: ref("part", part.id, "type") }],
          hint: "Name another part, or put this one under its own heading.",
        };
      }
  },
};
