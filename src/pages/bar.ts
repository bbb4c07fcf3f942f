// The bar over the releases: what a card does under each of them, as ink. Full height was seen on a bench, half is documented, a quarter
// reported, a pale frame is what the rules alone allow; a notch with a letter asks for something, and its note stands beside the bar.
import type { Answer } from "../planning/index.js";
import { itemAt, lastOf } from "../records/index.js";
import { type Evidence, evidenceWords, type Verdict, verdictWords } from "../words/index.js";
import { type LinkView, listText, type MarkView, markOf } from "./common.js";

/** One release, and what the card does there. */
export interface OnRelease {
  readonly family: string;
  readonly version: string;
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly answer?: Answer;
}

/** One release on the bar. */
export interface BarRelease {
  readonly family: string;
  readonly version: string;
  readonly mark: MarkView;
  /** Of a stretch of ink, which never runs over the end of a family. */
  readonly starts: boolean;
  readonly ends: boolean;
  /** The first of a family after another one: the scale has a gap before it. */
  readonly gap: boolean;
  /** Of the note that says what is asked for or lost. */
  readonly letter?: string;
}

export interface BarView {
  readonly releases: readonly BarRelease[];
  /** "from R5", "up to R4A, H2", "no release": on which it works, shortly. */
  readonly says: string;
  /** All of it in words, for somebody who cannot see the bar: "R4 and R4A no; R5 to R6 works, seen on a bench". */
  readonly label: string;
  readonly notes: readonly { readonly letter: string; readonly text: string }[];
}

/** A card with its bar, as a row of a table over one scale. */
export interface CardBar {
  readonly card: LinkView;
  readonly bar: BarView;
}

const works = (verdict: Verdict) => verdict === "workable" || verdict === "conditional";

export function barOf(on: readonly OnRelease[]): BarView {
  const letters = new Map<string, string>();
  const releases = on.map((one, at): BarRelease => {
    const beside = (i: number) => on[i]?.family === one.family && works(itemAt(on, i).verdict);
    const note = one.verdict === "conditional" ? noteText(one.answer) : "";
    if (note && !letters.has(note)) letters.set(note, letterOf(letters.size));
    const letter = letters.get(note);
    return {
      family: one.family,
      version: one.version,
      mark: markOf(one.verdict, one.evidence),
      starts: works(one.verdict) && !beside(at - 1),
      ends: works(one.verdict) && !beside(at + 1),
      gap: at > 0 && on[at - 1]?.family !== one.family,
      ...(letter ? { letter } : {}),
    };
  });
  const notes = [...letters].map(([text, letter]) => ({ letter, text }));
  return { releases, says: releasesText(on), label: labelOf(releases), notes };
}

function letterOf(at: number): string {
  return String.fromCharCode("a".charCodeAt(0) + (at % 26));
}

/** What must be done, or what is lost and what helps against it. */
function noteText(answer: Answer | undefined): string {
  const conditions = answer?.combinations[0]?.conditions ?? [];
  const said = conditions.map(({ kind, says, ways }) => {
    const [way] = ways;
    if (!way) return says;
    return kind === "remedy" ? way.says : `${says} Against it: ${way.says}`;
  });
  return said.length > 0 ? said.join(" ") : "What it asks for stands on the card's page.";
}

/** Neighbours of one family that are alike, as positions. */
function stretches<T extends { readonly family: string }>(on: readonly T[], alike: (a: T, b: T) => boolean): T[][] {
  const found: T[][] = [];
  for (const one of on) {
    const last = found.at(-1);
    const before = last?.at(-1);
    if (last && before && before.family === one.family && alike(before, one)) last.push(one);
    else found.push([one]);
  }
  return found;
}

/** In as few words as a margin holds. A condition counts as working here; its note stands beside the bar. */
export function releasesText(on: readonly OnRelease[]): string {
  if (on.length === 0) return "no release";
  if (on.every((o) => works(o.verdict))) return "any release";
  const state = ({ verdict }: OnRelease) => (works(verdict) ? "works" : verdict);
  const runs = stretches(on, (a, b) => state(a) === state(b));
  const spans = (wanted: string) => runs.filter((run) => state(itemAt(run, 0)) === wanted).map((run) => spanOf(on, run));
  const [fits, open] = [spans("works"), spans("unknown")];
  if (open.length === 0) return saidOf(fits, on) || "no release";
  const none = on.every((o) => o.verdict !== "ruled-out");
  if (fits.length === 0) return none ? "not known" : "no or not known";
  return `${saidOf(fits, on)}; ${none ? "else" : open.join(", ")} not known`;
}

/** "from R5", "R4A on, H2 on", "R5.1 alone" */
function saidOf(spans: readonly string[], on: readonly OnRelease[]): string {
  if (spans.length > 1) return spans.map((s) => s.replace(/^from (\S+)$/, "$1 on")).join(", ");
  const alone = on.filter((o) => works(o.verdict)).length === 1;
  return spans.map((s) => (alone ? `${s} alone` : s)).join("");
}

function spanOf(on: readonly OnRelease[], run: readonly OnRelease[]): string {
  const all = on.filter((o) => o.family === itemAt(run, 0).family).map((o) => o.version);
  const [first, last] = [itemAt(run, 0).version, lastOf(run).version];
  if (run.length === 1) return first;
  if (run.length === all.length) return `${first} to ${last}`;
  if (last === all.at(-1)) return `from ${first}`;
  if (first === all[0]) return `up to ${last}`;
  return `${first} to ${last}`;
}

function labelOf(releases: readonly BarRelease[]): string {
  const runs = stretches(releases, (a, b) => a.mark.label === b.mark.label);
  const said = runs.map((run) => {
    const [first, last] = [itemAt(run, 0), lastOf(run)];
    const span =
      run.length === 1 ? first.version : run.length === 2 ? listText([first.version, last.version]) : `${first.version} to ${last.version}`;
    const { verdict, evidence } = first.mark;
    const sure = works(verdict) && evidence ? `, ${evidenceWords[evidence].word}` : "";
    return `${span} ${verdictWords[verdict].word}${sure}`;
  });
  return said.join("; ");
}
