// Asks the worker for the answer to the newest build. Older questions are dropped; one that holds the worker up for long is ended with it.
// What takes long to count is counted after the answer, by a worker of its own that is ended as soon as the build changes.
import { useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../machine/index.js";
import { type Answer, type Counts, type OnOff, withCounts } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import { type Connection, Ended } from "../worker/engine.js";
import type { Tasks } from "../worker/protocol.js";

export interface Asked {
  readonly answer?: Answer | undefined;
  /** The build that was answered. */
  readonly of?: Build;
  readonly onOff?: readonly OnOff[] | undefined;
  /** All that is counted; while it is not there yet, `counting` says whether it is on the way. */
  readonly counts?: Counts | undefined;
  readonly counting: boolean;
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

/** Counting begins after a rest: while one choice follows another the processor is the page's. */
const rest_ms = 400;

const idle = { now: false, long: false, says: "" } as const;
const nothing: Asked = { counting: false, working: idle };

export function useAnswer(solve: Connection<Tasks>, build: Build): Asked {
  const [asked, setAsked] = useState<Asked>(nothing);
  const running = useRef<{ readonly build: Build; readonly since: number } | undefined>(undefined);
  const wanted = useRef<Build>(build);
  const next = useRef<() => void>(() => {});

  const counter = useRef<Connection<Tasks> | undefined>(undefined);
  const count = (now: Build) => {
    counter.current ??= solve.another();
    const tell = (counts?: Counts) =>
      setAsked((before) => {
        if (before.of !== now) return before;
        return { ...before, answer: counts && before.answer ? withCounts(before.answer, counts) : before.answer, counts, counting: false };
      });
    counter.current
      .ask("count", { build: now, most_ms })
      .then((counts) => tell("kinds" in counts ? counts : undefined))
      .catch((problem: Error) => problem instanceof Ended || tell());
  };

  next.current = () => {
    const now = wanted.current;
    if (now.board === "") {
      setAsked(nothing);
      return;
    }
    const begun = { build: now, since: performance.now() };
    running.current = begun;
    solve
      .ask("answer", { build: now, most_ms })
      .then((reply): Asked => {
        if (reply.kind === "misasked") return { ...nothing, misasked: reply.faults };
        const { answer, counts, onOff } = reply;
        return { answer, of: now, onOff, counts, counting: counts === undefined && answer.verdict !== "ruled-out", working: idle };
      })
      .catch((problem: Error): Asked | undefined =>
        problem instanceof Ended ? undefined : { ...nothing, failed: `The answer could not be worked out: ${problem.message}` },
      )
      .then((told) => {
        if (running.current === begun) running.current = undefined;
        if (wanted.current !== now) return running.current ? undefined : next.current();
        if (told) setAsked(told);
        if (told?.counting) setTimeout(() => wanted.current === now && count(now), rest_ms);
      });
  };

  useEffect(() => () => counter.current?.end(), []);
  useEffect(() => {
    wanted.current = build;
    counter.current?.end();
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
