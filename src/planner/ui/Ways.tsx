// The combinations that work, best proven first: each with slots, settings, what to do, what it rests on. Narrowed by verdict and evidence; two of them
// can be laid side by side.
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Answer, Combination, Only } from "../../planning/index.js";
import { Ended } from "../worker/engine.js";
import { useApp } from "./app-context.js";
import { Compare } from "./Compare.js";
import { Deferred } from "./deferred.js";
import { Narrow } from "./Narrow.js";
import { Way } from "./Way.js";

type Ways = readonly Combination[];

/** Longest the worker looks for ways of one kind. */
const most_ms = 5000;

/** The ways of one kind alone, asked for when something is narrowed; undefined while they are looked for. */
function useWays(answer: Answer, only: Only): Ways | undefined {
  const { solve, answered } = useApp();
  const all = answer.combinations;
  const any = only.verdict === undefined && only.evidence === undefined;
  const [told, setTold] = useState<{ readonly all: Ways; readonly only: Only; readonly ways: Ways }>();
  useEffect(() => {
    if (any) return;
    let wanted = true;
    solve
      .ask("narrow", { build: answered, only, most_ms })
      .then((found) => wanted && setTold({ all, only, ways: found.kind === "narrowed" ? found.ways : [] }))
      .catch((problem: Error) => wanted && !(problem instanceof Ended) && setTold({ all, only, ways: [] }));
    return () => {
      wanted = false;
    };
  }, [solve, answered, all, only, any]);
  if (any) return all;
  return told?.all === all && told.only === only ? told.ways : undefined;
}

export function Ways({ onSheet }: { onSheet: (c: Combination) => void }) {
  const { answer } = useApp();
  return answer && answer.combinations.length > 0 ? <Listed answer={answer} onSheet={onSheet} /> : null;
}

function Listed({ answer, onSheet }: { answer: Answer; onSheet: (c: Combination) => void }) {
  const { counts, counting } = useApp();
  const [only, setOnly] = useState<Only>({});
  const [marked, setMarked] = useState<{ readonly of?: Ways | undefined; readonly numbers: readonly number[] }>({ numbers: [] });
  const ways = useWays(answer, only);
  const compared = ways && marked.of === ways ? marked.numbers : [];
  const mark = useRef((_: number) => {});
  mark.current = (n) =>
    setMarked({ of: ways, numbers: compared.includes(n) ? compared.filter((c) => c !== n) : [...compared.slice(-1), n] });
  const onMark = useCallback((n: number) => mark.current(n), []);
  return (
    <section id="ways" aria-labelledby="ways-title">
      <h2 id="ways-title" tabIndex={-1}>
        {answer.verdict === "unknown" ? "Combinations that may work" : "Combinations that work"}
      </h2>
      <div class="body">
        {counts ? <Narrow counts={counts} only={only} onNarrow={setOnly} /> : null}
        <p class="more" role="status">
          {said(ways)}
          {counting ? " All the others are still being counted." : ""}
        </p>
        {ways && compared.length === 2 ? <Compare ways={ways} numbers={compared} /> : null}
        <ol class="ways-list" aria-busy={ways === undefined}>
          {ways?.map((combination, i) => (
            <Deferred
              key={i}
              order={6}
              piece={Way}
              given={{
                combination,
                number: i + 1,
                first: i === 0,
                marked: compared.includes(i + 1),
                onMark: ways.length > 1 ? onMark : undefined,
                onSheet,
              }}
            />
          ))}
        </ol>
      </div>
    </section>
  );
}

function said(ways: Ways | undefined): string {
  if (!ways) return "Looking for these combinations.";
  if (ways.length === 0) return "No combination found is of that kind. Widen one of the choices above.";
  if (ways.length === 1) return "One kind of combination.";
  return `${ways.length} kinds of combination, best proven first. Mark two to lay them side by side.`;
}
