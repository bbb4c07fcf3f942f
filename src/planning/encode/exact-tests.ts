// Exactly tested machines: tested builds that fill every hole of this question, ran in every mode and say when.
// Such a machine is known to work as it was, so no missing figure and no suspicion holds it back; whatever differs in one respect is judged
// as if the test did not exist. A variable of its own says which tested machine a solution is (0: none), tied both ways to what the test
// had, so that nothing is counted twice.
import { cardsOn } from "../../catalogue/index.js";
import { type Build, type BuildCard, bytes, type Unread } from "../../records/index.js";
import type { Literal, Rule, Variable } from "../../solver/index.js";
import { always, eachCard, eachMode, type Frame, inSlot, ofRevision, onRevisions, runsVersion, setTo, withMemory } from "./frame.js";
import { testedOn } from "./lookup.js";

export interface ExactTests {
  /** The tested builds; the value of `variable` is one more than the place in this list. */
  readonly builds: readonly Build[];
  readonly variable: number;
  readonly added: Variable;
  /** What ties the variable to the machine. */
  readonly rules: readonly Rule[];
  /** "This is no machine that was tested." */
  readonly untested: Literal;
}

/** The machine a test had, as literals, and whether it ran in every mode. */
interface Tested {
  readonly build: Build;
  readonly worked: boolean;
  readonly pins: readonly Literal[];
}

/** Most ways to pair copies or modes that are tried for one tested build; a build with more of them proves nothing. */
const mostOrders = 24;

/** All of them or none: a list cut short could miss the one way in which a machine failed. */
function allOrNone<T>(list: readonly T[]): readonly T[] {
  return list.length > mostOrders ? [] : list;
}

/** The exactly tested machines among the ways to fill this frame; undefined when there is none. */
export function findExactTests(frame: Frame): ExactTests | undefined {
  const { catalogue, board, cards } = frame.question;
  const ids = cards.map((c) => c.card.id);
  const tested = testedOn(catalogue, board.id, ids).flatMap((build) => pinsOf(frame, build).map((t): Tested => ({ build, ...t })));
  const key = ({ pins }: Tested) => JSON.stringify([...pins].sort((a, b) => a.variable - b.variable));
  const failed = new Set(tested.filter((t) => !t.worked).map(key));
  // A machine that ran on one bench and not on another is not known to work; one that ran twice is one machine.
  const byMachine = new Map<string, Tested>();
  for (const t of tested) if (t.worked && !failed.has(key(t)) && !byMachine.has(key(t))) byMachine.set(key(t), t);
  const worked = [...byMachine.values()];
  if (worked.length === 0) return undefined;
  const variable = frame.variables.length;
  const values = Array.from({ length: worked.length + 1 }, (_, v) => v);
  const rules = worked.flatMap(({ pins }, i): Rule[] => [
    ...pins.map((pin): Rule => ({ kind: "clause", literals: [{ variable, values: values.filter((v) => v !== i + 1) }, pin] })),
    { kind: "clause", literals: [...pins.map((pin) => complement(frame, pin)), { variable, values: [i + 1] }] },
  ]);
  return {
    builds: worked.map((t) => t.build),
    variable,
    added: { name: "tested machine", size: values.length },
    rules,
    untested: { variable, values: [0] },
  };
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

function complement(frame: Frame, literal: Literal): Literal {
  const size = frame.variables[literal.variable]?.size ?? 0;
  return { variable: literal.variable, values: Array.from({ length: size }, (_, v) => v).filter((v) => !literal.values.includes(v)) };
}

/** Every way in which the tested build is a way to fill the frame: none when the build leaves anything open or is another machine. */
function pinsOf(frame: Frame, build: Build): Omit<Tested, "build">[] {
  const { question } = frame;
  const { result, revision } = build;
  if (!result || typeof revision !== "string") return [];
  if ((build.firmware ?? question.board.firmware[0]) !== question.family.id) return [];
  if (build.cards.length !== question.cards.length || (build.modes ?? []).length !== question.modes.length) return [];
  const size = build.memory === undefined ? undefined : bytes(build.memory);
  if (question.board.memory && size === undefined) return [];
  const machine = [onRevisions(frame, (r) => r === revision), ...(question.board.memory ? [withMemory(frame, (m) => m === size)] : [])];
  return orders(frame, build.cards).flatMap((cards) => {
    const standing = cards.map((tested, at) => standingAs(frame, at, tested));
    if (standing.some((pins) => pins === undefined)) return [];
    return runningAs(frame, build, cards).flatMap(({ worked, pins }) => {
      const all = [...machine, ...standing.flatMap((p) => p ?? []), ...pins];
      return all.some((l) => l.values.length === 0) ? [] : [{ worked, pins: all.filter((l) => !always(frame, l)) }];
    });
  });
}

/** The tested cards in the order of the question's; several orders where a card stands in the machine more than once. */
function orders(frame: Frame, tested: readonly BuildCard[]): readonly (readonly BuildCard[])[] {
  return eachCard(frame).reduce<readonly (readonly BuildCard[])[]>(
    (all, { asked }) =>
      allOrNone(all.flatMap((taken) => tested.filter((t) => t.card === asked.card.id && !taken.includes(t)).map((t) => [...taken, t]))),
    [[]],
  );
}

/** Slot, revision and every setting as the test had them; undefined when it does not say. */
function standingAs(frame: Frame, at: number, tested: BuildCard): Literal[] | undefined {
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
  return [
    inSlot(frame, at, (s) => s.id === tested.slot),
    ofRevision(frame, at, (r) => r === revision),
    ...settings.flatMap((s) => s ?? []),
  ];
}

/** Every way to pair the modes: the same cards on, the firmware the test ran. */
function runningAs(frame: Frame, build: Build, cards: readonly BuildCard[]): Omit<Tested, "build">[] {
  const { question } = frame;
  const modes = (build.modes ?? []).map((mode) => {
    const on = new Set(cardsOn(build.cards, mode));
    const outcome = build.result?.modes?.find((m) => m.mode === mode.id)?.outcome ?? build.result?.outcome;
    return { firmware: mode.firmware, worked: outcome === "worked", on: new Set(cards.flatMap((c, at) => (on.has(c) ? [at] : []))) };
  });
  if (modes.some((m) => m.firmware === undefined)) return [];
  return eachMode(frame)
    .reduce<readonly (typeof modes)[]>(
      (all, { mode }) =>
        allOrNone(
          all.flatMap((taken) =>
            modes
              .filter((m) => !taken.includes(m) && question.cards.every((c, at) => mode.enabled.has(c.as) === m.on.has(at)))
              .map((m) => [...taken, m]),
          ),
        ),
      [[]],
    )
    .map((paired) => ({
      worked: paired.every((m) => m.worked),
      pins: paired.map((m, at) => runsVersion(frame, at, (v) => v === m.firmware)),
    }));
}
