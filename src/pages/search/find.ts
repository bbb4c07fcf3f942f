// Finds entries for a question: exact names and numbers first, then entries that hold every word, then near misses.
import MiniSearch from "minisearch";
import type { SearchEntry } from "./entries.js";
import { askedTerms, asName, termsOf } from "./terms.js";

export interface Filters {
  readonly kind?: string;
  readonly board?: string;
  readonly verdict?: string;
}

export interface Hit {
  readonly entry: SearchEntry;
  /** exact: the question is its name or number; words: it holds all words; near: some words, or with a typing error. */
  readonly how: "exact" | "words" | "near";
  /** The symptom that fits best, when it has any. */
  readonly symptom?: string;
}

export interface Finder {
  readonly find: (question: string, filters?: Filters) => readonly Hit[];
}

/** A verdict that is asked for together with a board is the verdict on that board, not the best on any. */
export function fits(entry: Pick<SearchEntry, "kind" | "boards" | "verdict" | "verdictOn">, filters: Filters): boolean {
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

export function finder(entries: readonly SearchEntry[]): Finder {
  const index = new MiniSearch<{ id: number; title: string; names: string; symptoms: string; answer: string }>({
    fields: ["title", "names", "symptoms", "answer"],
    tokenize: (text) => [...termsOf(text)],
    processTerm: (term) => term,
    searchOptions: {
      tokenize: (text) => [...askedTerms(text)],
      boost: { title: 4, names: 4, symptoms: 3 },
      boostDocument: (id) => kindWeight[entries[id as number]!.kind] ?? 1,
    },
  });
  index.addAll(
    entries.map((e, id) => ({ id, title: e.title, names: e.names.join(" "), symptoms: e.symptoms.join(" \u2022 "), answer: e.answer })),
  );
  const named = entries.map((e) => new Set([e.title, ...e.names].map(asName)));
  const isWord = (term: string) => !/\d/.test(term);

  return {
    find(question, filters = {}) {
      const name = asName(question);
      const asked = askedTerms(question);
      const hits = new Map<number, Hit["how"]>();
      if (name.length > 1) for (const [i, names] of named.entries()) if (names.has(name)) hits.set(i, "exact");
      // A title that is exactly the question comes before a page that lists it among others.
      const exact = [...hits.keys()].sort((a, b) => rankExact(entries[a]!, name) - rankExact(entries[b]!, name));
      hits.clear();
      for (const i of exact) hits.set(i, "exact");
      const add = (how: Hit["how"], options: Parameters<typeof index.search>[1]) => {
        for (const { id } of index.search(question, options)) if (!hits.has(id)) hits.set(id, how);
      };
      if (asked.length > 0) {
        add("words", { combineWith: "AND", prefix: (term) => isWord(term) && term.length > 2 });
        if (hits.size < 8)
          add("near", { combineWith: "AND", prefix: isWord, fuzzy: (term) => (isWord(term) && term.length > 3 ? 0.25 : false) });
        if (hits.size < 8)
          add("near", { combineWith: "OR", prefix: isWord, fuzzy: (term) => (isWord(term) && term.length > 3 ? 0.2 : false) });
      }
      return [...hits].flatMap(([i, how]) => {
        const entry = entries[i]!;
        return fits(entry, filters) ? [{ entry, how, symptom: bestSymptom(entry, asked) }] : [];
      });
    },
  };
}

function rankExact(entry: SearchEntry, name: string): number {
  if (asName(entry.title) === name) return 0;
  return asName(entry.names[0] ?? "") === name ? 1 : 2;
}

function bestSymptom(entry: SearchEntry, asked: readonly string[]): string | undefined {
  const scored = entry.symptoms.map((text) => {
    const terms = new Set(termsOf(text));
    return { text, score: asked.filter((t) => terms.has(t)).length };
  });
  return scored.sort((a, b) => b.score - a.score)[0]?.text;
}
