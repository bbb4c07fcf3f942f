// The answer: one sentence first, how sure it is, how many ways there are; if there are none, why, and what would help.
import { type Answer, type Reason, reasonsSentence, repairsSentence } from "../../planning/index.js";
import { takenText } from "../../words/index.js";
import { cardName, useApp } from "./app-context.js";
import { digits, Facts, goTo, Mark, Refs } from "./bits.js";
import { RepairButton } from "./ChoiceField.js";
import { Costs } from "./Costs.js";
import { howWords } from "./how.js";

export function countWords(answer: Answer): string {
  if (answer.verdict === "ruled-out") return "No combination works.";
  const exact = answer.exact ? "" : "at least ";
  const sure =
    answer.count === "0"
      ? ""
      : answer.count === "1"
        ? `${exact}one combination works`
        : `${exact}${digits(answer.count)} combinations work`;
  const hang = answer.hanging === "1" ? "hangs" : "hang";
  const what = sure === "" ? (answer.hanging === "1" ? "combination" : "combinations") : "more";
  const open =
    answer.hanging === "0"
      ? ""
      : `${answer.hangingExact ? "" : "at least "}${digits(answer.hanging)} ${what} ${hang} on facts nobody knows yet`;
  const text = [sure, open].filter(Boolean).join("; ");
  return text ? `${text.charAt(0).toUpperCase()}${text.slice(1)}.` : "";
}

export function AnswerPart({ answer, counting }: { answer: Answer; counting: boolean }) {
  const app = useApp();
  const { places, build } = app;
  const best = answer.combinations[0];
  const modeName = (id: string) => app.answered.modes?.find((m) => m.id === id)?.name ?? id;
  const taken = takenText(answer.taken, (as) => cardName(app, as), modeName);
  return (
    <>
      <p class="says">{answer.says}</p>
      {best ? (
        <p class="how">
          {answer.verdict === "unknown" ? "It would be" : "Best combination"}: {howWords(app, best)}
        </p>
      ) : null}
      {taken === undefined ? null : <p class="more">{taken}</p>}
      <p class="sure">
        <Mark verdict={answer.verdict} evidence={best?.evidence} />. {countWords(answer)} {counting ? "Still counting. " : ""}
        {answer.finished ? "" : "The search was ended early, so lists may lack entries. "}
        <a href={places.page("sure")}>How sure is this?</a>
      </p>
      {(build.modes?.length ?? 0) > 1 ? (
        <p>
          <button type="button" class="small" onClick={() => goTo("modes")}>
            See and change what is on in which way
          </button>
        </p>
      ) : null}
      {answer.verdict === "ruled-out" ? <WhyNone answer={answer} /> : null}
      {answer.verdict === "unknown" ? <Deciding answer={answer} /> : null}
    </>
  );
}

function WhyNone({ answer }: { answer: Answer }) {
  return (
    <>
      <div class="helps">
        <h3>What would help</h3>
        {answer.repairs.map((r) => (
          <RepairButton key={r.says} repair={r} after="answer" />
        ))}
        <p class="more">{repairsSentence(answer)}</p>
        {answer.repairs.length > 1 ? <Costs repairs={answer.repairs} /> : null}
      </div>
      <h3>Why not</h3>
      <ol class="reasons-list">
        {answer.reasons.map((r) => (
          <ReasonLine key={r.says} reason={r} alone={answer.reasons.length === 1} />
        ))}
      </ol>
      <p class="more">{reasonsSentence(answer)}</p>
    </>
  );
}

function ReasonLine({ reason, alone }: { reason: Reason; alone: boolean }) {
  const names = reason.choices.map((c) => c.says);
  const head =
    names.length > 1
      ? `Not together: ${names.slice(0, -1).join(", ")} and ${names.at(-1)}.`
      : `${names[0] ?? "The machine as its record stands"}.`;
  if (reason.facts.length === 0) return <li>{head}</li>;
  return (
    <li>
      <details open={alone}>
        <summary>{head}</summary>
        <Facts facts={reason.facts} />
        {reason.moreFacts === "yes" ? <p class="more">Other facts exclude it as well.</p> : null}
      </details>
    </li>
  );
}

function Deciding({ answer }: { answer: Answer }) {
  return (
    <>
      <h3>What would settle it</h3>
      <ul class="why">
        {answer.unknowns.map((u) => (
          <li key={u.says}>
            {u.says} To find out: {u.how} <Refs refs={u.refs} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** Conflicts that were looked at and count for nothing. */
export function History({ answer }: { answer: Answer }) {
  if (answer.history.length === 0) return null;
  return (
    <details>
      <summary>Looked at, and counting for nothing ({answer.history.length})</summary>
      <Facts facts={answer.history} />
    </details>
  );
}
