// How sure a combination is: the weakest link of each card on this board and firmware, each pair running together, and
// the whole. A tested build covers exactly what it had: board revision, firmware, cards, slots and settings of a mode that worked.
import { cardsOn, inRange, pairCopies } from "../../catalogue/index.js";
import { ref, testedOn } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import { type Build, type BuildCard, bytes, type Card, entryOf, itemAt, type Source, sizeText } from "../../records/index.js";
import type { Combination, Evidence, EvidenceNote, ModePlan, PlacedCard, Ref } from "./answer.js";

const order: readonly Evidence[] = ["bench", "documented", "reported", "inferred"];

/** 0 is best. */
export function evidenceRank(grade: Evidence): number {
  return order.indexOf(grade);
}

export function weakest(grades: readonly Evidence[]): Evidence {
  return itemAt(order, Math.max(0, ...grades.map(evidenceRank)));
}

type Placed = Pick<PlacedCard, "card" | "revision" | "slot" | "settings" | "as">;
type Machine = Pick<Combination, "board" | "revision" | "memory" | "modes"> & { readonly cards: readonly Placed[] };

/** A mode of a tested build that worked: the machine it was, as far as the record says. */
export interface Proven {
  readonly build: Build;
  readonly firmware: string;
  readonly enabled: readonly BuildCard[];
  readonly fitted: readonly BuildCard[];
}

/** Modes of tested builds that worked on this board with any of these cards. */
export function provenModes(question: ResolvedBuild): Proven[] {
  const cards = question.cards.map((c) => c.card.id);
  return testedOn(question.catalogue, question.board.id, cards).flatMap((build) => {
    const { result } = build;
    if (!result || typeof build.revision !== "string") return [];
    if ((build.firmware ?? question.board.firmware[0]) !== question.family.id) return [];
    const modes = build.modes ?? [];
    return modes.flatMap((mode) => {
      const seen = result.modes?.find((m) => m.mode === mode.id)?.outcome ?? result.outcome;
      // A test that leaves open what was on proves nothing of what was on together.
      if (seen !== "worked" || mode.firmware === undefined || mode.on_or_off) return [];
      return [{ build, firmware: mode.firmware, enabled: cardsOn(build.cards, mode), fitted: build.cards }];
    });
  });
}

/** The same card, standing the same way: revision, slot and every setting. */
function standsAlike(tested: BuildCard, placed: Placed, card: Card): boolean {
  if (tested.card !== placed.card || tested.slot !== placed.slot) return false;
  if (card.revisions && card.revisions.length > 1 && tested.revision !== placed.revision) return false;
  return Object.entries(placed.settings).every(([id, p]) => tested.settings?.[id] === p);
}

/** Evidence of a combination: the notes, weakest first, and the weakest grade. */
export function evidenceOf(
  question: ResolvedBuild,
  machine: Machine,
  proven: readonly Proven[],
): { readonly grade: Evidence; readonly rests: readonly EvidenceNote[] } {
  const notes: EvidenceNote[] = [];
  const here = proven.filter((p) => p.build.revision === machine.revision);
  for (const mode of machine.modes) {
    const running = machine.cards.filter((c) => mode.enabled.includes(c.as));
    const match = (p: Proven, placed: Placed) =>
      p.enabled.some((t) => standsAlike(t, placed, entryOf(question.catalogue.cards, placed.card)));
    const inMode = machine.modes.length > 1 ? ` (${mode.name})` : "";
    for (const placed of running)
      notes.push(
        cardNote(
          question,
          machine,
          mode,
          placed,
          here.filter((p) => p.firmware === mode.firmware && match(p, placed)),
          inMode,
        ),
      );
    running.forEach((a, i) => {
      for (const b of running.slice(i + 1)) {
        const builds = here.filter((p) => p.firmware === mode.firmware && match(p, a) && match(p, b));
        notes.push(note("pair", builds, `${nameOf(question, a)} and ${nameOf(question, b)} running together${inMode}`));
      }
    });
    if (running.length > 2) {
      const builds = here.filter((p) => p.firmware === mode.firmware && sameMemory(p.build, machine) && running.every((c) => match(p, c)));
      notes.push(note("whole", builds, `All ${running.length} cards running together${inMode}`));
    }
  }
  if (machine.cards.length === 0)
    for (const { firmware } of machine.modes) {
      const builds = here.filter((p) => p.firmware === firmware && sameMemory(p.build, machine));
      notes.push(note("whole", builds, `${question.board.name} without a card, revision ${machine.revision} with ${firmware}`));
    }
  if (notes.length === 0) notes.push({ grade: "inferred", link: "whole", says: "No card to judge.", refs: [] });
  const sorted = notes.map((n, i) => ({ n, i })).sort((a, b) => evidenceRank(b.n.grade) - evidenceRank(a.n.grade) || a.i - b.i);
  return { grade: weakest(notes.map((n) => n.grade)), rests: sorted.map((s) => s.n) };
}

/** Boards whose records name no amounts have memory 0 here, unless the question states one: 0 says nothing. */
export function sameMemory(build: Build, machine: Pick<Machine, "memory">): boolean {
  if (machine.memory === undefined || machine.memory === 0) return true;
  return build.memory !== undefined && bytes(build.memory) === machine.memory;
}

/** Its name, with what tells it from other copies of the card. */
function nameOf(question: ResolvedBuild, placed: Placed): string {
  return question.cards.find((c) => c.as === placed.as)?.card.name ?? placed.as;
}

function note(link: EvidenceNote["link"], proven: readonly Proven[], what: string): EvidenceNote {
  const tested = proven.length > 0;
  const basis = tested ? benchWords(proven) : "no record, and the rules find nothing against it";
  return { grade: tested ? "bench" : "inferred", link, says: `${what}: ${basis}.`, basis, refs: refsOf(proven) };
}

/** "tested by 2 people, last in 2019-05": independent testers and the age of the newest result. */
function benchWords(proven: readonly Proven[]): string {
  const results = proven.flatMap((p) => p.build.result ?? []);
  const testers = new Set(results.map((r) => r.by)).size;
  const dates = results.map((r) => r.date).sort();
  return `tested on the bench by ${testers === 1 ? "one person" : `${testers} people`}, ${proven.length > 1 ? "last in" : "in"} ${dates.at(-1)}`;
}

function refsOf(proven: readonly Proven[]): Ref[] {
  return [...new Set(proven.map((p) => p.build.id))].map((id) => ref("build", id, "/result"));
}

function cardNote(
  question: ResolvedBuild,
  machine: Machine,
  mode: ModePlan,
  placed: Placed,
  proven: readonly Proven[],
  inMode: string,
): EvidenceNote {
  const card = entryOf(question.catalogue.cards, placed.card);
  const what = `${nameOf(question, placed)} on revision ${machine.revision} with ${mode.firmware}${inMode}`;
  if (proven.length > 0) return note("card", proven, what);
  const paper = paperGrade(question, card, machine, mode.firmware);
  if (!paper) return note("card", [], what);
  const basis = `${paper.grade === "documented" ? "its papers say so" : "somebody said so"} (${paper.source.says})`;
  return {
    grade: paper.grade,
    link: "card",
    says: `${what}: ${basis}.`,
    basis,
    refs: [ref("card", card.id, "/needs"), ref("card", card.id, "/sources")],
  };
}

/** What the card's own sources say in so many words: it names this firmware or this board. Silence says nothing. */
export function paperGrade(
  question: ResolvedBuild,
  card: Card,
  machine: Pick<Machine, "board" | "revision">,
  version: string,
): { readonly grade: Evidence; readonly source: Source } | undefined {
  const { firmware, boards } = card.needs ?? {};
  const saysFirmware =
    firmware?.some((s) => (s.from ?? s.upTo ?? s.before ?? s.only) !== undefined && inRange(question.family, version, s)) ?? false;
  const saysBoard = boards?.some((b) => b.board === machine.board && (!b.revisions || b.revisions.includes(machine.revision))) ?? false;
  if (!saysFirmware && !saysBoard) return undefined;
  const sources = card.sources ?? [];
  const document = sources.find((s) => ["manual", "schematic", "data-sheet", "standard"].includes(s.kind));
  if (document) return { grade: "documented", source: document };
  return sources[0] ? { grade: "reported", source: sources[0] } : undefined;
}

/** Copies of a machine and of a test that are the same card in both: those in one slot first, then what is left, in order. */
function pairBySlot(cards: readonly Placed[], fitted: readonly BuildCard[]): ReadonlyMap<string, BuildCard> {
  const inSlot = cards.flatMap((c): [string, BuildCard][] => {
    const there = fitted.find((t) => t.card === c.card && t.slot === c.slot);
    return there ? [[c.as, there]] : [];
  });
  const paired = new Map(inSlot);
  const taken = new Set(paired.values());
  const others = pairCopies(
    cards.filter((c) => !paired.has(c.as)),
    fitted.filter((t) => !taken.has(t)),
  );
  return new Map([...paired, ...others]);
}

/** Tested builds that come close, and in what they differ: named, never counted. */
export function nearMatches(
  question: ResolvedBuild,
  machine: Machine,
  proven: readonly Proven[],
  most = 3,
): { build: string; differs: string }[] {
  const wanted = machine.cards.map((c) => c.card);
  const scored = proven.flatMap((p) => {
    const shared = p.fitted.filter((t) => wanted.includes(t.card));
    if (shared.length === 0 || shared.length < Math.ceil(wanted.length / 2)) return [];
    const differs: string[] = [];
    if (p.build.revision !== machine.revision) differs.push(`tested with revision ${p.build.revision}, this is ${machine.revision}`);
    if (!machine.modes.some((m) => m.firmware === p.firmware)) differs.push(`tested with ${p.firmware}`);
    if (!sameMemory(p.build, machine))
      differs.push(`tested with ${p.build.memory === undefined ? "an unnamed amount" : sizeText(bytes(p.build.memory))} of memory`);
    const pairs = pairBySlot(machine.cards, p.fitted);
    for (const c of machine.cards) {
      const t = pairs.get(c.as);
      const name = nameOf(question, c);
      const several = (question.catalogue.cards.get(c.card)?.revisions?.length ?? 1) > 1;
      if (!t) differs.push(`without ${name}`);
      else if (several && t.revision !== c.revision)
        differs.push(`${name} of ${t.revision ? `revision ${t.revision}` : "an unnamed revision"}`);
      else if (t.slot !== c.slot) differs.push(`${name} in ${t.slot ?? "an unnamed slot"}`);
      else if (!Object.entries(c.settings).every(([id, s]) => t.settings?.[id] === s)) differs.push(`${name} set otherwise`);
    }
    return differs.length === 0 || differs.length > 3 ? [] : [{ build: p.build.id, differs: differs.join("; "), count: differs.length }];
  });
  const seen = new Set<string>();
  return scored
    .sort((a, b) => a.count - b.count || a.build.localeCompare(b.build))
    .filter((s) => !seen.has(s.build) && seen.add(s.build))
    .slice(0, most)
    .map(({ build, differs }) => ({ build, differs }));
}
