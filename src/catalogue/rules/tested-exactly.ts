// A test covers exactly what it had; one that does not say what it had covers nothing.
import { cardsOnOrOff, copyName } from "../copies.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const testedExactly: Rule = {
  name: "tested-exactly",
  says: "A tested build names one board revision, the firmware of every mode and what was on in it, and the slot of every card.",
  why: "A test covers exactly what stood on the bench; what it does not name, it does not cover.",
  mend: "Fill in the revision, the firmware of each mode and every slot, or take the result out.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      if (!build.result) continue;
      const board = catalogue.boards.get(build.board);
      const lacks: string[] = [];
      const one = typeof build.revision === "string" || build.revision?.length === 1 || board?.revisions.length === 1;
      if (board && !one) lacks.push("the board revision");
      if (!build.modes) lacks.push("the firmware (in a mode)");
      for (const m of build.modes ?? []) if (m.firmware === undefined) lacks.push(`the firmware of mode ${m.id}`);
      for (const m of build.modes ?? [])
        for (const c of cardsOnOrOff(build.cards, m)) lacks.push(`whether ${copyName(c)} was on in mode ${m.id}`);
      for (const c of build.cards) if (c.slot === undefined) lacks.push(`the slot of ${copyName(c)}`);
      if (lacks.length === 0) continue;
      yield {
        level: "warning",
        says: `The test does not say ${lacks.join(", ")}, so it cannot count as proof of any one machine.`,
        at: ref("build", build.id, "result"),
        on: "key",
        hint: "Ask who tested it. If nobody knows any more, leave it so and allow this rule, with that as the reason.",
      };
    }
  },
};
