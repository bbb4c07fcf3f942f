// Asks the worker for the answer to the newest build. Older questions are dropped; one that holds the worker up for long is ended with it.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Answer, Fault } from "../../../planning/index.js";
import type { Build } from "../../../records/index.js";
import { type Connection, Ended } from "../engine/engine.js";
import type { Facet } from "../engine/facets.js";
import type { Tasks } from "../engine/protocol.js";

export interface Asked {
  readonly answer?: Answer;
  /** The build that was answered. */
  readonly of?: Build;
  readonly facets: readonly Facet[];
  readonly misasked?: readonly Fault[];
  readonly failed?: string;
  readonly working: { readonly now: boolean; readonly long: boolean; readonly says: string };
}

/** Longest the worker looks for an answer; then it says what it has found. */
const most_ms = 10_000;
/** After so long it is said that work is going on; after the second, how far. */
const said_ms = 200;
const counted_ms = 2000;
/** A worker busy with an older build for longer is ended rather than waited for. */
const patience_ms = 700;

const idle = { now: false, long: false, says: "" } as const;

export function useAnswer(solve: Connection<Tasks>, build: Build): Asked {
  const [asked, setAsked] = useState<Asked>({ facets: [], working: idle });
  const running = useRef<{ readonly build: Build; readonly since: number } | undefined>(undefined);
  const wanted = useRef<Build>(build);
  const next = useRef<() => void>(() => {});

  next.current = () => {
    const now = wanted.current;
    if (now.board === "") {
      setAsked({ facets: [], working: idle });
      return;
    }
    const begun = { build: now, since: performance.now() };
    running.current = begun;
    solve
      .ask("answer", { build: now, most_ms })
      .then((reply): Asked => {
        if (reply.kind === "misasked") return { facets: [], misasked: reply.faults, working: idle };
        return { answer: reply.answer, of: now, facets: reply.facets, working: idle };
      })
      .catch((problem: Error): Asked | undefined =>
        problem instanceof Ended
          ? undefined
          : { facets: [], failed: `The answer could not be worked out: ${problem.message}`, working: idle },
      )
      .then((told) => {
        if (running.current === begun) running.current = undefined;
        if (wanted.current !== now) return running.current ? undefined : next.current();
        if (told) setAsked(told);
      });
  };

  useEffect(() => {
    wanted.current = build;
    setAsked((before) => ({ ...before, working: { now: true, long: false, says: "" } }));
    if (!running.current) next.current();
    const impatient = setTimeout(() => {
      if (!running.current || running.current.build === build) return;
      running.current = undefined;
      solve.end();
      next.current();
    }, patience_ms);
    const from = performance.now();
    const say = setInterval(() => {
      if (!running.current) return clearInterval(say);
      setAsked((before) => {
        if (!before.working.now) return before;
        const gone = performance.now() - from;
        const seconds = Math.round(gone / 1000);
        const says = gone < counted_ms ? "Working it out." : `Working it out: ${seconds} s, at most ${most_ms / 1000} s.`;
        return before.working.long && before.working.says === says ? before : { ...before, working: { now: true, long: true, says } };
      });
    }, said_ms);
    return () => {
      clearTimeout(impatient);
      clearInterval(say);
    };
  }, [build, solve]);

  return asked;
}
