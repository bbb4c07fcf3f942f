// A connector's face shows every contact once, each in a place of its own; its other half goes with it.
import { itemAt } from "../../records/index.js";
import { partsOfType } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const connectorFace: Rule = {
  name: "connector-face",
  says: "A connector's face shows all its contacts, no two in one place; the half it mates with is the other half.",
  why: "Wires are soldered by this picture; a contact that is missing or in the wrong place puts a signal on another's pin.",
  mend: "Draw each contact once, as seen on the mating face of this half, and name the other half in mates.",
  scope: ["part"],
  *check({ catalogue, failed }): Iterable<Draft> {
    for (const c of partsOfType(catalogue, "connector")) {
      const at = (...path: (string | number)[]) => ref("part", c.id, ...path);
      if (c.face.length !== c.contacts)
        yield {
          says: `The connector has ${c.contacts} contacts, but its face shows ${c.face.length}.`,
          at: at("face"),
          related: [{ says: "The number of contacts.", at: at("contacts") }],
          hint: "Show every contact, seen on the mating face of this half.",
        };
      for (const [i, a] of c.face.entries()) {
        const j = c.face.findIndex((b) => b.x_mm === a.x_mm && b.y_mm === a.y_mm);
        if (j < i)
          yield {
            says: `Contacts ${a.contact} and ${itemAt(c.face, j).contact} lie in the same place.`,
            at: at("face", i),
            related: [{ says: "The other one.", at: at("face", j) }],
            hint: "Correct one of the places.",
          };
      }
      // Words are free; what looks like an id is meant as one.
      if (c.mates === undefined || !/^[a-z0-9]+(-[a-z0-9]+)+$/.test(c.mates)) continue;
      const mate = catalogue.parts.get(c.mates);
      if (!mate) {
        if (!failed("part", c.mates))
          yield { says: `There is no part ${c.mates}.`, at: at("mates"), hint: "Correct the id, or say it in words." };
      } else if (mate.type !== "connector" || mate.half === c.half || mate.contacts !== c.contacts) {
        const why =
          mate.type !== "connector" ? "is no connector" : mate.half === c.half ? `is a ${mate.half} too` : `has ${mate.contacts} contacts`;
        yield {
          says: `${mate.name} cannot mate with it: it ${why}.`,
          at: at("mates"),
          related: [{ says: "The other half.", at: ref("part", mate.id, "type") }],
          hint: "Name the other half of the same family.",
        };
      }
    }
  },
};
