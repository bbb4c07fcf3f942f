// The planner's page: what you have and want on one side, the answer on the other. It asks for a new answer after every move and keeps the old
// one in sight until the new one is there.
import { useCallback, useEffect, useMemo, useRef, useState } from "preact/hooks";
import { addressOf } from "../../machine/index.js";
import type { Answer, Combination } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import type { Store } from "../state/store.js";
import type { CatalogueSummary } from "../worker/catalogue-summary.js";
import type { Connection } from "../worker/engine.js";
import type { BenchTasks, Tasks } from "../worker/protocol.js";
import { AnswerPart, countWords, History } from "./AnswerPart.js";
import { type AppContext, type Places, SharedApp } from "./app-context.js";
import { goTo, Part } from "./bits.js";
import { Cards } from "./Cards.js";
import { ChoiceHistory } from "./ChoiceHistory.js";
import { afterPaint, Deferred, useHeldHeight } from "./deferred.js";
import { Known, Machine } from "./Machine.js";
import { Modes } from "./Modes.js";
import { Share } from "./Share.js";
import { Sheet } from "./Sheet.js";
import { StatusBar } from "./StatusBar.js";
import { useAnswer } from "./use-answer.js";
import { Ways } from "./Ways.js";

export interface AppProps {
  readonly catalogue: CatalogueSummary;
  readonly store: Store;
  readonly solve: Connection<Tasks>;
  readonly bench: Connection<BenchTasks>;
  readonly places: Places;
  /** The id of a build that the address asked for and the records do not have. */
  readonly lost?: string | undefined;
}

const none = {};

/** The sentence for the live region: short, and only what changed. */
function spoken(answer: Answer): string {
  return `${answer.says} ${countWords(answer)}`;
}

export function App({ catalogue, store, solve, bench, places, lost }: AppProps) {
  const [build, setBuild] = useState<Build>(store.build);
  const [sheet, setSheet] = useState<{ readonly build: Build; readonly combination: Combination }>();
  useEffect(() => store.onChange(() => afterPaint(() => setBuild(store.build))), [store]);
  const { answer, of, onOff, counts, counting, misasked, working, failed } = useAnswer(solve, build);
  const app = useMemo<AppContext>(
    () => ({ catalogue, store, build, solve, bench, places, answer, answered: of ?? build, onOff, counts, counting }),
    [catalogue, store, build, solve, bench, places, answer, of, onOff, counts, counting],
  );
  const shown = sheet?.build === build ? sheet : undefined;
  const closeSheet = () => {
    setSheet(undefined);
    setTimeout(toAnswer);
  };
  const current = useRef(build);
  current.current = build;
  const onSheet = useCallback((combination: Combination) => setSheet({ build: current.current, combination }), []);
  const answerPlace = useHeldHeight<HTMLDivElement>();
  const told = answer !== undefined && of === build && !working.now;
  return (
    <SharedApp.Provider value={app}>
      <div class={shown ? "planner with-sheet" : "planner"}>
        <div class="asked">
          <Deferred order={2} piece={Machine} given={none} />
          <Deferred order={3} piece={Cards} given={none} />
          {build.board ? <Deferred order={2} piece={Known} given={none} /> : null}
          {build.board ? <Deferred order={5} piece={Modes} given={none} /> : null}
        </div>
        <div class="told" ref={answerPlace}>
          {shown ? (
            <Sheet combination={shown.combination} onClose={closeSheet} />
          ) : (
            <>
              <Part id="answer" title="Answer">
                <div
                  class={working.long ? "now stale" : "now"}
                  aria-busy={working.long}
                  data-answered={told ? addressOf(build) : undefined}
                  data-counted={told && !counting ? "" : undefined}
                >
                  {misasked ? <Misread faults={misasked} /> : null}
                  {failed ? <p role="alert">{failed}</p> : null}
                  {lost !== undefined && !build.board ? (
                    <p role="alert">No build here is called "{lost}". It may have been renamed.</p>
                  ) : null}
                  {!answer && !misasked && !failed ? (
                    <p class="says">{build.board ? "Working it out." : "Choose your board, then add the cards you have and want."}</p>
                  ) : null}
                  {answer ? <AnswerPart answer={answer} counting={counting} /> : null}
                </div>
                <p class="more working">{working.long ? working.says : ""}</p>
              </Part>
              {answer ? <Deferred order={1} piece={Ways} given={{ onSheet }} /> : null}
              {answer ? <History answer={answer} /> : null}
            </>
          )}
        </div>
        <div class="rest">
          <Deferred order={7} piece={ChoiceHistory} given={none} />
          <Deferred order={8} piece={Share} given={none} />
        </div>
        <p class="unseen" role="status" aria-live="polite">
          {answer && !working.now ? spoken(answer) : ""}
        </p>
        {answer && !shown ? <StatusBar answer={answer} onTap={toAnswer} /> : null}
      </div>
    </SharedApp.Provider>
  );
}

const toAnswer = () => goTo("answer");

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
