// A card is on in a mode, or it does not matter there: not both, and nothing can be left open that no switch reaches.
import { copyName, findCopies } from "../copies.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { switchable } from "../switchable.js";

export const onOrOff: Rule = {
  name: "on-or-off",
  says: "A mode does not name one card as on and as on or off, and leaves none on or off that nothing switches.",
  why: "A card that is on there is wanted on; one of which it does not matter may be taken as off. Where no contact or software switches a card, it is on in every mode.",
  mend: "Leave the card in one of the two lists; take one that nothing switches out of on_or_off.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values())
      for (const [i, mode] of (build.modes ?? []).entries())
        for (const [n, name] of (mode.on_or_off ?? []).entries()) {
          const at = ref("build", build.id, "modes", i, "on_or_off", n);
          const twice = mode.cards?.indexOf(name) ?? -1;
          if (twice >= 0)
            yield {
              says: `${name} is said to be on in mode ${mode.id}, and that it does not matter there.`,
              at,
              related: [{ says: "On it is here.", at: ref("build", build.id, "modes", i, "cards", twice) }],
              hint: `Keep ${name} in one of the two lists.`,
            };
          for (const copy of findCopies(build.cards, name)) {
            const card = catalogue.cards.get(copy.card);
            if (!card || switchable(card)) continue;
            yield {
              level: "warning",
              says: `Nothing switches ${copyName(copy)} off from outside the case, so it is on in mode ${mode.id} all the same.`,
              at,
              hint: `Take ${name} out of on_or_off, or write down in the card's record how contacts or software switch it off (enable).`,
            };
          }
        }
  },
};
