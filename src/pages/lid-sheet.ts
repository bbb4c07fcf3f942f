// The card for the lid alone: a machine that no switch is built for, and that the hand can change over. What is in it in each way, on which
// conditions, and the steps from each way to each other.
import { labelCopies } from "../catalogue/index.js";
import { resolveBuild } from "../machine/index.js";
import { changeOver, type HandWay, plan as planBuild } from "../planning/index.js";
import { type Build, itemAt } from "../records/index.js";
import { type Caution, cautionsOf } from "../wiring/index.js";
import { costCells, costHeads, lidCard } from "../words/index.js";
import { type ChangeOverView, viewOfHand } from "./change-over.js";
import { type Context, head, type PageHead } from "./common.js";
import type { WayOutCost } from "./ways-out-costs.js";

export interface LidPage extends PageHead {
  /** Why there is no switch. */
  readonly why: string;
  readonly cautions: readonly Caution[];
  /** What is in the machine in each way; what is to be done or found out first there, what is lost, and what is good to know. */
  readonly ways: readonly { readonly title: string; readonly cards: readonly string[]; readonly conditions: readonly string[] }[];
  readonly changeOver: ChangeOverView;
  /** What this and the other ways out cost, cheapest first; no rows where there is nothing to compare. */
  readonly costs: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

const cautionIds = ["mains-inside", "crt", "esd", "tantalum", "battery"];

/** Undefined where one way is enough, where the hand cannot do it either, or where a way would have nothing on. */
export function lidSheetOf(
  catalogue: Context["catalogue"],
  build: Build,
  why: string,
  costs: readonly WayOutCost[] = [],
): LidPage | undefined {
  const request = resolveBuild(catalogue, build);
  const hand = request.kind === "question" ? changeOver(request.question) : undefined;
  if (hand?.kind !== "change-over" || hand.ways.length < 2 || hand.ways.some((way) => way.on.length === 0)) return undefined;
  const labels = labelCopies(build.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  const card = lidCard(hand, (as) => labels.get(as) ?? as);
  const says = `How ${build.name} is changed over by hand, step by step.`;
  return {
    ...head(`builds/${build.id}-lid.html`, `Card for the lid: ${build.name}`, says, "builds"),
    why,
    cautions: cautionsOf(cautionIds),
    ways: card.ways.map((way, at) => ({ ...way, conditions: conditionsOf(catalogue, itemAt(hand.ways, at)) })),
    changeOver: viewOfHand(catalogue, build, hand),
    costs: { heads: costHeads, rows: costs.length > 1 ? costs.map(costCells) : [] },
  };
}

function conditionsOf(catalogue: Context["catalogue"], { build }: HandWay): readonly string[] {
  const answer = planBuild(catalogue, build, { brief: true, most: 1 });
  const [only] = answer.kind === "answer" ? answer.combinations : [];
  if (!only) return [];
  return [
    ...only.conditions.map((c) =>
      [`${conditionWords[c.kind]}: ${c.says.replace(/\.?$/, ".")}`, ...c.ways.map((w) => `${w.says} (${w.costs})`)].join(" "),
    ),
    ...only.unknowns.map((u) => `To find out first: ${u.says} ${u.how}`),
  ];
}

const conditionWords = { remedy: "To do first", loss: "What is lost", cosmetic: "Good to know", "to-get": "To get first" } as const;
