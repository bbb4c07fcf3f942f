// Why a choice cannot take a value, and what else could be changed so that it can. A way out that takes the wish itself back is none.
import type { Catalogue } from "../../catalogue/index.js";
import { choiceId, choiceOf, type InvalidBuild, resolveBuild, withChoice } from "../../machine/index.js";
import { findSwitchedOff, plan, type Repair } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import type { Budget } from "../../solver/index.js";
import type { WhyNot } from "./protocol.js";

export function findWhyNot(catalogue: Catalogue, build: Build, choice: string, value: string, budget?: Budget): WhyNot | InvalidBuild {
  const wanted = withChoice(build, choice, value);
  const answer = plan(catalogue, wanted, { most: 1, keep: wishOf(choice), ...(budget ? { budget } : {}) });
  if (answer.kind === "misasked") return answer;
  const { verdict, reasons, repairs, repairsComplete } = answer;
  const instead = verdict === "ruled-out" && value === "on" ? switchedOff(catalogue, wanted, choice, budget) : [];
  return { kind: "why-not", verdict, reasons, repairs: [...instead, ...repairs], repairsComplete };
}

/** A card that is to be on in a way: the card stays, and so does the way. */
function wishOf(choice: string): readonly string[] {
  const ref = choiceOf(choice);
  if (ref?.kind !== "on") return [choice];
  return [choiceId({ kind: "mode", mode: ref.mode }), choiceId({ kind: "card", card: ref.card })];
}

/** The nearest way out for a card that is to be on in a way: another one off there. */
function switchedOff(catalogue: Catalogue, wanted: Build, choice: string, budget?: Budget): readonly Repair[] {
  const ref = choiceOf(choice);
  const request = resolveBuild(catalogue, wanted);
  return ref?.kind === "on" && request.kind === "question" ? findSwitchedOff(request.question, ref.mode, ref.card, budget) : [];
}
