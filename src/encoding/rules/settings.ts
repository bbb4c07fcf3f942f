// Settings of one card: positions that cannot stand together, settings that a revision lacks.
import { fact, never, ref, type TradeRule } from "../draft.js";
import { eachCard, ofRevision, setTo, settingsStand } from "../frame.js";

export const settings: TradeRule = {
  name: "settings",
  says: "Positions that exclude one another never stand together; a setting that a revision lacks stays at its first position.",
  drafts(frame) {
    return eachCard(frame).flatMap(({ at, asked: { card, settings: all } }) => [
      ...(card.impossible ?? []).flatMap((pair, i) => {
        const words = Object.entries(pair.when).map(([id, p]) => `${id} at ${p}`);
        return never(
          frame,
          fact(
            "settings",
            `${card.name}: ${words.join(" and ")} exclude one another: ${pair.why}`,
            ref("card", card.id, `/impossible/${i}`),
          ),
          settingsStand(frame, at, pair.when),
        );
      }),
      ...all.flatMap((s, i) =>
        s.revisions
          ? never(
              frame,
              fact(
                "settings",
                `${card.name} has ${s.id} only on revision ${s.revisions.join(", ")}.`,
                ref("card", card.id, `/settings/${i}/revisions`),
              ),
              [
                ofRevision(frame, at, (r) => s.revisions?.includes(r) !== true),
                setTo(
                  frame,
                  at,
                  s.id,
                  s.positions.slice(1).map((p) => p.id),
                ),
              ],
            )
          : [],
      ),
    ]);
  },
};
