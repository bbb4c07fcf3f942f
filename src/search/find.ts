// Finds entries for a question: exact names and numbers first, then entries that hold every word, then near misses.

import MiniSearch from "minisearch";
import { itemAt } from "../records/index.js";
import { asking } from "./alike.js";
import { type Asked, askedFor, asName, denies, termsOf } from "./terms.js";

/** What can be found: what it is called, what is said of it, and what filters know it by. */
export interface Findable {
  readonly kind: string;
  readonly title: string;
  readonly answer: string;
  readonly boards: readonly string[];
  /** The word of the verdict, for the filter. */
  readonly verdict?: string;
  /** Where the answer differs from board to board: the word for each, for both filters together. */
  readonly verdictOn?: Readonly<Record<string, string>>;
  readonly names: readonly string[];
  readonly symptoms: readonly string[];
}

export interface Filters {
  readonly kind?: string | undefined;
  readonly board?: string | undefined;
  readonly verdict?: string | undefined;
}

export interface Hit<E extends Findable = Findable> {
  readonly entry: E;
  /** exact: the question is its name or number; words: it holds all words; near: some words, or with a typing error. */
  readonly how: "exact" | "words" | "near";
  /** The symptom that fits best, when it has any. */
  readonly symptom?: string | undefined;
}

export interface Finder<E extends Findable = Findable> {
  readonly find: (question: string, filters?: Filters) => readonly Hit<E>[];
}

/** A verdict that is asked for together with a board is the verdict on that board, not the best on any. */
export function fits(entry: Pick<Findable, "kind" | "boards" | "verdict" | "verdictOn">, filters: Filters): boolean {
  const { kind, board, verdict } = filters;
  if (kind && entry.kind !== kind) return false;
  const here = board === undefined ? undefined : entry.verdictOn?.[board];
  if (board && here === undefined && !entry.boards.includes(board)) return false;
  if (!verdict) return !board || entry.boards.includes(board);
  return (here ?? entry.verdict) === verdict;
}

/** A page outranks the pages that merely speak of it. */
const kindWeight: Readonly<Record<string, number>> = {
  board: 1.3,
  card: 1.3,
  "known problem": 1.25,
  firmware: 1.2,
  part: 1.1,
  matrix: 0.7,
  help: 0.9,
};

/** Kinds of page whose own name or number stands before what is said of them elsewhere. */
const things: ReadonlySet<string> = new Set(["card", "board", "firmware", "part"]);

/** A word that only begins as the one asked for counts for so much of it. */
const prefixShare = 0.8;

interface Find {
  /** 1: the very word; less: one that means the same, begins so, or is a typing error away. */
  readonly share: number;
  readonly score: number;
  readonly inName: boolean;
}

interface Scored {
  readonly id: number;
  readonly rank: number;
  readonly how: "words" | "near";
  /** The question is its name, whole or in part, and what one asks of a thing. */
  readonly named: boolean;
}

/** A text with its terms, and whether it says that something is not there. */
interface Cut {
  readonly text: string;
  readonly terms: ReadonlySet<string>;
  readonly denies: boolean;
}

const isWord = (term: string) => !/\d/.test(term);

export function finder<E extends Findable>(entries: readonly E[]): Finder<E> {
  const index = new MiniSearch<{ id: number; title: string; names: string; symptoms: string; answer: string }>({
    fields: ["title", "names", "symptoms", "answer"],
    tokenize: (text) => [...termsOf(text)],
    processTerm: (term) => term,
    searchOptions: {
      tokenize: (text) => [text],
      boost: { title: 4, names: 4, symptoms: 3 },
      boostDocument: (id) => kindWeight[itemAt(entries, id as number).kind] ?? 1,
    },
  });
  index.addAll(
    entries.map((e, id) => ({ id, title: e.title, names: e.names.join(" "), symptoms: e.symptoms.join(" \u2022 "), answer: e.answer })),
  );
  const named = entries.map((e) => new Set([e.title, ...e.names].map(asName)));
  const boards = new Set(entries.filter((e) => e.kind === "board").flatMap((e) => termsOf(e.title)));
  const holding = new Map<string, number>();
  for (const e of entries)
    for (const term of new Set(termsOf([e.title, ...e.names, ...e.symptoms, e.answer].join(" "))))
      holding.set(term, (holding.get(term) ?? 0) + 1);
  const isKnown = (term: string) => holding.has(term);
  /** How much a word tells: one that stands on every page tells nothing. */
  const weigh = ({ terms }: Asked) => Math.log(1 + entries.length / (1 + Math.max(0, ...terms.map((t) => holding.get(t) ?? 0))));

  const cut = new Map<number, readonly Cut[]>();
  /** Title and symptoms of an entry, cut when first asked for. */
  function textsOf(id: number): readonly Cut[] {
    const before = cut.get(id);
    if (before) return before;
    const { title, symptoms } = itemAt(entries, id);
    const texts = [title, ...symptoms].map((text) => ({ text, terms: new Set(termsOf(text)), denies: denies(text) }));
    cut.set(id, texts);
    return texts;
  }

  function scored(asked: readonly Asked[], denied: boolean): readonly Scored[] {
    const whole = asked.reduce((sum, one) => sum + weigh(one), 0);
    const found = asked.map((one) => ({ one, finds: findsOf(one) }));
    const ids = new Set(found.flatMap(({ finds }) => [...finds.keys()]));
    return [...ids].map((id) => {
      const entry = itemAt(entries, id);
      const each = found.map(({ one, finds }) => ({ one, find: finds.get(id) }));
      const covered = each.reduce((sum, { one, find }) => sum + (find?.share ?? 0) * weigh(one), 0) / whole;
      const seen = Math.max(0, ...textsOf(id).map((text) => coverage(asked, text.terms, weigh) * (denied && !text.denies ? 0.8 : 1)));
      const score = each.reduce((sum, { find }) => sum + (find?.score ?? 0), 0);
      const beside = ({ word, terms }: Asked) => asking.has(word) || terms.every((term) => boards.has(term));
      return {
        id,
        rank: covered ** 2 * (denied && things.has(entry.kind) ? 0.7 : (kindWeight[entry.kind] ?? 1)) * (1 + seen / 2) + score / 1000,
        how: each.every(({ find }) => find !== undefined && find.share >= prefixShare) ? "words" : "near",
        named:
          things.has(entry.kind) && each.some(({ find }) => find?.inName) && each.every(({ one, find }) => find?.inName || beside(one)),
      };
    });
  }

  /** The entries that hold a word that is asked for, or one near it; each with the best of its finds. */
  function findsOf({ terms: wanted }: Asked): ReadonlyMap<number, Find> {
    const best = new Map<number, Find>();
    for (const [at, term] of wanted.entries()) {
      const fuzzy = isWord(term) && term.length > 3 && !holding.has(term) ? 0.25 : false;
      for (const { id, score, terms, match } of index.search(term, { prefix: isWord(term) && term.length > 2, fuzzy })) {
        const share = terms.includes(term) ? (at === 0 ? 1 : 0.9) : terms.some((t) => t.startsWith(term)) ? prefixShare : 0.5;
        const inName = Object.values(match).some((fields) => fields.includes("title") || fields.includes("names"));
        const before = best.get(id);
        if (!before || share > before.share) best.set(id, { share, score, inName: inName || before?.inName === true });
      }
    }
    return best;
  }

  return {
    find(question, filters = {}) {
      const name = asName(question);
      const asked = askedFor(question, isKnown);
      // "No picture" speaks of what is seen, not of a display card.
      const denied = denies(question);
      const hits = new Map<number, Hit["how"]>();
      // A title that is exactly the question comes before a page that lists it among others.
      const exact = named.flatMap((names, i) => (name.length > 1 && names.has(name) ? [i] : []));
      for (const i of exact.sort((a, b) => rankExact(itemAt(entries, a), name) - rankExact(itemAt(entries, b), name))) hits.set(i, "exact");
      const found = asked.length > 0 ? [...scored(asked, denied)].sort((a, b) => b.rank - a.rank || a.id - b.id) : [];
      for (const { id } of found.filter(({ named }) => named && !denied)) if (!hits.has(id)) hits.set(id, "words");
      for (const { id, how } of found) if (how === "words" && !hits.has(id)) hits.set(id, how);
      if (hits.size < 8) for (const { id, how } of found.slice(0, 40)) if (!hits.has(id)) hits.set(id, how);
      return [...hits].flatMap(([i, how]) => {
        const entry = itemAt(entries, i);
        return fits(entry, filters) ? [{ entry, how, symptom: bestSymptom(textsOf(i).slice(1), asked) }] : [];
      });
    },
  };
}
function rankExact(entry: Findable, name: string): number {
  if (asName(entry.title) === name) return 0;
  return asName(entry.names[0] ?? "") === name ? 1 : 2;
}

function bestSymptom(symptoms: readonly Cut[], asked: readonly Asked[]): string | undefined {
  const scored = symptoms.map(({ text, terms }) => ({ text, score: coverage(asked, terms, () => 1) }));
  return scored.sort((a, b) => b.score - a.score)[0]?.text;
}

/** The share of a question that one text covers. */
function coverage(asked: readonly Asked[], terms: ReadonlySet<string>, weigh: (one: Asked) => number): number {
  const sum = (of: readonly Asked[]) => of.reduce((total, one) => total + weigh(one), 0);
  return sum(asked.filter((one) => one.terms.some((t) => terms.has(t)))) / Math.max(sum(asked), 1e-9);
}
