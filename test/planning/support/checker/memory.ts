// How much main memory the machine has in a mode: on the board, and on the cards whose records say that theirs counts.
import type { Claims, MemoryWindow } from "../../../../src/records/index.js";
import { bytesOf, onCard, settingsHold, standsAt } from "./facts.js";
import { keeps } from "./switching.js";
import type { Case, Fitted, ModeOfUse } from "./world.js";

const windows = (claims: Claims): readonly MemoryWindow[] => (Array.isArray(claims.memory) ? claims.memory : []);

/** The least and the most there may be, beside one card; undefined where the amount is written down nowhere. */
export function mainMemoryIn(c: Case, mode: ModeOfUse, beside?: Fitted): { readonly from: number; readonly to: number } | undefined {
  const { memory } = c.world.board;
  const fitted = c.machine.memory;
  const named = c.fitted.some((f) => everyClaim(f).some((claims) => windows(claims).some((w) => w.main === true)));
  if (fitted === 0 && !(memory === "none" && named)) return undefined;
  const counted = c.fitted.filter((f) => f !== beside && keeps(f, mode, "memory")).flatMap((f) => heldClaims(f).flatMap(windows));
  // A build that names an amount on a board without memory names what there is in all; where its cards have more, there may be more.
  const inAll = memory === "none" && fitted > 0;
  const sum = (of: readonly MemoryWindow[]) => of.reduce((n, w) => n + bytesOf(w.size), inAll ? 0 : fitted);
  // "Left out: not known, where ram answers or nothing is said of what does; else no."
  const open = (w: MemoryWindow) => w.main === undefined && (w.is === undefined || w.is === "ram");
  const [from, to] = [sum(counted.filter((w) => w.main === true)), sum(counted.filter((w) => w.main === true || open(w)))];
  return inAll ? { from: fitted, to: Math.max(fitted, to) } : { from, to };
}

const listOf = (f: Fitted) => (Array.isArray(f.card.claims) ? f.card.claims : []);

function everyClaim(f: Fitted): readonly Claims[] {
  return [...listOf(f), ...(f.card.settings ?? []).flatMap((s) => s.positions)];
}

function heldClaims(f: Fitted): readonly Claims[] {
  const positions = (f.card.settings ?? []).flatMap((s) => s.positions.filter((p) => p.id === standsAt(f, s.id)));
  return [...listOf(f).filter((claim) => onCard(claim, f) && settingsHold(f, claim.when)), ...positions];
}
