// Asks the planner, and turns a question it cannot read into wrong use with the place in the build file.

import type { InvalidBuild } from "../../machine/index.js";
import { type Answer, findWays, plan, type Ways } from "../../planning/index.js";
import { type Finding, place } from "../../records/index.js";
import { UsageError } from "../usage-error.js";
import type { AskedBuild } from "./build-question.js";
import { type Club, findingText } from "./club.js";

export function answerFor(club: Club, asked: AskedBuild): Answer {
  const answer = plan(club.catalogue, asked.build);
  if (answer.kind === "answer") return answer;
  throw misasked(answer, asked);
}

/** The ways that grant the build's wishes; undefined when it names records that could not be read. */
export function waysFor(club: Club, asked: AskedBuild): Ways | undefined {
  const ways = findWays(club.catalogue, asked.build);
  if (ways === undefined || ways.kind === "ways") return ways;
  throw misasked(ways, asked);
}

/** A question the planner cannot read, as wrong use, each fault with its place in the build file. */
export function misasked({ faults }: InvalidBuild, { file, text }: AskedBuild): UsageError {
  const details = faults.map((fault) => {
    const words = `${fault.says} ${fault.hint}`;
    if (file === undefined || text === undefined) return words;
    const finding: Finding = {
      code: "rule-question",
      level: "error",
      says: fault.says,
      hint: fault.hint,
      at: place(file, text, fault.pointer, { on: fault.on }),
    };
    return findingText(finding, { colour: false });
  });
  return new UsageError(
    file === undefined ? "The question names something the records do not have." : `${file} names something the records do not have.`,
    "Mend what is named above and ask again.",
    details,
  );
}
