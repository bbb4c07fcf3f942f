// Where a card stands: bus, edge, room, openings, bus mastering, and the settings that a card can have at all.
import type { Slot } from "../../../../src/records/index.js";
import { known, onBoard, onCard, settingsHold, slotsOf } from "./facts.js";
import { type Case, type Fitted, no, type Objection, unknown } from "./world.js";

export function placeObjections(c: Case): Objection[] {
  return [...c.fitted.flatMap((f) => [...fitsSlot(c, f), ...settingsCanBe(f)]), ...apart(c)];
}

function fitsSlot(c: Case, f: Fitted): Objection[] {
  const { world } = c;
  const out: Objection[] = [];
  if (f.card.bus !== world.board.bus) out.push(no(`${f.as} is made for another bus`));
  const edge = world.bus.edges.find((e) => e.id === f.card.edge);
  if (!edge?.fits.includes(f.slot.edge)) out.push(no(`${f.as} does not go into ${f.slot.id}`));
  if (!onBoard(f.slot, c)) out.push(no(`there is no ${f.slot.id} on this revision`));
  if (positionsOf(f).some((p) => !slotsOf(c).some((s) => s.position === p))) out.push(no(`${f.as} has no room beyond ${f.slot.id}`));
  out.push(...goesIn(f, "length", f.card.room.length_mm, f.slot.longest_mm));
  out.push(...goesIn(f, "height", f.card.room.height_mm, f.slot.highest_mm));
  if (f.card.needs?.bus_master) {
    const works = known(f.slot.bus_master);
    if (works === undefined) out.push(unknown(`whether a bus master works in ${f.slot.id}`));
    else if (!works) out.push(no(`${f.slot.id} takes no bus master`));
  }
  return out;
}

function goesIn(f: Fitted, what: string, card: Fitted["card"]["room"]["length_mm"], slot: Slot["longest_mm"]): Objection[] {
  const [takes, limit] = [known(card), known(slot)];
  if (limit === "any") return [];
  if (takes === undefined || limit === undefined) return [unknown(`${what} of ${f.as} in ${f.slot.id}`)];
  return takes > limit ? [no(`${what} of ${f.as} in ${f.slot.id}`)] : [];
}

/** The places a card takes, "counted upwards from its own". */
export const positionsOf = (f: Fitted): number[] => Array.from({ length: f.card.room.slots ?? 1 }, (_, i) => f.slot.position + i);

/** Two cards take no slot twice, nor one rear opening. */
function apart(c: Case): Objection[] {
  const out: Objection[] = [];
  c.fitted.forEach((a, i) => {
    for (const b of c.fitted.slice(i + 1)) {
      if (positionsOf(a).some((p) => positionsOf(b).includes(p))) out.push(no(`${a.as} and ${b.as} in one slot`));
      const opening = (f: Fitted) => (f.card.room.opening ? f.slot.opening : undefined);
      if (opening(a) !== undefined && opening(a) === opening(b)) out.push(no(`${a.as} and ${b.as} through one opening`));
    }
  });
  return out;
}

function settingsCanBe(f: Fitted): Objection[] {
  const out: Objection[] = [];
  // A setting that this revision lacks is no choice: it is counted once, at its first position.
  for (const s of f.card.settings ?? [])
    if (!onCard(s, f) && f.settings[s.id] !== s.positions[0]?.id) out.push(no(`${f.as} has no ${s.id} to set`));
  for (const pair of f.card.impossible ?? []) if (settingsHold(f, pair.when)) out.push(no(`${f.as}: ${pair.why}`));
  return out;
}
