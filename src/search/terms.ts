// How text is cut into terms, used alike on records and on questions: figures in one spelling, words by their root, words that mean one thing
// under one of them.
import { itemAt, must } from "../records/index.js";
import { alike, denying, little, phrases } from "./alike.js";
import { evenFigures } from "./figures.js";
import { englishFor, foreignLittle } from "./foreign.js";

/** A light hand with endings: "hangs", "hanging", "hanged" are one word. Words that hold a figure are left alone. */
export function root(word: string): string {
  if (/\d/.test(word) || word.length < 4) return word;
  let stem = word;
  if (stem.endsWith("ies") && stem.length > 4) return `${stem.slice(0, -3)}y`;
  for (const end of ["ing", "edly", "ed", "ly"]) {
    if (stem.endsWith(end) && stem.length - end.length >= 3) {
      stem = stem.slice(0, -end.length);
      if (/([bdgklmnprt])\1$/.test(stem) && !/(ll|ss)$/.test(stem)) stem = stem.slice(0, -1);
      return stem.replace(/e$/, "");
    }
  }
  if (/(ss|us|is)$/.test(stem)) return stem;
  if (/(xes|ches|shes|sses|zes)$/.test(stem)) return stem.slice(0, -2);
  return stem.replace(/s$/, "").replace(/e$/, "");
}

const heads = new Map<string, readonly string[]>();
for (const group of alike)
  for (const word of new Set(group.map(root))) heads.set(word, [...(heads.get(word) ?? []), root(itemAt(group, 0))]);

/** What a word is sought under: itself, and the first words of its groups. */
function same(word: string): readonly string[] {
  return [...new Set([word, ...(heads.get(word) ?? [])])];
}

/** A code as people type it: FS-200, fs200 and FS/200 are the same. */
function code(word: string): string {
  return word.replaceAll(/[^a-z0-9]/g, "");
}

function isCode(word: string): boolean {
  return /\d/.test(word);
}

function words(text: string): readonly string[] {
  const plain = evenFigures(text.normalize("NFKD").replaceAll(/\p{M}/gu, ""));
  return phrases
    .reduce((told, [phrase, word]) => told.replaceAll(phrase, word), plain)
    .split(/[^a-z0-9./+-]+/)
    .map((w) => w.replaceAll(/^[./+-]+|[./+-]+$/g, ""))
    .filter(Boolean);
}

const partsOf = (word: string): readonly string[] => word.split(/[./+-]+/).filter((part) => part !== "" && !little.has(part));

/** Terms of a record's text: codes whole and in parts, other words by their root. */
export function termsOf(text: string): readonly string[] {
  return words(text).flatMap((w) => {
    if (isCode(w)) return [...new Set([code(w), ...w.split(/[./+-]+/).filter(Boolean)])];
    return partsOf(w).flatMap((p) => same(root(p)));
  });
}

/** One thing that a question asks for: any of its terms will do. */
export interface Asked {
  readonly word: string;
  /** The word itself first, then what means the same. */
  readonly terms: readonly string[];
}

/**
 * What a question asks for, word by word: a code whole only, so that FS-200 does not find every 200; two words that the records write as one
 * are one; a word that the records do not have is taken for a foreign one, if it is.
 */
export function askedFor(text: string, isKnown: (term: string) => boolean = () => false): readonly Asked[] {
  const parts = words(text).flatMap((w) => (isCode(w) ? [w] : partsOf(w)));
  const out: Asked[] = [];
  for (let at = 0; at < parts.length; at++) {
    const word = itemAt(parts, at);
    const next = parts[at + 1];
    const joined = next !== undefined && !isCode(word) && !isCode(next) ? root(word + next) : undefined;
    if (joined !== undefined && isKnown(joined) && !isKnown(root(must(next, "next")))) {
      out.push({ word: word + next, terms: [joined] });
      at++;
      continue;
    }
    if (isCode(word)) out.push({ word, terms: [code(word)] });
    else out.push(...meant(word, isKnown));
  }
  return out;
}

/** A word, with what it means where it is foreign; a foreign one may mean several things, each asked for. */
function meant(word: string, isKnown: (term: string) => boolean): readonly Asked[] {
  const own = same(root(word));
  const english = englishFor(word, (part) => same(root(part)).some(isKnown));
  if (!english) return foreignLittle.has(word) ? [] : [{ word, terms: own }];
  if (own.some(isKnown)) return [{ word, terms: [...own, ...english.flatMap((w) => same(root(w)))] }];
  return english.map((w) => ({ word: w, terms: same(root(w)) }));
}

/** Every term that a question asks for. */
export function askedTerms(text: string): readonly string[] {
  return askedFor(text).flatMap(({ terms }) => terms);
}

/** Whether a question says that something is not there or does not work. */
export function denies(text: string): boolean {
  return words(text).some((word) => denying.has(word));
}

/** The whole question as a name or number, without spaces and signs. */
export function asName(text: string): string {
  return code(text.toLowerCase());
}
