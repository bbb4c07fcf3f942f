// The answer at the foot of a phone's screen, always in sight: whether it works, how sure that is, and how; or why not and the cheapest way out.
import type { Answer, Fact } from "../../planning/index.js";
import { countWords } from "./AnswerPart.js";
import { type AppContext, useApp } from "./app-context.js";
import { Mark } from "./bits.js";
import { howWords } from "./how.js";

function lineOf(app: AppContext, answer: Answer): string {
  if (answer.verdict !== "ruled-out") return answer.combinations[0] ? howWords(app, answer.combinations[0]) : "";
  // What is said of a card comes first: the line may be cut short.
  const ofCard = (f: Fact) => (f.refs.some((r) => r.kind === "card") ? 0 : 1);
  const facts = [...(answer.reasons[0]?.facts ?? [])].sort((a, b) => ofCard(a) - ofCard(b)).map((f) => f.says);
  return facts.length > 0 ? facts.join(" ") : (answer.reasons[0]?.says ?? "");
}

export function StatusBar({ answer, onTap }: { answer: Answer; onTap: () => void }) {
  const app = useApp();
  const out = answer.verdict === "ruled-out" ? answer.repairs[0]?.says : undefined;
  return (
    <button type="button" class="strip" onClick={onTap}>
      <Mark verdict={answer.verdict} evidence={answer.combinations[0]?.evidence} />
      <span class="more">{answer.verdict === "ruled-out" ? "" : `. ${countWords(answer)}`}</span>
      <span class="more line">{lineOf(app, answer)}</span>
      {out ? (
        <span class="more line">
          <b>Way out:</b> {out}
        </span>
      ) : null}
    </button>
  );
}
