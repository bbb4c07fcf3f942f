// What an exact test proves, in the words of every place that tells it: plan, planner, card page, single file.
import { listText } from "./text.js";

export interface ExactTestFacts {
  readonly by: string;
  readonly date: string;
  /** Facts that are missing and do not hold this machine back. */
  readonly notWritten: readonly { readonly says: string }[];
}

export function exactTestText({ by, date, notWritten }: ExactTestFacts): string {
  const ran = `This very machine, set just so, ran on ${date} (${by}).`;
  if (notWritten.length === 0) return ran;
  const facts = listText(notWritten.map((fact) => fact.says.replace(/\.$/, "")));
  return `${ran} Still open, and it matters as soon as anything is changed: ${facts}.`;
}
