// Figures of current agree: idle is no more than worst, and the board alone does not overload its supply.
import { known } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const currentFigures: Rule = {
  name: "current-figures",
  says: "Idle current is no more than the worst case, and a board takes no more than its supply gives.",
  why: "Supply sums go by the worst case; a figure that contradicts another one makes the sum worthless.",
  mend: "Measure again or look the figure up, and correct the one that is wrong; write unknown when nobody knows.",
  scope: ["card", "board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values())
      for (const [i, d] of card.power.entries()) {
        const [idle, worst, start] = [known(d.idle_A), known(d.worst_A), known(d.start_A)];
        const related = [{ says: "The worst case.", at: ref("card", card.id, "power", i, "worst_A") }];
        if (idle !== "unknown" && worst !== "unknown" && idle > worst)
          yield {
            says: `Idle (${idle} A) is more than the worst case (${worst} A).`,
            at: ref("card", card.id, "power", i, "idle_A"),
            related,
            hint: "They may have been swapped, or one is in mA.",
          };
        if (worst !== "unknown" && worst > 20 && start === "unknown")
          yield {
            level: "warning",
            says: `${worst} A on one rail is more than any card edge carries.`,
            at: ref("card", card.id, "power", i, "worst_A"),
            hint: "Amperes are meant: 350 mA is 0.35.",
          };
      }
    for (const board of catalogue.boards.values())
      for (const [i, r] of board.rails.entries()) {
        const [limit, own] = [known(r.limit_A), known(r.board_A)];
        if (limit === "unknown" || own === "unknown" || own <= limit * (r.derate ?? 1)) continue;
        const related = [{ says: "What the supply gives.", at: ref("board", board.id, "rails", i, "limit_A") }];
        yield {
          says: `The board alone takes ${own} A of ${r.rail}, more than can be planned with.`,
          at: ref("board", board.id, "rails", i, "board_A"),
          related,
          hint: "Correct a figure, or derate.",
        };
      }
  },
};
