// What ways out cost, as the cells of a table, and what a way out leads to. Takes the data of planning by its shape.

import type { Verdict } from "./state-words.js";
import { countText, listText, rangeText } from "./text.js";

interface CostShape {
  readonly kind: "leave-out" | "choose-other" | "by-hand" | "switch";
  readonly verdict: Verdict;
  readonly toGet?: number;
  readonly poles?: number;
  readonly wires?: number;
  readonly each?: readonly [number, number];
  readonly without: readonly string[];
}

export const costHeads = ["way out", "to get", "to wire", "each time", "left out", "then it"] as const;

const kindText = {
  "leave-out": "leave out",
  "choose-other": "choose something else",
  "by-hand": "change over by hand",
  switch: "one switch",
} as const;

const thenWords: Readonly<Record<Verdict, string>> = {
  workable: "works",
  conditional: "works under a condition",
  unknown: "may work, which is not known",
  "ruled-out": "does not work",
};

/** One cell for each of `costHeads`. */
export function costCells({ kind, verdict, toGet, poles, wires, each, without }: CostShape): readonly string[] {
  const impossible = kind === "switch" && toGet === undefined;
  const turned = kind === "switch" && !impossible ? "turn it" : "nothing";
  return [
    kindText[kind],
    impossible ? "no switch can do it" : toGet === 0 ? "nothing" : countText(toGet ?? 0, "part"),
    poles === undefined || wires === undefined ? "nothing" : `${countText(poles, "pole")}, ${countText(wires, "wire")}`,
    each === undefined ? turned : rangeText(each, "thing"),
    without.length === 0 ? "nothing" : listText(without),
    impossible ? "is not built" : thenWords[verdict],
  ];
}

interface LeadsTo {
  readonly kind: string;
  readonly verdict: Verdict;
  readonly count: string;
  readonly exact: boolean;
}

/** What a way out leads to: "Then it works under a condition, in 12 combinations." */
export function thenText({ kind, verdict, count, exact }: LeadsTo): string {
  const many = `${exact ? "" : "at least "}${count.replace(/\B(?=(\d{3})+$)/g, ",")} combination${count === "1" ? "" : "s"}`;
  // By hand each way is a machine of its own, and none of them is counted.
  const counted =
    kind === "by-hand" ? "" : verdict === "unknown" ? `; ${many} ${count === "1" ? "hangs" : "hang"} on missing facts` : `, in ${many}`;
  return verdict === "unknown" ? `Whether it then works is not known${counted}.` : `Then it ${thenWords[verdict]}${counted}.`;
}
