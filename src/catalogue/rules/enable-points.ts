// A card that can be switched off says over which points, and in a sense that goes with them.
import { itemAt } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

const roles = { "closed-enables": ["a", "b"], "open-enables": ["a", "b"], "change-over": ["common", "on", "off"] } as const;

export const enablePoints: Rule = {
  name: "enable-points",
  says: "The points of an enable contact go with its sense; an enable setting is one the card has.",
  why: "The cable is wired by these points; one that is missing or of the wrong sort cannot be wired, or switches the wrong way.",
  mend: "Name the points that go with the sense: two ends of a contact, one end and the ground it is switched to, or common, on and off of a change-over.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      const e = card.enable;
      if (!e) continue;
      const at = (...path: (string | number)[]) => ref("card", card.id, "enable", ...path);
      if (e.by === "setting") {
        const setting = card.settings?.find((s) => s.id === e.setting);
        if (e.setting === undefined)
          yield {
            says: "The card is switched off by a setting, but which one is not said.",
            at: at("by"),
            hint: "Add setting, and off: its position that switches the card off.",
          };
        else if (!setting)
          yield noSuch(
            "setting of this card",
            e.setting,
            (card.settings ?? []).map((s) => s.id),
            at("setting"),
          );
        else if (e.off === undefined)
          yield { says: `Which position of ${e.setting} switches the card off is not said.`, at: at("setting"), hint: "Add off." };
        else if (!setting.positions.some((p) => p.id === e.off))
          yield noSuch(
            `position of ${e.setting}`,
            e.off,
            setting.positions.map((p) => p.id),
            at("off"),
          );
        continue;
      }
      if (e.sense === undefined || e.points === undefined) {
        const lacks = e.sense === undefined ? "sense" : "points";
        yield {
          says: `The card is switched by contacts, but gives no ${lacks}.`,
          at: at("by"),
          hint: `Add ${lacks}: without it no wire can be drawn.`,
        };
        continue;
      }
      const wanted: readonly string[] = roles[e.sense];
      const given = e.points.map((p) => p.role).filter((r) => r !== "ground");
      if (wanted.length === given.length && wanted.every((r) => given.includes(r as never))) continue;
      // One end alone goes to the card's own ground, which cards wired so can share.
      if (e.sense !== "change-over" && given.length === 1 && wanted.includes(itemAt(given, 0)) && e.points.some((p) => p.role === "ground"))
        continue;
      yield {
        says: `A contact of the sense ${e.sense} has the points ${wanted.join(", ")}.`,
        at: at("points"),
        expected: wanted.join(", "),
        actual: given.join(", ") || "ground only",
        related: [{ says: "The sense is given here.", at: at("sense") }],
        hint: "Correct the roles or the sense, or name the ground that a single end is switched to; a wire drawn from this would be wrong.",
      };
    }
  },
};
