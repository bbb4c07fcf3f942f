// The pace of setting the page anew: piece by piece, each in a turn of its own, so that a tap in between is answered at once however large
// the machine. While pieces are waiting, the page says so.

import type { ComponentType } from "preact";
import { useLayoutEffect, useMemo, useState } from "preact/hooks";
import { DeskContext, useDesk } from "./desk.js";

let due = 0;

function owe(change: 1 | -1): void {
  due += change;
  const page = document.getElementById("planner");
  if (due === 0) page?.removeAttribute("data-due");
  else page?.setAttribute("data-due", "");
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
export function usePaced<T>(value: T, order: number): T {
  const [shown, setShown] = useState({ value });
  useLayoutEffect(() => (shown.value === value ? undefined : inTurn(order, () => setShown({ value }))), [value, order]);
  return shown.value;
}

/** A piece of the page with the desk, and what else it is given, as of its own turn. It is set anew only when one of them has changed. */
export function Paced<P extends object>({ order, piece: Piece, given }: { order: number; piece: ComponentType<P>; given: P }) {
  const desk = useDesk();
  const wanted = useMemo(() => ({ desk, given }), [desk, ...Object.values(given)]);
  const now = usePaced(wanted, order);
  return useMemo(
    () => (
      <DeskContext.Provider value={now.desk}>
        <Piece {...now.given} />
      </DeskContext.Provider>
    ),
    [now, Piece],
  );
}
