// Exactly tested machines: tested builds that fill every hole of this question, ran in every mode and say when.
// Such a machine is known to work as it was, so no missing figure and no suspicion holds it back; whatever differs in one respect is judged
// as if the test did not exist. A variable of its own says which tested machine a solution is (0: none), tied both ways to what the test
// had, so that nothing is counted twice.

import { cardsOn } from "../catalogue/index.js";
import { knowsMemory } from "../machine/index.js";
import { type Build, type BuildCard, bytes, type Unread } from "../records/index.js";
import type { Constraint, Literal, Variable } from "../solver/index.js";
import { always, complement, eachCard, type Frame, inSlot, ofRevision, onRevisions, runsVersion, setTo, withMemory } from "./frame.js";
import { testedOn } from "./lookup.js";

export interface ExactTests {
  /** The tested builds; the value of `variable` is one more than the place in this list. */
  readonly builds: readonly Build[];
  readonly variable: number;
  /** The variables that come with it, all of them decided by the machine; the first is `variable`. */
  readonly added: readonly Variable[];
  /** What ties the variables to the machine. */
  readonly rules: readonly Constraint[];
  /** "This is no machine that was tested." */
  readonly untested: Literal;
}

/** The machine a test had, as literals, and whether it ran in every mode. */
interface Tested {
  readonly build: Build;
  readonly worked: boolean;
  readonly pins: readonly Literal[];
}

/** Most ways to pair modes that are tried for one tested build; a build with more of them (seven equal modes) proves nothing. */
const mostOrders = 720;

/** All of them or none: a list cut short could miss the one way in which a machine failed. */
function allOrNone<T>(list: readonly T[]): readonly T[] {
  return list.length > mostOrders ? [] : list;
}

/** The exactly tested machines among the ways to fill this frame; undefined when there is none. */
export function findExactTests(frame: Frame): ExactTests | undefined {
  const { catalogue, board, cards } = frame.question;
  const variable = frame.variables.length;
  const copies = standAmong(frame, variable + 1);
  const ids = cards.map((c) => c.card.id);
  // In the order of what stood on the bench: what the tests are called decides nothing, not even between equals.
  const builds = testedOn(catalogue, board.id, ids)
    .map((build) => ({ build, stood: stoodAs(frame, build) }))
    .sort((a, b) => (a.stood < b.stood ? -1 : a.stood > b.stood ? 1 : 0));
  const tested = builds.flatMap(({ build }) => pinsOf(frame, build, copies.standsAs).map((t): Tested => ({ build, ...t })));
  const key = ({ pins }: Tested) => JSON.stringify([...pins].sort((a, b) => a.variable - b.variable));
  const failed = new Set(tested.filter((t) => !t.worked).map(key));
  // A machine that ran on one bench and not on another is not known to work; one that ran twice is one machine.
  const byMachine = new Map<string, Tested>();
  for (const t of tested) if (t.worked && !failed.has(key(t)) && !byMachine.has(key(t))) byMachine.set(key(t), t);
  const worked = [...byMachine.values()];
  if (worked.length === 0) return undefined;
  const values = Array.from({ length: worked.length + 1 }, (_, v) => v);
  const added = [{ name: "tested machine", size: values.length }, ...copies.added];
  const not = (pin: Literal) => complement([...frame.variables, ...added], pin);
  const rules = worked.flatMap(({ pins }, i): Constraint[] => [
    ...pins.map((pin): Constraint => ({ kind: "clause", literals: [{ variable, values: values.filter((v) => v !== i + 1) }, pin] })),
    { kind: "clause", literals: [...pins.map(not), { variable, values: [i + 1] }] },
  ]);
  return {
    builds: worked.map((t) => t.build),
    variable,
    added,
    rules: [...copies.rules, ...rules],
    untested: { variable, values: [0] },
  };
}

/** A tested machine by places alone: of its revision, versions, slots and positions in the records, whatever they are called. */
function stoodAs({ question }: Frame, { revision, memory, modes = [], cards }: Build): string {
  const settingsOf = (card: BuildCard) => question.cards.find((c) => c.card.id === card.card)?.settings ?? [];
  return JSON.stringify([
    question.revisions.indexOf(String(revision)),
    memory === undefined ? -1 : bytes(memory),
    modes.map((m) => question.versions.findIndex((v) => v.id === m.firmware)),
    cards.map((c) => [
      question.cards.findIndex((asked) => asked.card.id === c.card),
      question.slots.findIndex((s) => s.id === c.slot),
      settingsOf(c).map((s) => s.positions.findIndex((p) => p.id === c.settings?.[s.id])),
    ]),
  ]);
}

/** Bench results that could not be read and may be of this very machine, with another outcome. */
export function unreadTests(frame: Frame): Unread[] {
  const { catalogue, board, cards } = frame.question;
  const ids = (of: readonly string[]) => [...of].sort().join(" ");
  const here = ids(cards.map((c) => c.card.id));
  return catalogue.unread.filter(
    ({ test }) => test && !test.worked && (test.board ?? board.id) === board.id && (!test.cards || ids(test.cards) === here),
  );
}

/** Every way in which the tested build is a way to fill the frame: none when the build leaves anything open or is another machine. */
function pinsOf(frame: Frame, build: Build, standsAs: StandsAs): Omit<Tested, "build">[] {
  const { question } = frame;
  const { result, revision } = build;
  if (!result || typeof revision !== "string") return [];
  if ((build.firmware ?? question.board.firmware[0]) !== question.family.id) return [];
  if (build.cards.length !== question.cards.length || (build.modes ?? []).length !== question.modes.length) return [];
  if (new Set(build.cards.map((c) => c.slot)).size < build.cards.length) return [];
  const size = build.memory === undefined ? undefined : bytes(build.memory);
  const known = knowsMemory(question);
  if (known && size === undefined) return [];
  const machine = [onRevisions(frame, (r) => r === revision), ...(known ? [withMemory(frame, (m) => m === size)] : [])];
  return runningAs(frame, build).flatMap(({ modes, worked, pins }) => {
    const standing = eachCard(frame).map(({ at, asked }) => {
      const on = (as: string) => question.modes.map((m) => m.enabled.has(as)).join();
      const equal = question.cards.filter((c) => c.card.id === asked.card.id && on(c.as) === on(asked.as));
      const among = build.cards.filter((t) => t.card === asked.card.id && modes.map((m) => m.on.has(t)).join() === on(asked.as));
      return among.length === equal.length ? standsAs(at, among) : undefined;
    });
    if (standing.some((literals) => literals === undefined)) return [];
    const all = [...machine, ...standing.flatMap((p) => p ?? []), ...pins];
    return all.some((l) => l.values.length === 0)
      ? []
      : [{ worked, pins: all.filter((l) => l.variable >= frame.variables.length || !always(frame, l)) }];
  });
}

/** The copy as one of these tested ones, in literals; undefined when one of them does not say how it stood. */
type StandsAs = (at: number, among: readonly BuildCard[]) => readonly Literal[] | undefined;

/**
 * Which of several tested copies of a card a copy is, its slot tells, since no two stand in one. A variable of its own says whether the
 * copy stands as one of them does: so five equal copies take five variables, not one value for each of their 120 orders.
 */
function standAmong(frame: Frame, from: number) {
  const added: Variable[] = [];
  const rules: Constraint[] = [];
  const known = new Map<string, Literal>();
  const standsAs: StandsAs = (at, among) => {
    const standings = among.map((tested) => standingAs(frame, at, tested));
    const [only] = standings;
    if (standings.length === 1) return only && [only.slot, ...only.rest];
    const ways = standings.flatMap((s) => (s && [s.slot, ...s.rest].every((l) => l.values.length > 0) ? [s] : []));
    if (ways.length < standings.length) return undefined;
    const key = JSON.stringify([at, ways.map((w) => JSON.stringify(w)).sort()]);
    const before = known.get(key);
    if (before) return [before];
    const variable = from + added.length;
    added.push({ name: `tested copy:${frame.question.cards[at]?.as}`, size: 2 });
    const [not, as] = [
      { variable, values: [0] },
      { variable, values: [1] },
    ];
    const inOther = (slot: Literal) => complement(frame.variables, slot);
    rules.push({ kind: "clause", literals: [not, { variable: frame.cards[at]?.slot ?? 0, values: ways.flatMap((w) => w.slot.values) }] });
    for (const { slot, rest } of ways) {
      for (const literal of rest) rules.push({ kind: "clause", literals: [not, inOther(slot), literal] });
      rules.push({ kind: "clause", literals: [inOther(slot), ...rest.map((l) => complement(frame.variables, l)), as] });
    }
    known.set(key, as);
    return [as];
  };
  return { added, rules, standsAs };
}

/** Slot, and revision and every setting, as the test had them; undefined when it does not say. */
function standingAs(
  frame: Frame,
  at: number,
  tested: BuildCard,
): { readonly slot: Literal; readonly rest: readonly Literal[] } | undefined {
  const asked = frame.question.cards[at];
  if (!asked || tested.slot === undefined) return undefined;
  const revision = asked.revisions.length > 1 ? tested.revision : asked.revisions[0];
  if (revision === undefined) return undefined;
  const settings = asked.settings
    .filter((s) => !s.revisions || s.revisions.includes(revision))
    .map((s) => {
      const position = tested.settings?.[s.id];
      return position === undefined ? undefined : setTo(frame, at, s.id, [position]);
    });
  if (settings.some((s) => s === undefined)) return undefined;
  return {
    slot: inSlot(frame, at, (s) => s.id === tested.slot),
    rest: [ofRevision(frame, at, (r) => r === revision), ...settings.flatMap((s) => s ?? [])],
  };
}

/** A mode of the tested build: what was on, what it ran, whether it worked. */
interface TestedMode {
  readonly firmware?: string;
  readonly worked: boolean;
  readonly on: ReadonlySet<BuildCard>;
}

/** Every way to pair the modes: as many of each card on, the firmware the test ran. */
function runningAs(frame: Frame, build: Build): { readonly modes: readonly TestedMode[]; worked: boolean; pins: readonly Literal[] }[] {
  const { question } = frame;
  const modes = (build.modes ?? []).map((mode): TestedMode => {
    const outcome = build.result?.modes?.find((m) => m.mode === mode.id)?.outcome ?? build.result?.outcome;
    return { ...(mode.firmware ? { firmware: mode.firmware } : {}), worked: outcome === "worked", on: new Set(cardsOn(build.cards, mode)) };
  });
  if (modes.some((m) => m.firmware === undefined) || build.modes?.some((m) => m.on_or_off)) return [];
  const text = (on: readonly string[]) => [...on].sort().join();
  const wanted = question.modes.map((mode) => text(question.cards.filter((c) => mode.enabled.has(c.as)).map((c) => c.card.id)));
  const had = new Map(modes.map((m) => [m, text([...m.on].map((c) => c.card))]));
  const paired = wanted.reduce<readonly (readonly TestedMode[])[]>(
    (all, on) => allOrNone(all.flatMap((taken) => modes.filter((m) => !taken.includes(m) && had.get(m) === on).map((m) => [...taken, m]))),
    [[]],
  );
  return paired.map((taken) => ({
    modes: taken,
    worked: taken.every((m) => m.worked),
    pins: taken.map((m, at) => runsVersion(frame, at, (v) => v === m.firmware)),
  }));
}
