// Evidence as rules of the problem: for every link of the chain (a card, a pair, the whole, in each mode) the conditions under which it is at
// least so well proven. The same meaning as `evidenceOf`, which judges one machine; here all of them are sifted or counted at once.

import { conjunctions, type Frame, inSlot, ofRevision, onRevisions, runsVersion, setTo, withMemory } from "../../encoding/index.js";
import { type BuildCard, itemAt } from "../../records/index.js";
import type { Constraint, Literal, Problem } from "../../solver/index.js";
import type { Evidence } from "./answer.js";
import { evidenceRank, paperGrade, provenModes, sameMemory } from "./evidence.js";

/** One way for a link to be proven: when all the literals hold, it is of this grade at least. */
interface Proof {
  readonly grade: Evidence;
  readonly when: readonly Literal[];
}

type Conjunction = readonly (Literal | undefined)[];

/** Every link with its proofs. A link without any is inferred. */
function linksOf(frame: Frame): Proof[][] {
  const { question } = frame;
  const proven = provenModes(question);
  const bench = (whens: readonly Conjunction[]): Proof[] => conjunctions(frame, whens).map((when) => ({ grade: "bench", when }));
  return question.modes.flatMap((mode, m) => {
    const here = proven.map((p) => ({
      p,
      machine: [onRevisions(frame, (r) => r === p.build.revision), runsVersion(frame, m, (v) => v === p.firmware)],
    }));
    const running = question.cards.flatMap((c, at) => (mode.enabled.has(c.as) ? [at] : []));
    /** Ways in which each of these cards stands as it was tested, all in the same build. */
    const together = (cards: readonly number[], also: (p: (typeof proven)[number]) => Conjunction | undefined) =>
      here.flatMap(({ p, machine }) => {
        const more = also(p);
        if (!more) return [];
        return pairings(frame, cards, p.enabled).map((paired) => [...machine, ...more, ...paired]);
      });
    const any = () => [];
    const cards = running.map((at) => [...bench(together([at], any)), ...papers(frame, m, at)]);
    const pairs = running.flatMap((a, i) => running.slice(i + 1).map((b) => bench(together([a, b], any))));
    const memory = (p: (typeof proven)[number]) => {
      const literal = withMemory(frame, (bytes) => sameMemory(p.build, { memory: bytes }));
      return literal.values.length > 0 ? [literal] : undefined;
    };
    return [...cards, ...pairs, ...(running.length > 2 ? [bench(together(running, memory))] : [])];
  });
}

/**
 * Ways to let each card stand as one of the tested ones did. No two cards stand in one slot, so that each tested card is taken once: n equal
 * copies have n! pairings, not n to the power of n.
 */
function pairings(frame: Frame, cards: readonly number[], tested: readonly BuildCard[]): Conjunction[] {
  const [at, ...rest] = cards;
  if (at === undefined) return [[]];
  return tested.flatMap((one, i) =>
    (alike(frame, at, one) ?? []).flatMap((stands) =>
      pairings(
        frame,
        rest,
        tested.filter((_, other) => other !== i),
      ).map((others) => [...stands, ...others]),
    ),
  );
}

/** The card standing as it did in a test: slot, revision where there are several, every setting; undefined when the test does not say. */
function alike(frame: Frame, at: number, tested: BuildCard): Conjunction[] | undefined {
  const { card, settings } = itemAt(frame.question.cards, at);
  if (tested.card !== card.id || tested.slot === undefined) return undefined;
  const several = (card.revisions?.length ?? 1) > 1;
  const literals = [
    inSlot(frame, at, (s) => s.id === tested.slot),
    ...(several ? [ofRevision(frame, at, (r) => r === tested.revision)] : []),
    ...settings.map((s) => {
      const position = tested.settings?.[s.id];
      return position === undefined ? undefined : setTo(frame, at, s.id, [position]);
    }),
  ];
  return literals.some((l) => l === undefined || l.values.length === 0) ? undefined : [literals];
}

/** What the card's own sources say of a version on a revision. */
function papers(frame: Frame, mode: number, at: number): Proof[] {
  const { question } = frame;
  const { card } = itemAt(question.cards, at);
  const proofs = question.versions.flatMap((version) => {
    const graded = question.revisions.map((r) => paperGrade(question, card, { board: question.board.id, revision: r }, version.id)?.grade);
    return [...new Set(graded)].flatMap((grade) =>
      grade === undefined
        ? []
        : conjunctions(frame, [
            [runsVersion(frame, mode, (v) => v === version.id), onRevisions(frame, (r) => graded[question.revisions.indexOf(r)] === grade)],
          ]).map((when): Proof => ({ grade, when })),
    );
  });
  return proofs;
}

/** The problem with only the ways that are at least so well proven; undefined when there can be none. */
export function atLeastProven(frame: Frame, problem: Problem, grade: Evidence): Problem | undefined {
  if (grade === "inferred") return problem;
  const links = linksOf(frame);
  if (links.length === 0) return undefined;
  return links.reduce<Problem | undefined>((narrowed, link) => {
    const proofs = link.filter((p) => evidenceRank(p.grade) <= evidenceRank(grade));
    return (
      narrowed &&
      oneOf(
        narrowed,
        proofs.map((p) => p.when),
      )
    );
  }, problem);
}

/**
 * The problem with only the ways in which one of these conjunctions holds; undefined when there are none. A variable of its own says which:
 * several may hold at once, so what is counted is counted over the variables of before (`project`).
 */
export function oneOf(problem: Problem, whens: readonly (readonly Literal[])[]): Problem | undefined {
  if (whens.length === 0) return undefined;
  if (whens.some((when) => when.length === 0)) return problem;
  if (whens.length === 1)
    return { ...problem, rules: [...problem.rules, ...itemAt(whens, 0).map((l): Constraint => ({ kind: "unary", ...l }))] };
  const which = problem.variables.length;
  const rules = whens.flatMap((when, i) =>
    when.map((literal): Constraint => ({ kind: "clause", literals: [{ variable: which, values: others(whens.length, i) }, literal] })),
  );
  return { variables: [...problem.variables, { name: "which", size: whens.length }], rules: [...problem.rules, ...rules] };
}

function others(size: number, but: number): number[] {
  return Array.from({ length: size }, (_, i) => i).filter((i) => i !== but);
}
