// The answer in one sentence a friend would say, and the answer told anew once more has been counted.
import type { Answer, Combination, Reason, Verdict } from "./answer.js";
import type { Counts } from "./kinds.js";

/** How sure the best of them is, in words that end the sentence. */
const sure = {
  bench: "the best of them is proven on the bench",
  documented: "the best of them rests on the makers' papers",
  reported: "the best of them rests on somebody's report",
  inferred: "the rules find nothing against it, but nobody has tested it",
} as const;

/** What is counted of an answer, as it is told: decimal digits, and whether it is all. */
interface Told {
  readonly count: string;
  readonly exact: boolean;
}

export function sentence(verdict: Verdict, combinations: readonly Combination[], reasons: readonly Reason[], counted?: Told): string {
  const best = combinations[0];
  const number = counted && `${counted.exact ? "" : "at least "}${counted.count.replace(/\B(?=(\d{3})+$)/g, ",")}`;
  const ways = !counted ? "" : counted.count === "1" && counted.exact ? ", in one way" : `, in ${number} ways`;
  switch (verdict) {
    case "workable":
      return `Yes, it works${ways}: ${sure[best!.evidence]}.`;
    case "conditional":
      return `Yes, with a condition: ${best!.conditions[0]?.says ?? "see below"}`;
    case "unknown":
      return `Not known. It hangs on this: ${best?.unknowns[0]?.says ?? "a missing fact."}`;
    case "ruled-out":
      return `No. ${reasons[0]?.says ?? "Nothing fits."}`;
  }
}

/** The answer with what was counted after it was given. */
export function withCounts(answer: Answer, { count, exact, hanging, hangingExact }: Counts): Answer {
  const says = sentence(answer.verdict, answer.combinations, answer.reasons, { count, exact });
  return { ...answer, says, count, exact, hanging, hangingExact };
}
