// The card for the lid: how the machine of a sheet is changed over by hand between its modes, where the switch is not built or fails.
import { cardsOn, copyName, labelCopies, modesOf } from "../catalogue/index.js";
import { fillBuild, resolveBuild } from "../machine/index.js";
import { type ChangeOver, type Combination, changeOver, type HandWay } from "../planning/index.js";
import type { Build } from "../records/index.js";
import { changeOverSentence, listText, stepText } from "../words/index.js";
import type { Context } from "./common.js";

export interface ChangeOverView {
  readonly says: string;
  readonly ways: readonly { readonly name: string; readonly firmware: string; readonly on: string; readonly off: string }[];
  readonly changes: readonly { readonly title: string; readonly steps: readonly string[] }[];
}

/** The machine as the combination fills it, its modes taken as what is wanted; undefined where nothing has to be changed over. */
export function changeOverView(catalogue: Context["catalogue"], build: Build, combination: Combination): ChangeOverView | undefined {
  const { wishes: _, ...filled } = fillBuild(build, combination);
  const request = resolveBuild(catalogue, filled);
  const hand = request.kind === "question" ? changeOver(request.question) : undefined;
  if (hand?.kind !== "change-over" || hand.ways.length < 2) return undefined;
  return viewOfHand(catalogue, filled, hand);
}

export function viewOfHand(catalogue: Context["catalogue"], build: Build, hand: ChangeOver): ChangeOverView {
  const labels = labelCopies(build.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  const nameOf = (as: string) => labels.get(as) ?? as;
  const names = new Map(hand.ways.map((way) => [way.id, modeNames(build, way)]));
  const cards = (of: readonly string[]) => listText(of.map(nameOf)) || "no card";
  const titled = (id: string) => names.get(id) ?? id;
  return {
    says: changeOverSentence(hand),
    ways: hand.ways.map((way) => ({
      name: titled(way.id),
      firmware: way.firmware,
      on: cards(way.on),
      off: [way.off.length > 0 ? cards(way.off) : "", way.out.length > 0 ? `${cards(way.out)} taken out` : ""].filter(Boolean).join("; "),
    })),
    changes: hand.changes.map(({ from, to, steps }) => ({
      title: `From ${titled(from)} to ${titled(to)}`,
      steps: steps.map((step) => stepText(step, nameOf)),
    })),
  };
}

/** The modes that the way serves: it runs their version and has their cards on. */
function modeNames(build: Build, way: HandWay): string {
  const served = modesOf(build).filter(
    (mode) => mode.firmware === way.firmware && cardsOn(build.cards, mode).every((card) => way.on.includes(copyName(card))),
  );
  return served.length === 0 ? way.firmware : listText(served.map((mode) => mode.name ?? mode.id));
}
