// The cases of a cell: one answer for each thing the owner has and the question does not name, the memory fitted and the revision of the
// card, so that the best of them does not stand for all. Slot and settings are the owner's to choose: each case says for which it holds.
import { type Catalogue, mainMemory } from "../../catalogue/index.js";
import { type Compiled, compile } from "../../encoding/index.js";
import { resolveBuild } from "../../machine/index.js";
import { type Build, bytes } from "../../records/index.js";
import { possible, scopeOf } from "../../solver/index.js";
import type { Answer, Verdict } from "../answer/answer.js";
import { answer } from "../answer/plan.js";
import { problemOf } from "../answer/verdict.js";
import { type CellQuestion, cellBuild, cellOptions } from "./cell.js";

/** One choice left to the owner, with the values for which a case's verdict holds, whatever the other choices come to. */
export interface Latitude {
  /** Left out for the slot. */
  readonly setting?: string;
  readonly values: readonly string[];
  /** False: it holds for every value there is. */
  readonly limited: boolean;
}

export interface CellCase {
  /** Bytes. Left out where memory decides nothing, or the board's record names no amounts. */
  readonly memory?: number;
  /** Left out where the card's record knows one kind. */
  readonly cardRevision?: string;
  readonly answer: Answer;
  /** The slot first, then each setting; empty for a no. */
  readonly latitude: readonly Latitude[];
}

/** Every case of a cell, whose own answer is `whole`; none when the question names what nobody knows. */
export function cellCases(catalogue: Catalogue, q: CellQuestion, whole: Answer): readonly CellCase[] {
  const open = cellBuild(q);
  const asked = resolveBuild(catalogue, open, cellOptions);
  if (asked.kind === "misasked") return [];
  if (asked.kind === "unread") return [{ answer: whole, latitude: [] }];
  const { board, cards } = asked.question;
  const compiled = compile(asked.question);
  const revisions = (cards[0]?.revisions.length ?? 1) > 1 ? (cards[0]?.revisions ?? []) : [undefined];
  const amounts = (speaksOf(compiled, compiled.frame.memory) && mainMemory(board)?.options) || [undefined];
  if (revisions.length === 1 && amounts.length === 1) return [{ answer: whole, latitude: latitudeOf(compiled, whole.verdict, undefined) }];
  return revisions.flatMap((revision) =>
    amounts.flatMap((memory): CellCase[] => {
      const build: Build = {
        ...open,
        ...(memory === undefined ? {} : { memory }),
        cards: open.cards.map((c) => ({ ...c, ...(revision === undefined ? {} : { revision }) })),
      };
      const named = resolveBuild(catalogue, build, cellOptions);
      if (named.kind !== "question") return [];
      const one = compile(named.question);
      const given = answer(one, cellOptions);
      return [
        {
          ...(memory === undefined ? {} : { memory: bytes(memory) }),
          ...(revision === undefined ? {} : { cardRevision: revision }),
          answer: given,
          latitude: latitudeOf(one, given.verdict, revision),
        },
      ];
    }),
  );
}

/** False: the answer is the same whatever the variable is. */
function speaksOf({ certain, soft }: Compiled, variable: number): boolean {
  return (
    certain.rules.some((rule) => scopeOf(rule).includes(variable)) ||
    soft.some((s) => s.when.some((literals) => literals.some((l) => l.variable === variable)))
  );
}

function latitudeOf(compiled: Compiled, verdict: Verdict, revision: string | undefined): readonly Latitude[] {
  const problem = problemOf(compiled, verdict);
  const [card] = compiled.frame.cards;
  const [asked] = compiled.question.cards;
  if (!problem || !card || !asked) return [];
  const open = possible(problem);
  const of = (variable: number | undefined, ids: readonly string[]) => {
    const values = ids.filter((_, v) => variable !== undefined && open.values[variable]?.has(v));
    return { values, limited: values.length < ids.length };
  };
  return [
    of(
      card.slot,
      compiled.question.slots.map((s) => s.id),
    ),
    ...asked.settings.flatMap((setting, i) => {
      if (revision !== undefined && setting.revisions && !setting.revisions.includes(revision)) return [];
      const ids = setting.positions.map((p) => p.id);
      return [{ setting: setting.id, ...of(card.settings[i], ids) }];
    }),
  ];
}
