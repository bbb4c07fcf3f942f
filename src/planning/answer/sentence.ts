// The answer in one sentence a friend would say, and the answer told anew once more has been counted.
import { conditionalSentence } from "../../words/index.js";
import type { Answer, Combination, Reason, Verdict } from "./answer.js";
import type { Counts } from "./kinds.js";

/** How sure the best of them is, in words that end the sentence. Said of the whole question: what was tested is never passed over. */
function sureText(combinations: readonly Combination[]): string {
  const [best] = combinations;
  switch (best?.evidence) {
    case "bench":
      return "the best of them is proven on the bench";
    case "documented":
      return "the best of them rests on the makers' papers";
    case "reported":
      return "the best of them rests on somebody's report";
    default:
      if (combinations.some((c) => c.evidence === "bench")) return "the rules find nothing against the best of them; others were tested";
      if (best?.nearMatches.length) return "the rules find nothing against it; tested builds come close, none had exactly this";
      if (best?.rests.some((r) => r.grade === "bench"))
        return "the rules find nothing against it; parts of it were tested, not all together";
      return "the rules find nothing against it, but nobody has tested it";
  }
}

/** What is counted of an answer, as it is told: decimal digits, and whether it is all. */
interface Told {
  readonly count: string;
  readonly exact: boolean;
}

export function sentence(verdict: Verdict, combinations: readonly Combination[], reasons: readonly Reason[], counted?: Told): string {
  const best = combinations[0];
  const number = counted && `${counted.exact ? "" : "at least "}${counted.count.replace(/\B(?=(\d{3})+$)/g, ",")}`;
  const ways = !counted ? "" : counted.count === "1" && counted.exact ? ", in one combination" : `, in ${number} combinations`;
  switch (verdict) {
    case "workable":
      // Counting the ways of a machine nobody has asked anything of helps no decision.
      if (best?.cards.length === 0 && best.evidence !== "bench")
        return "Yes: nothing is known against the board by itself. Choose cards to see whether they work in it.";
      return `Yes, it works${ways}: ${sureText(combinations)}.`;
    case "conditional":
      return conditionalSentence(best?.conditions ?? []);
    case "unknown":
      return unknownSentence(best?.unknowns[0]?.says ?? "a missing fact.");
    case "ruled-out":
      return `No. ${reasons[0]?.says ?? "Nothing fits."}`;
  }
}

export function unknownSentence(missing: string): string {
  return `Not known. It hangs on this: ${missing}`;
}

/** The answer with what was counted after it was given. */
export function withCounts(answer: Answer, { count, exact, hanging, hangingExact }: Counts): Answer {
  const says = sentence(answer.verdict, answer.combinations, answer.reasons, { count, exact });
  return { ...answer, says, count, exact, hanging, hangingExact };
}
