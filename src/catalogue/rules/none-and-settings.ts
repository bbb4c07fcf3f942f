// A card that says none of a kind has no setting that takes some of it.
import { type Card, listed, type ResourceKind, resourceKinds } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const noneAndSettings: Rule = {
  name: "none-and-settings",
  says: "A card that says it takes none of a kind has no setting that takes some.",
  why: "One of the two is a slip; the planner counts what the setting takes, whatever the other says.",
  mend: "Write settings instead of none, or take the claim out of the position.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values())
      for (const { kind, path } of nones(card)) {
        const taking = firstTaking(card, kind);
        if (!taking) continue;
        const whole = path.length === 1;
        yield {
          says: `The card says ${kind}: none, and ${taking.setting} at ${taking.position} ${taking.says}.`,
          at: ref("card", card.id, ...path),
          related: [{ says: "It says so here.", at: ref("card", card.id, ...taking.path) }],
          hint: whole ? `Write all four kinds: ${kind}: settings, and so on.` : `Write ${kind}: settings.`,
        };
        if (whole) break;
      }
  },
};

/** Where the card says none whatever its settings and revision. */
function nones(card: Card): readonly { readonly kind: ResourceKind; readonly path: readonly (string | number)[] }[] {
  if (card.claims === "none") return resourceKinds.map((kind) => ({ kind, path: ["claims"] }));
  return listed(card.claims).flatMap((entry, i) =>
    entry.when || entry.revisions
      ? []
      : resourceKinds.filter((kind) => entry[kind] === "none").map((kind) => ({ kind, path: ["claims", i, kind] })),
  );
}

function firstTaking(card: Card, kind: ResourceKind) {
  for (const [s, setting] of (card.settings ?? []).entries())
    for (const [p, position] of setting.positions.entries())
      if (position[kind] !== undefined && position[kind] !== "none")
        return {
          setting: setting.id,
          position: position.id,
          says: position[kind] === "unknown" ? "may take some" : "takes some",
          path: ["settings", s, "positions", p, kind],
        };
  return undefined;
}
