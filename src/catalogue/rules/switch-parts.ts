// Parts chosen for the switched machine are of the sort they are chosen as.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

const wanted = { device: "memory", switch: "switch", connector: "connector", cable: "cable" } as const;

export const switchParts: Rule = {
  name: "switch-parts",
  says: "The device, switch, connector and cable of a build are parts of that type.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values())
      for (const role of Object.keys(wanted) as (keyof typeof wanted)[]) {
        const part = catalogue.parts.get(build.switch?.[role] ?? "");
        if (!part || part.type === wanted[role]) continue;
        yield {
          says: `${part.name} is no ${wanted[role] === "memory" ? "memory device" : wanted[role]}.`,
          at: ref("build", build.id, "switch", role),
          expected: `a part of type ${wanted[role]}`,
          actual: part.type,
          related: [{ says: "Its type.", at: ref("part", part.id, "type") }],
          hint: "Name another part, or put this one under its own heading.",
        };
      }
  },
};
