// Settings and positions that a card or a conflict names are those the card has.
import { type Card, itemAt } from "../../records/index.js";
import { settingUses } from "../names.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const settingNames: Rule = {
  name: "setting-names",
  says: "A setting and a position that are named are ones the card has.",
  why: "A claim or condition under a position that does not exist never holds, so what it says is lost.",
  mend: "Write the setting and the position as the card has them, or add them to the card.",
  scope: ["card", "conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const { card: id, from, positions } of settingUses(catalogue)) {
      const card = catalogue.cards.get(id);
      if (!card) continue;
      for (const [setting, wanted] of Object.entries(positions))
        yield* strange(card, setting, typeof wanted === "string" ? [wanted] : wanted, from);
    }
    for (const card of catalogue.cards.values()) {
      for (const [i, s] of (card.settings ?? []).entries()) {
        if (s.default === undefined || s.positions.some((p) => p.id === s.default)) continue;
        const names = s.positions.map((p) => p.id);
        yield noSuch(`position of ${s.id}`, s.default, names, ref("card", card.id, "settings", i, "default"));
      }
    }
  },
};

function* strange(card: Card, setting: string, wanted: readonly string[], from: Ref): Iterable<Draft> {
  const at: Ref = { ...from, pointer: `${from.pointer}/${setting.replaceAll("~", "~0").replaceAll("/", "~1")}` };
  const own = from.kind === "card" && from.id === card.id;
  const index = (card.settings ?? []).findIndex((s) => s.id === setting);
  if (index < 0) {
    const names = (card.settings ?? []).map((s) => s.id);
    const home = card.settings ? ref("card", card.id, "settings") : ref("card", card.id, "id");
    yield { ...noSuch(`setting of ${card.name}`, setting, names, at, own ? undefined : home), on: "key" };
    return;
  }
  const names = itemAt(card.settings ?? [], index).positions.map((p) => p.id);
  for (const position of wanted) {
    if (names.includes(position)) continue;
    const home = ref("card", card.id, "settings", index, "positions");
    yield noSuch(`position of ${setting} on ${card.name}`, position, names, at, own ? undefined : home);
  }
}
