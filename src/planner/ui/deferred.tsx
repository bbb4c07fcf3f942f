// The pace of setting the page anew: piece by piece, each in a turn of its own, so that a tap in between is answered at once however large
// the machine. While pieces are waiting, the page says so.

import type { ComponentType, RefObject } from "preact";
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import { SharedApp, useApp } from "./app-context.js";

let due = 0;
const watchers = new Set<(waiting: boolean) => void>();

function owe(change: 1 | -1): void {
  const before = due;
  due += change;
  if (before > 0 === due > 0) return;
  document.getElementById("planner")?.toggleAttribute("data-due", due > 0);
  for (const watcher of watchers) watcher(due > 0);
}

/** Keeps a part of the page as high as it was until its last piece is set, so that what stands below it does not leap up and down again. */
export function useHeldHeight<E extends HTMLElement>(): RefObject<E | null> {
  const place = useRef<E>(null);
  useEffect(() => {
    const part = place.current;
    if (!part) return;
    let height = 0;
    const seen = new ResizeObserver(() => {
      height = part.offsetHeight;
    });
    seen.observe(part);
    const hold = (waiting: boolean) => {
      part.style.minHeight = waiting ? `${height}px` : "";
    };
    watchers.add(hold);
    return () => {
      seen.disconnect();
      watchers.delete(hold);
    };
  }, []);
  return place;
}

/** What was tapped is shown by the browser at once; all that follows from it is set after that. While something is due, the page says so. */
export function afterPaint(then: () => void): void {
  owe(1);
  requestAnimationFrame(() =>
    setTimeout(() => {
      then();
      owe(-1);
    }),
  );
}

interface Turn {
  readonly order: number;
  readonly run: () => void;
}

const turns: Turn[] = [];
let going = false;
const bell = new MessageChannel();
bell.port1.onmessage = () => {
  const next = turns.shift();
  next?.run();
  if (turns.length > 0) return bell.port2.postMessage(0);
  going = false;
  owe(-1);
};

/** Runs in a turn of its own, lower orders first. Gives a way to call it off. */
function inTurn(order: number, run: () => void): () => void {
  const turn = { order, run };
  const after = turns.findIndex((t) => t.order > order);
  turns.splice(after < 0 ? turns.length : after, 0, turn);
  if (!going) {
    going = true;
    owe(1);
    bell.port2.postMessage(0);
  }
  return () => {
    const at = turns.indexOf(turn);
    if (at >= 0) turns.splice(at, 1);
  };
}

/** A value that follows in its turn; what is set for the first time is there at once. */
export function useDeferred<T>(value: T, order: number): T {
  const [shown, setShown] = useState({ value });
  useLayoutEffect(() => (shown.value === value ? undefined : inTurn(order, () => setShown({ value }))), [value, order]);
  return shown.value;
}

/** A piece of the page with the app context, and what else it is given, as of its own turn. It is set anew only when one of them has changed. */
export function Deferred<P extends object>({ order, piece: Piece, given }: { order: number; piece: ComponentType<P>; given: P }) {
  const app = useApp();
  const wanted = useMemo(() => ({ app, given }), [app, ...Object.values(given)]);
  const now = useDeferred(wanted, order);
  return useMemo(
    () => (
      <SharedApp.Provider value={now.app}>
        <Piece {...now.given} />
      </SharedApp.Provider>
    ),
    [now, Piece],
  );
}
