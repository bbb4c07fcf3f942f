// What it takes to get from the machine as it stands to a combination: jumpers, then slots, then firmware, then the dearer things.
// Without a machine that stands, factory positions are the start.

import { pairCopies } from "../catalogue/index.js";
import { countAtHand, type ResolvedBuild, type ResolvedCard } from "../machine/index.js";
import { type BuildCard, bytes, itemAt, sizeText } from "../records/index.js";
import type { Cost, Solution, Term } from "../solver/index.js";
import type { ToGet } from "./facts.js";
import { eachCard, eachMode, type Frame } from "./frame.js";

/** Weights in the order of the trouble they make; the words of a kind of change stand beside its weight. */
const price = { jumper: 1, slot: 4, firmware: 16, buyFirmware: 40, memory: 60, cardRevision: 120, boardRevision: 400 } as const;

export interface Change {
  readonly kind: keyof typeof price;
  /** The card it is made on, by its name in the build. */
  readonly as?: string;
  readonly variable: number;
  /** Value that needs no change; undefined when every value does. */
  readonly from: number;
  readonly price: number;
  readonly words: (value: number) => string;
}

const standingCards = new WeakMap<ResolvedBuild, ReadonlyMap<string, BuildCard>>();

/** The card as it stands now; undefined when the machine has no such card yet, or only as many as are other copies of it. */
export function standing(question: ResolvedBuild, asked: ResolvedCard): BuildCard | undefined {
  const { build } = question;
  const pairs = standingCards.get(question) ?? pairCopies(build.cards, build.stands?.cards ?? []);
  standingCards.set(question, pairs);
  return pairs.get(asked.as);
}

export function possibleChanges(frame: Frame): Change[] {
  const { question } = frame;
  const { stands } = question.build;
  const out: Change[] = [];
  if (stands?.revision !== undefined)
    out.push({
      variable: frame.revision,
      from: question.revisions.indexOf(stands.revision),
      kind: "boardRevision",
      price: price.boardRevision,
      words: (v) => `get ${question.board.name} of revision ${question.revisions[v]}`,
    });
  if (stands?.memory !== undefined && question.memories.length > 1)
    out.push({
      variable: frame.memory,
      from: question.memories.indexOf(bytes(stands.memory)),
      kind: "memory",
      price: price.memory,
      words: (v) => `fit ${sizeText(itemAt(question.memories, v))} of memory`,
    });
  for (const { at, mode } of eachMode(frame)) {
    if (stands?.firmware === undefined) continue;
    const from = question.versions.findIndex((v) => v.id === stands.firmware);
    const inMode = question.modes.length > 1 ? ` for mode "${mode.name}"` : "";
    out.push({
      variable: itemAt(frame.firmware, at),
      from,
      kind: "firmware",
      price: price.firmware,
      words: (v) => `change the firmware to ${question.versions[v]?.id}${inMode}`,
    });
  }
  for (const { at, asked } of eachCard(frame)) {
    const now = standing(question, asked);
    if (now?.slot !== undefined)
      out.push({
        variable: itemAt(frame.cards, at).slot,
        from: question.slots.findIndex((s) => s.id === now.slot),
        kind: "slot",
        as: asked.as,
        price: price.slot,
        words: (v) => `move ${asked.card.name} to ${question.slots[v]?.id}`,
      });
    if (now?.revision !== undefined && asked.revisions.length > 1)
      out.push({
        variable: itemAt(frame.cards, at).revision,
        from: asked.revisions.indexOf(now.revision),
        kind: "cardRevision",
        as: asked.as,
        price: price.cardRevision,
        words: (v) => `get ${asked.card.name} of revision ${asked.revisions[v]}`,
      });
    asked.settings.forEach((setting, s) => {
      const start = now?.settings?.[setting.id] ?? setting.default;
      if (start === undefined) return;
      const from = setting.positions.findIndex((p) => p.id === start);
      out.push({
        variable: itemAt(itemAt(frame.cards, at).settings, s),
        from,
        kind: "jumper",
        as: asked.as,
        price: price.jumper,
        words: (v) => `set ${setting.id} of ${asked.card.name} to ${setting.positions[v]?.id}`,
      });
    });
  }
  return out;
}

/** The number of changes to what stands already; how a card that is new is set counts for nothing. */
export function changeCount(frame: Frame): Cost {
  const isNew = (as: string | undefined) => frame.question.cards.some((c) => c.as === as && !standing(frame.question, c));
  const counted = possibleChanges(frame).filter((c) => !isNew(c.as));
  return { terms: counted.map((c) => ({ variable: c.variable, weights: weights(frame, { ...c, price: 1 }) })) };
}

/** The price of a combination as a sum over its choices, for the engine to minimise. */
export function changeCost(frame: Frame): Cost {
  const { question } = frame;
  const terms: Term[] = possibleChanges(frame).map((c) => ({
    variable: c.variable,
    weights: weights(frame, c),
  }));
  const owned = question.build.at_hand?.firmware;
  if (owned)
    for (const variable of frame.firmware)
      terms.push({ variable, weights: [...question.versions.map((v) => (owned.includes(v.id) ? 0 : price.buyFirmware)), 0] });
  return { terms };
}

function weights(frame: Frame, c: Change): number[] {
  return Array.from({ length: itemAt(frame.variables, c.variable).size }, (_, v) => (v === c.from ? 0 : c.price));
}

/** The changes of one combination in words, least trouble first. */
export function changesOf(frame: Frame, solution: Solution): string[] {
  const made = possibleChanges(frame).filter((c) => solution[c.variable] !== c.from);
  return made.sort((a, b) => a.price - b.price).map((c) => c.words(itemAt(solution, c.variable)));
}

/** What the owner lacks; nothing when the build does not say what is at hand. */
export function toGet(frame: Frame, solution: Solution): ToGet[] {
  const { question } = frame;
  const hand = question.build.at_hand;
  if (!hand) return [];
  const versions = [...new Set(frame.firmware.flatMap((v) => question.versions[itemAt(solution, v)]?.id ?? []))];
  const lacking = versions.filter((v) => hand.firmware && !hand.firmware.includes(v) && question.build.stands?.firmware !== v);
  const wanted = hand.cards ? question.cards.filter((c) => !standing(question, c)).map((c) => c.card.id) : [];
  const cards = [...new Set(wanted)].flatMap((id): ToGet[] => {
    const count = wanted.filter((other) => other === id).length - countAtHand(question.build, id);
    return count < 1 ? [] : [{ kind: "card", id, ...(count > 1 ? { count } : {}) }];
  });
  return [...lacking.map((version): ToGet => ({ kind: "firmware", id: question.family.id, version })), ...cards];
}
