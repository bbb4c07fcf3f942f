// The planner's page: what you have and want on one side, the answer on the other. It asks for a new answer after every move and keeps the old
// one in sight until the new one is there.
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Answer, Combination } from "../../../planning/index.js";
import type { Build } from "../../../records/index.js";
import type { Connection } from "../engine/engine.js";
import type { BenchTasks, Tasks } from "../engine/protocol.js";
import type { Shelf } from "../engine/shelf.js";
import { addressOf } from "../state/address.js";
import type { Store } from "../state/store.js";
import { AnswerPart, countWords, History } from "./AnswerPart.js";
import { afterPaint, Mark, Part } from "./bits.js";
import { Cards } from "./Cards.js";
import { type Desk, DeskContext, type Places } from "./desk.js";
import { Machine } from "./Machine.js";
import { Modes } from "./Modes.js";
import { Said } from "./Said.js";
import { Share } from "./Share.js";
import { Sheet } from "./Sheet.js";
import { useAnswer } from "./use-answer.js";
import { Ways } from "./Ways.js";

export interface AppProps {
  readonly shelf: Shelf;
  readonly store: Store;
  readonly solve: Connection<Tasks>;
  readonly bench: Connection<BenchTasks>;
  readonly places: Places;
}

/** The sentence for the live region: short, and only what changed. */
function spoken(answer: Answer): string {
  return `${answer.says} ${countWords(answer)}`;
}

export function App({ shelf, store, solve, bench, places }: AppProps) {
  const [build, setBuild] = useState<Build>(store.build);
  const [sheet, setSheet] = useState<{ readonly build: Build; readonly combination: Combination }>();
  useEffect(() => store.onChange(() => afterPaint(() => setBuild(store.build))), [store]);
  const { answer, of, facets, misasked, working, failed } = useAnswer(solve, build);
  const desk = useMemo<Desk>(
    () => ({ shelf, store, build, solve, bench, places, answer, answered: of ?? build, facets }),
    [shelf, store, build, solve, bench, places, answer, of, facets],
  );
  const shown = sheet?.build === build ? sheet : undefined;
  const closeSheet = () => {
    setSheet(undefined);
    setTimeout(toAnswer);
  };
  // Kept as they are while only the state of the work changes: setting them anew would keep the reader's next tap waiting.
  const asked = useMemo(
    () => (
      <div class="asked">
        <Machine />
        <Cards />
        {build.board ? <Modes /> : null}
      </div>
    ),
    [desk, build.board],
  );
  const rest = useMemo(
    () => (
      <div class="rest">
        <Said />
        <Share answer={answer} />
      </div>
    ),
    [desk, answer],
  );
  const ways = useMemo(
    () =>
      answer ? (
        <>
          <Ways answer={answer} onSheet={(combination) => setSheet({ build, combination })} />
          <History answer={answer} />
        </>
      ) : null,
    [desk, answer, build],
  );
  const current = answer !== undefined && of === build && !working.now;
  return (
    <DeskContext.Provider value={desk}>
      <div class={shown ? "planner with-sheet" : "planner"}>
        {asked}
        <div class="told">
          {shown ? (
            <Sheet combination={shown.combination} onClose={closeSheet} />
          ) : (
            <>
              <Part id="answer" title="Answer">
                <div
                  class={working.long ? "now stale" : "now"}
                  aria-busy={working.long}
                  data-answered={current ? addressOf(build) : undefined}
                >
                  {misasked ? <Misread faults={misasked} /> : null}
                  {failed ? <p role="alert">{failed}</p> : null}
                  {!answer && !misasked && !failed ? (
                    <p class="says">{build.board ? "Working it out." : "Choose your board, then add the cards you have and want."}</p>
                  ) : null}
                  {answer ? <AnswerPart answer={answer} /> : null}
                </div>
                <p class="more working">{working.long ? working.says : ""}</p>
              </Part>
              {ways}
            </>
          )}
        </div>
        {rest}
        <p class="unseen" role="status" aria-live="polite">
          {answer && !working.now ? spoken(answer) : ""}
        </p>
        {answer && !shown ? (
          <button type="button" class="strip" onClick={toAnswer}>
            <Mark verdict={answer.verdict} evidence={answer.combinations[0]?.evidence} /> <span class="more">{countWords(answer)}</span>
          </button>
        ) : null}
      </div>
    </DeskContext.Provider>
  );
}

/** Not a link: the address holds the build. */
function toAnswer(): void {
  const title = document.getElementById("answer-title");
  title?.scrollIntoView({ block: "start" });
  title?.focus({ preventScroll: true });
}

function Misread({ faults }: { faults: readonly { readonly says: string; readonly hint: string }[] }) {
  return (
    <div role="alert">
      <p class="says">This build names something the records do not have.</p>
      <ul class="why">
        {faults.map((f) => (
          <li key={f.says}>
            {f.says} {f.hint}
          </li>
        ))}
      </ul>
    </div>
  );
}
