// At which step of the bench test a fault is first found: with a meter and no power, when the firmware is started without cards, when the
// cards are in, or not at all. One row for each kind of fault and step, one for each thing that a wrongly burned device shows.
import { itemAt } from "../../records/index.js";
import type { FaultCase } from "../faults/fault-case.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { solvedAt, type Variant } from "../simulate/model.js";
import { keyOf, observe } from "../simulate/observe.js";
import type { Fault, FindingRow, FoundAt } from "../types.js";

export function findingRows(built: BuiltModel, cases: readonly FaultCase[]): FindingRow[] {
  const { model, good } = built;
  const positions = model.positions.flatMap((_, p) => (model.modeAt[p] === undefined ? [] : [p]));
  const planned = observe(built, good, positions);
  const rows = new Map<string, FindingRow & { readonly faults: string[] }>();
  for (const { fault, variant } of cases) {
    const seen = observe(built, variant, positions);
    const at = foundAt(built, positions, fault, variant, {
      shows: seen.some((o, i) => o.shows !== itemAt(planned, i).shows),
      cards: keyOf(seen) !== keyOf(planned),
    });
    const shows = at === "firmware" ? seen.map((o) => ({ position: o.position, shows: o.shows })) : [];
    const key = `${at} ${at === "firmware" ? JSON.stringify(shows) : fault.kind}`;
    const row = rows.get(key) ?? { at, kinds: [], shows, faults: [], says: [] };
    rows.set(key, {
      ...row,
      kinds: row.kinds.includes(fault.kind) ? row.kinds : [...row.kinds, fault.kind],
      faults: [...row.faults, fault.id],
      says: [...row.says, fault.says],
    });
  }
  const order: readonly FoundAt[] = ["meter", "resistance", "firmware", "cards", "read-back", "nothing"];
  return [...rows.values()].sort((a, b) => order.indexOf(a.at) - order.indexOf(b.at));
}

function foundAt(
  built: BuiltModel,
  positions: readonly number[],
  fault: Fault,
  variant: Variant,
  seen: { readonly shows: boolean; readonly cards: boolean },
): FoundAt {
  const { good, model } = built;
  // Every wire is measured by itself, and so is every lifted pin against the contact below it.
  if (fault.kind === "wire-open" || variant.strong.length > 0) return "meter";
  if (positions.some((p) => piecesOf(solvedAt(model, variant, p).group) !== piecesOf(solvedAt(model, good, p).group))) return "meter";
  // The bare switch, before a wire is on it.
  if (positions.some((p) => contactsOf(itemAt(variant.closed, p)) !== contactsOf(itemAt(good.closed, p)))) return "meter";
  if (good.pullUps.some((node) => !variant.pullUps.includes(node))) return "resistance";
  if (seen.shows) return "firmware";
  if (seen.cards) return "cards";
  return JSON.stringify(variant.content) === JSON.stringify(good.content) ? "nothing" : "read-back";
}

/** The pieces of copper, by the first point of each: the same text for the same pieces. */
function piecesOf(group: Int16Array): string {
  const first = new Map<number, number>();
  group.forEach((piece, node) => {
    if (!first.has(piece)) first.set(piece, node);
  });
  return [...group].map((piece) => first.get(piece)).join(" ");
}

function contactsOf(closed: readonly (readonly [number, number])[]): string {
  return closed
    .map(([a, b]) => `${Math.min(a, b)} ${Math.max(a, b)}`)
    .sort()
    .join(";");
}
