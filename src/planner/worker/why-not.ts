// Why a choice cannot take a value, and what else could be changed so that it can. A way out that takes the wish itself back is none.
import type { Catalogue } from "../../catalogue/index.js";
import { type Misasked, withChoice } from "../../machine/index.js";
import { plan } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import type { Budget } from "../../solver/index.js";
import type { WhyNot } from "./protocol.js";

export function findWhyNot(catalogue: Catalogue, build: Build, choice: string, value: string, budget?: Budget): WhyNot | Misasked {
  const answer = plan(catalogue, withChoice(build, choice, value), { most: 1, keep: wishOf(choice), ...(budget ? { budget } : {}) });
  if (answer.kind === "misasked") return answer;
  const { reasons, repairs, repairsComplete } = answer;
  return { kind: "why-not", reasons, repairs, repairsComplete };
}

/** A card that is to be on in a way: the card stays, and so does the way. */
function wishOf(choice: string): readonly string[] {
  const [kind, mode, card] = choice.split(":");
  return kind === "on" ? [`mode:${mode}`, `card:${card}`] : [choice];
}
