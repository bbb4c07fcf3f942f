// Known conflicts as conditional rules: when these conditions hold, this happens, with these remedies, on this evidence.

import { inRange } from "../../catalogue/index.js";
import { bytes, type Conflict, itemAt } from "../../records/index.js";
import type { Literal } from "../../solver/index.js";
import {
  type ConstraintDraft,
  conjunctions,
  fact,
  howToFindMemory,
  never,
  ref,
  refusedByMemory,
  type SoftLevel,
  type TradeRule,
} from "../draft.js";
import type { Condition } from "../facts.js";
import {
  cardIn,
  eachCard,
  eachMode,
  type Frame,
  inSlot,
  modeKept,
  ofRevision,
  onRevisions,
  runsIn,
  runsVersion,
  settingsStand,
} from "../frame.js";
import { conflictsAmong } from "../lookup.js";
import { between, knowsMachineMemory, memoryHolds } from "../machine-memory.js";

export const conflicts: TradeRule = {
  name: "conflict",
  says: "A confirmed conflict that blocks is avoided or remedied; a suspected one leaves the matter open; a disproved one counts for nothing.",
  drafts: (frame) =>
    conflictsAmong(
      frame.question.catalogue,
      frame.question.board.id,
      frame.question.cards.map((c) => c.card.id),
    ).flatMap((c) => (c.status === "disproved" ? [] : conflictDrafts(frame, c))),
};

/** What one conflict record means for this machine; nothing when its conditions cannot hold in it. */
export function conflictDrafts(frame: Frame, conflict: Conflict): ConstraintDraft[] {
  const when = occurrences(frame, conflict);
  if (when.length === 0) return [];
  const refs = [ref("conflict", conflict.id), ...(conflict.when.cards ?? []).map((c) => ref("card", c.card))];
  const told = fact("conflict", `${conflict.name}: ${conflict.symptoms[0]}`, ...refs);
  const soft = (level: SoftLevel, kind: Condition["kind"], says: string, loss?: Condition["loss"]): ConstraintDraft => ({
    kind: "soft",
    fact: told,
    when,
    level,
    condition: {
      kind,
      says,
      ...(loss ? { loss } : {}),
      ways: (conflict.remedies ?? []).map((r) => ({ says: r.says, costs: r.costs, part: r.part })),
      refs,
    },
  });
  if (conflict.effect === "cosmetic") return [soft(1, "cosmetic", `${conflict.name}: ${conflict.symptoms[0]}`)];
  if (conflict.effect === "degrades") {
    const loss = { says: conflict.loss ?? conflict.name, suspected: conflict.status === "suspected" };
    return [soft(2, "loss", `${loss.suspected ? "Perhaps: " : ""}${loss.says}`, loss)];
  }
  if (conflict.status === "suspected")
    return [
      {
        kind: "unknown",
        fact: fact("conflict", `Suspected, not settled: ${conflict.name}.`, ...refs),
        how: conflict.settle ?? "Try it, and tell the record keeper.",
        when,
      },
    ];
  if ((conflict.remedies ?? []).length > 0) return [soft(3, "remedy", conflict.name)];
  // Where the board's record has no memory, a condition on it may hold: that counts as if it did, but rules nothing out.
  const { memory_at_least: least, memory_at_most: most } = conflict.when;
  if (least === undefined && most === undefined) return never(frame, told, ...when);
  if (!knowsMachineMemory(frame)) return [{ kind: "unknown", fact: told, how: howToFindMemory(frame), when }];
  return refusedByMemory(
    frame,
    told,
    { sure: occurrences(frame, conflict, ["yes"]), perhaps: occurrences(frame, conflict, ["perhaps"]) },
    [],
  );
}

/** Every way the conditions can hold in this machine, as conjunctions: one per mode, copy of a card, and pair of neighbouring slots. */
export function occurrences(
  frame: Frame,
  { when }: Pick<Conflict, "when">,
  byMemory: readonly ("yes" | "perhaps")[] = ["yes", "perhaps"],
): Literal[][] {
  const { family, board, slots, modes } = frame.question;
  if (when.boards && !when.boards.some((b) => b.board === board.id)) return [];
  if (when.modes_at_least !== undefined && modes.length < when.modes_at_least) return [];
  const machine: Literal[] = [
    onRevisions(frame, (r) => !when.boards || when.boards.some((b) => b.board === board.id && (!b.revisions || b.revisions.includes(r)))),
  ];
  const { memory_at_least: least = 0, memory_at_most: most } = when;
  const amount = between(bytes(least), most === undefined ? Number.POSITIVE_INFINITY : bytes(most));
  const judged = (when.memory_at_least !== undefined || most !== undefined) && knowsMachineMemory(frame);
  const memoryIn = (m: number): readonly (readonly Literal[])[] => {
    if (!judged) return [[]];
    const states = memoryHolds(frame, m, amount);
    return byMemory.flatMap((answer) => (answer === "yes" ? states.sure : states.perhaps));
  };
  const found = eachMode(frame).flatMap(({ at: m }) => {
    const versions = when.firmware;
    const version = versions ? runsVersion(frame, m, (v) => versions.some((s) => inRange(family, v, s))) : modeKept(frame, m);
    const copies = (when.cards ?? []).map((c) =>
      eachCard(frame).filter(({ at, asked }) => asked.card.id === c.card && (c.even_disabled || runsIn(frame, m, at).values.length > 0)),
    );
    return choices(copies).flatMap((chosen) => {
      if (new Set(chosen.map((c) => c.at)).size !== chosen.length) return [];
      const perCard = chosen.flatMap(({ at }, i) => {
        const c = itemAt(when.cards ?? [], i);
        return [
          cardIn(frame, at),
          ofRevision(frame, at, (r) => !c.revisions || c.revisions.includes(r)),
          ...(c.even_disabled ? [] : [runsIn(frame, m, at)]),
          inSlot(frame, at, (s) => (!c.slots || c.slots.includes(s.id)) && (!c.edge || s.edge === c.edge)),
          ...settingsStand(frame, at, c.settings ?? {}),
        ];
      });
      const bases = memoryIn(m).map((memory) => [...machine, version, ...perCard, ...memory]);
      const [a, b] = chosen;
      if (!when.adjacent || !a || !b) return bases;
      const wide = (of: (typeof chosen)[number]) => of.asked.card.room.slots ?? 1;
      return slots.flatMap((s) =>
        slots
          .filter((t) => t.position === s.position + wide(a) || s.position === t.position + wide(b))
          .flatMap((t) =>
            bases.map((base) => [...base, inSlot(frame, a.at, (x) => x.id === s.id), inSlot(frame, b.at, (x) => x.id === t.id)]),
          ),
      );
    });
  });
  return mergeSame(conjunctions(frame, found));
}

function mergeSame(all: Literal[][]): Literal[][] {
  const seen = new Set<string>();
  return all.filter((literals) => {
    const key = JSON.stringify(literals);
    return seen.has(key) ? false : seen.add(key);
  });
}

/** Cartesian product; one empty choice for no lists. */
function choices<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, next) => all.flatMap((head) => next.map((item) => [...head, item])), [[]]);
}
