// Every position of a setting can occur; what the card left the factory with can occur too.
import type { Card } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const settingReach: Rule = {
  name: "setting-reach",
  says: "Every position of a setting can occur in some way of setting the card, and so can the factory positions together.",
  why: "A position that can never stand is a slip in what excludes it, and hides a way the card could be set.",
  mend: "Correct the position, the default or the positions that are said to exclude one another.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      for (const [i, s] of (card.settings ?? []).entries()) {
        if (s.positions.length === 1) {
          yield {
            level: "warning",
            says: `${s.id} has one position only, so there is nothing to set.`,
            at: ref("card", card.id, "settings", i, "positions"),
            hint: "Add the other positions, or move its claims to claims.",
          };
        }
      }
      const barred = card.impossible ?? [];
      for (const [i, { when }] of barred.entries()) {
        const [[setting, position], ...more] = Object.entries(when) as [[string, string], ...[string, string][]];
        if (more.length > 0 || setting === undefined) continue;
        yield {
          says: `${setting} can never stand at ${position}: this entry bars it whatever the other settings.`,
          at: ref("card", card.id, "impossible", i, "when"),
          hint: "Name the other setting it does not go with, or take the position out of the setting.",
        };
      }
      const factory = factoryOf(card);
      const at = barred.findIndex(
        ({ when }) => Object.keys(when).length > 1 && Object.entries(when).every(([s, p]) => factory.get(s) === p),
      );
      if (at >= 0) {
        yield {
          says: "The factory positions are barred by this entry, so the card could not have left the factory so.",
          at: ref("card", card.id, "impossible", at, "when"),
          related: [{ says: "The factory positions are given here.", at: ref("card", card.id, "settings") }],
          hint: "Correct a default, or this entry.",
        };
      }
    }
  },
};

function factoryOf(card: Card): ReadonlyMap<string, string> {
  return new Map((card.settings ?? []).flatMap((s) => (s.default === undefined ? [] : [[s.id, s.default] as const])));
}
