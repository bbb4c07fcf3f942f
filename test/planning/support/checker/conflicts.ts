// Known conflicts: whether one's conditions all hold in a mode, and what then remains.
import type { CardCondition, Conflict } from "../../../../src/records/index.js";
import { bytesOf, onCard, settingsHold } from "./facts.js";
import { mainMemoryIn } from "./memory.js";
import { inSpan, isBoard } from "./needs.js";
import { positionsOf } from "./place.js";
import { runs } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

export interface Effect {
  readonly objections: readonly Objection[];
  readonly level: number;
}

export function effectsOf(c: Case): Effect[] {
  return c.world.conflicts.flatMap((k) => {
    const inModes = c.modes.map((mode) => applies(c, mode, k));
    if (inModes.includes("yes")) return [effectOf(k, true)];
    return inModes.includes("perhaps") ? [effectOf(k, false)] : [];
  });
}

/** What hangs on the amount of memory, where that is not known, counts as if it were so; a plain "no" is then not known. */
function effectOf(k: Conflict, sure: boolean): Effect {
  if (k.status === "disproved") return { objections: [], level: 0 };
  // "A loss or an oddity is told as if it were so", suspected or not.
  if (k.effect === "cosmetic") return { objections: [], level: 1 };
  if (k.effect === "degrades") return { objections: [], level: 2 };
  if (k.status === "suspected") return { objections: [unknown(`whether ${k.id} is so`)], level: 0 };
  if (!k.remedies && !sure) return { objections: [unknown(`memory of the machine, for ${k.id}`)], level: 0 };
  return k.remedies ? { objections: [], level: 3 } : { objections: [no(k.id)], level: 0 };
}

function memoryHolds(c: Case, mode: ModeOfUse, { when }: Conflict): "yes" | "no" | "perhaps" {
  if (when.memory_at_least === undefined && when.memory_at_most === undefined) return "yes";
  const there = mainMemoryIn(c, mode);
  if (!there) return "perhaps";
  const least = when.memory_at_least === undefined ? 0 : bytesOf(when.memory_at_least);
  const most = when.memory_at_most === undefined ? Number.POSITIVE_INFINITY : bytesOf(when.memory_at_most);
  if (there.to < least || there.from > most) return "no";
  return there.from >= least && there.to <= most ? "yes" : "perhaps";
}

/** "Conditions; all that are given must hold at once, in one mode." */
function applies(c: Case, mode: ModeOfUse, k: Conflict): "yes" | "no" | "perhaps" {
  const { when } = k;
  const others =
    (!when.boards || isBoard(c, when.boards)) &&
    (!when.firmware || when.firmware.some((span) => inSpan(c, span, mode.version))) &&
    (when.modes_at_least === undefined || c.modes.length >= when.modes_at_least) &&
    choices(c, when.cards ?? []).some((chosen) => cardsHold(mode, when.cards ?? [], chosen, when.adjacent ?? false));
  return others ? memoryHolds(c, mode, k) : "no";
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
