// Known conflicts: whether one's conditions all hold in a mode, and what then remains.
import type { CardCondition, Conflict } from "../../../../src/records/index.js";
import { bytesOf, memoryKnown, onCard, settingsHold } from "./facts.js";
import { inSpan, isBoard } from "./needs.js";
import { positionsOf } from "./place.js";
import { runs } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

export interface Effect {
  readonly objections: readonly Objection[];
  readonly level: number;
}

export function effectsOf(c: Case): Effect[] {
  return c.world.conflicts.filter((k) => c.modes.some((mode) => applies(c, mode, k))).map((k) => effectOf(c, k));
}

function effectOf(c: Case, k: Conflict): Effect {
  if (k.status === "disproved") return { objections: [], level: 0 };
  // "A loss or an oddity is told as if it were so", suspected or not.
  if (k.effect === "cosmetic") return { objections: [], level: 1 };
  if (k.effect === "degrades") return { objections: [], level: 2 };
  if (k.status === "suspected") return { objections: [unknown(`whether ${k.id} is so`)], level: 0 };
  if (!k.remedies && onMemory(k) && !memoryKnown(c)) return { objections: [unknown(`memory of the machine, for ${k.id}`)], level: 0 };
  return k.remedies ? { objections: [], level: 3 } : { objections: [no(k.id)], level: 0 };
}

const onMemory = ({ when }: Conflict) => when.memory_at_least !== undefined || when.memory_at_most !== undefined;

/** Where the board's record has no memory the condition may hold, and counts as if it did; a plain "no" is then not known. */
function memoryHolds({ machine: { memory } }: Case, { when }: Conflict): boolean {
  return (
    (when.memory_at_least === undefined || memory >= bytesOf(when.memory_at_least)) &&
    (when.memory_at_most === undefined || memory <= bytesOf(when.memory_at_most))
  );
}

/** "Conditions; all that are given must hold at once, in one mode." */
function applies(c: Case, mode: ModeOfUse, k: Conflict): boolean {
  const { when } = k;
  return (
    (!when.boards || isBoard(c, when.boards)) &&
    (!when.firmware || when.firmware.some((span) => inSpan(c, span, mode.version))) &&
    (!memoryKnown(c) || memoryHolds(c, k)) &&
    (when.modes_at_least === undefined || c.modes.length >= when.modes_at_least) &&
    choices(c, when.cards ?? []).some((chosen) => cardsHold(mode, when.cards ?? [], chosen, when.adjacent ?? false))
  );
}

/** Every way to take one card of the machine for each condition, no card for two. */
function choices(c: Case, conditions: readonly CardCondition[]): Fitted[][] {
  return conditions.reduce<Fitted[][]>(
    (all, condition) =>
      all.flatMap((head) => c.fitted.filter((f) => f.card.id === condition.card && !head.includes(f)).map((f) => [...head, f])),
    [[]],
  );
}

function cardsHold(mode: ModeOfUse, conditions: readonly CardCondition[], chosen: readonly Fitted[], adjacent: boolean): boolean {
  const each = conditions.every((condition, i) => {
    const f = chosen[i]!;
    return (
      onCard(condition, f) &&
      settingsHold(f, condition.settings) &&
      (!condition.slots || condition.slots.includes(f.slot.id)) &&
      (condition.edge === undefined || condition.edge === f.slot.edge) &&
      (condition.even_disabled === true || runs(f, mode))
    );
  });
  const [a, b] = chosen;
  return each && (!adjacent || a === undefined || b === undefined || sideBySide(a, b));
}

/** "A slot that one takes is next to a slot that the other takes." */
function sideBySide(a: Fitted, b: Fitted): boolean {
  return positionsOf(a).some((p) => positionsOf(b).some((q) => Math.abs(p - q) === 1));
}
