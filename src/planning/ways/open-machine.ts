// The machine with so many ways, compiled, and nothing said of what is on in which: whatever is wished of it is added to it. Compiling is most
// of the work of a search for ways, so a question keeps what has been compiled of it.
import { switchable } from "../../catalogue/index.js";
import { type Compiled, compile } from "../../encoding/index.js";
import type { ResolvedBuild, ResolvedMode } from "../../machine/index.js";

const machines = new WeakMap<ResolvedBuild, Map<number, Compiled>>();

/** The question with `count` modes, in each of which any card that can be switched off may be on or off. */
export function openMachine(question: ResolvedBuild, count: number): Compiled {
  const kept = machines.get(question) ?? new Map<number, Compiled>();
  machines.set(question, kept);
  const known = kept.get(count);
  if (known) return known;
  const all = new Set(question.cards.map((c) => c.as));
  const free = new Set(question.cards.filter((c) => switchable(c.card)).map((c) => c.as));
  const modes = Array.from({ length: count }, (_, at): ResolvedMode => {
    const id = `way-${at + 1}`;
    return { id, name: id, enabled: all, free, safest: false };
  });
  const compiled = compile({ ...question, modes });
  kept.set(count, compiled);
  return compiled;
}
