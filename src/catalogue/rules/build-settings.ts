// The settings of a build do not stand together in a way the card cannot be set.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const buildSettings: Rule = {
  name: "build-settings",
  says: "Settings given in a build can stand together on the card.",
  why: "A card cannot be set so; whatever was tested or asked, it was not this.",
  mend: "Look at the card or at the tester's notes again, and correct one of the positions.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      for (const [i, c] of build.cards.entries()) {
        const card = catalogue.cards.get(c.card);
        const { settings } = c;
        if (!card || !settings) continue;
        for (const [j, { when, why }] of (card.impossible ?? []).entries()) {
          if (!Object.entries(when).every(([s, p]) => settings[s] === p)) continue;
          yield {
            says: `These settings of ${card.name} cannot stand together: ${Object.entries(when)
              .map(([s, p]) => `${s} ${p}`)
              .join(", ")}.`,
            at: ref("build", build.id, "cards", i, "settings"),
            on: "key",
            related: [{ says: why, at: ref("card", card.id, "impossible", j, "when") }],
            hint: "Correct a position; if the card really stood so, correct the card's record.",
          };
        }
      }
    }
  },
};
