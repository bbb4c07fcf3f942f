// Everything that takes ports, memory, interrupts or DMA: the cards under their settings, and the board itself.
// One list, so that every clash is found by comparing two of its entries.
import { claimsAnywhere, claimsInSlot, followsSlot, lacksSpace, lineId, mainMemory } from "../catalogue/index.js";
import type { Release } from "../machine/index.js";
import { type Bus, bytes, type Claims, hex, known, listed, resourceKinds, type Slot, unknown } from "../records/index.js";
import type { Literal } from "../solver/index.js";
import type { Ref } from "./facts.js";
import {
  always,
  cardIn,
  eachCard,
  eachMode,
  type Frame,
  holdsIn,
  inSlot,
  modeKept,
  ofRevision,
  onRevisions,
  setTo,
  settingsStand,
  withMemory,
} from "./frame.js";

export interface ResourceClaim {
  /** Index of the card, or undefined for the board. */
  readonly card?: number;
  /** "Tallow bus tracer with J2 at D000" */
  readonly who: string;
  readonly when: readonly (Literal | undefined)[];
  readonly claims: Claims;
  readonly ref: Ref;
}

/** Every claim of the machine with the condition it stands under. */
export function resourceClaims(frame: Frame): ResourceClaim[] {
  return [...boardTakings(frame), ...cardTakings(frame).flatMap((taken) => bySlot(frame, taken))];
}

/** Windows that follow the slot, slot by slot; where the number of a slot is not known they are told apart. */
function bySlot(frame: Frame, taken: ResourceClaim): ResourceClaim[] {
  const at = taken.card;
  if (at === undefined || !followsSlot(taken.claims)) return [taken];
  const rest = { ...taken, claims: claimsAnywhere(taken.claims) };
  const placed = frame.question.slots.flatMap((slot): ResourceClaim[] => {
    const claims = claimsInSlot(taken.claims, slot);
    if (!claims) return [];
    return [{ ...taken, who: `${taken.who} in ${slot.id}`, when: [...taken.when, inSlot(frame, at, (s) => s.id === slot.id)], claims }];
  });
  return [rest, ...placed];
}

/** What follows the slot, with the slots whose number nobody knows. */
export function unplaced(frame: Frame): { readonly taken: ResourceClaim; readonly slot: Slot }[] {
  const following = cardTakings(frame).filter((taken) => followsSlot(taken.claims));
  const open = frame.question.slots.filter((slot) => known(slot.number) === unknown);
  return following.flatMap((taken) => open.map((slot) => ({ taken, slot })));
}

function boardTakings(frame: Frame): ResourceClaim[] {
  const { board } = frame.question;
  const fixed = board.fixed.map(
    (f, at): ResourceClaim => ({
      who: `${f.name} of the board`,
      when: [
        onRevisions(frame, (r) => !f.revisions || f.revisions.includes(r)),
        withMemory(frame, (m) => !f.when_memory || f.when_memory.some((s) => bytes(s) === m)),
      ],
      claims: f,
      ref: { kind: "board", id: board.id, pointer: `/fixed/${at}` },
    }),
  );
  const sockets = board.firmware_sockets.map(
    (s, at): ResourceClaim => ({
      who: `the firmware in ${s.id}`,
      when: [onRevisions(frame, (r) => !s.revisions || s.revisions.includes(r))],
      claims: { memory: [{ ...s.window, is: "rom" }] },
      ref: { kind: "board", id: board.id, pointer: `/firmware_sockets/${at}` },
    }),
  );
  return [...fixed, ...sockets, ...mainMemoryTakings(frame)];
}

/** Fitted memory answers from its base up to the first thing of the board in its way; what lies beyond is reached otherwise. */
function mainMemoryTakings(frame: Frame): ResourceClaim[] {
  const { board, bus, memories, revisions } = frame.question;
  const main = mainMemory(board);
  if (main?.base === undefined) return [];
  const { base, space } = main;
  // A window that may lie in the same space may be in the way; which space it lies in is then told as not known.
  const here = (w: { readonly space?: string | undefined }) => w.space === space || lacksSpace(bus, w) || lacksSpace(bus, main);
  return memories.flatMap((memory) =>
    revisions.flatMap((revision): ResourceClaim[] => {
      const there = (of: { readonly revisions?: readonly string[] }) => !of.revisions || of.revisions.includes(revision);
      const fixed = board.fixed.filter((f) => there(f) && (!f.when_memory || f.when_memory.some((s) => bytes(s) === memory)));
      const windows = [...fixed.flatMap((f) => listed(f.memory)), ...board.firmware_sockets.filter(there).map((s) => s.window)];
      const inTheWay = windows.filter((w) => here(w) && w.base + bytes(w.size) > base);
      const end = Math.min(base + memory, ...inTheWay.map((w) => w.base));
      if (end <= base) return [];
      return [
        {
          who: `the main memory of ${board.name}`,
          when: [onRevisions(frame, (r) => r === revision), withMemory(frame, (m) => m === memory)],
          claims: { memory: [{ base, size: end - base, is: "ram", ...(space === undefined ? {} : { space }) }] },
          ref: { kind: "board", id: board.id, pointer: "/memory" },
        },
      ];
    }),
  );
}

/** What cards take, with windows that follow the slot as they are written. */
export function cardTakings(frame: Frame): ResourceClaim[] {
  return eachCard(frame).flatMap(({ at, asked }) => {
    const { card } = asked;
    const out: ResourceClaim[] = [];
    listed(card.claims).forEach((c, i) => {
      const settings = Object.entries(c.when ?? {});
      const named = settings.map(([id, p]) => `${id} at ${typeof p === "string" ? p : p.join(" or ")}`);
      out.push({
        card: at,
        who: named.length > 0 ? `${card.name} with ${named.join(", ")}` : card.name,
        when: [
          cardIn(frame, at),
          ofRevision(frame, at, (r) => !c.revisions || c.revisions.includes(r)),
          ...settingsStand(frame, at, c.when ?? {}),
        ],
        claims: c,
        ref: { kind: "card", id: card.id, pointer: `/claims/${i}` },
      });
    });
    asked.settings.forEach((setting, s) => {
      setting.positions.forEach((p, i) => {
        if (resourceKinds.every((kind) => listed<unknown>(p[kind]).length === 0)) return;
        out.push({
          card: at,
          who: `${card.name} with ${setting.id} at ${p.id}`,
          when: [
            cardIn(frame, at),
            ofRevision(frame, at, (r) => !setting.revisions || setting.revisions.includes(r)),
            setTo(frame, at, setting.id, [p.id]),
          ],
          claims: p,
          ref: { kind: "card", id: card.id, pointer: `/settings/${s}/positions/${i}` },
        });
      });
    });
    return out;
  });
}

/**
 * The conditions under which both are there, one per mode; a single empty one when that is always.
 * A card that is switched off in a mode and lets go of `what` is not there, unless its revision cannot be switched off.
 */
export function together(frame: Frame, a: Pick<ResourceClaim, "card">, b: Pick<ResourceClaim, "card">, what: Release): Literal[][] {
  const perMode = eachMode(frame).map(({ at }) => {
    const there = [a, b].flatMap((t) => (t.card === undefined ? [] : [holdsIn(frame, at, t.card, what)]));
    return { there, kept: modeKept(frame, at) };
  });
  if (perMode.every(({ there }) => there.every((l) => always(frame, l)))) return [[]];
  return perMode.filter(({ there }) => there.every((l) => l.values.length > 0)).map(({ there, kept }) => [...there, kept]);
}

/** The line itself, whichever of its names was used; undefined when the bus has no such line. */
export function lineOf(bus: Bus, name: string): Bus["interrupts"][number] | undefined {
  const id = lineId(bus, name);
  return bus.interrupts.find((l) => l.id === id);
}

export function ports(from: number, to: number): string {
  return from === to ? hex(from, 3) : `${hex(from, 3)}–${hex(to, 3)}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
