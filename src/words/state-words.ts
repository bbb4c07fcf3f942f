// The one table of words and class names for verdict, evidence, status, effect and outcome.
// Every page, export and search result takes its word from here, so that a state is always called the same.

/** What the records say of a question; "unknown" when a fact that decides it is missing. */
export type Verdict = "workable" | "conditional" | "ruled-out" | "unknown";

/** What a verdict rests on: a dated test, a paper, hearsay, or the rules alone. */
export type Evidence = "bench" | "documented" | "reported" | "inferred";

export interface Word {
  readonly word: string;
  /** Class name of the state, for style and filters. */
  readonly css: string;
  /** What it means, in one sentence. */
  readonly means: string;
}

export const verdictWords: Readonly<Record<Verdict, Word>> = {
  workable: {
    word: "works",
    css: "works",
    means: "Nothing known stands against it, whatever the facts still missing turn out to be.",
  },
  conditional: {
    word: "works if",
    css: "if",
    means: "It works when you do what is said beside it, or with the loss that is named.",
  },
  "ruled-out": { word: "no", css: "no", means: "Something known stands against it; the reason is given." },
  unknown: { word: "not known", css: "unknown", means: "A fact that decides it is missing; what to measure is given." },
};

export const evidenceWords: Readonly<Record<Evidence, Word>> = {
  bench: {
    word: "seen on a bench",
    css: "bench",
    means: "Dated tested builds had each card so (slot, settings, board revision, firmware), and together those that run together.",
  },
  documented: { word: "documented", css: "documented", means: "A maker's or club's paper says so." },
  reported: { word: "reported", css: "reported", means: "Someone said so; no test or paper covers all of it." },
  inferred: {
    word: "by the rules alone",
    css: "inferred",
    means: "The rules find nothing against it; no test, paper or report covers all of it.",
  },
};

/** Best first: the order of verdicts in lists and for "at least this good". */
export const verdictOrder: readonly Verdict[] = ["workable", "conditional", "unknown", "ruled-out"];
export const evidenceOrder: readonly Evidence[] = ["bench", "documented", "reported", "inferred"];

export const effectWords: Readonly<Record<"blocks" | "degrades" | "cosmetic", Word>> = {
  blocks: { word: "stops it", css: "no", means: "The cards do not work together as long as it stands." },
  degrades: { word: "works with a loss", css: "if", means: "It runs, and something is lost." },
  cosmetic: { word: "only looks odd", css: "works", means: "Nothing is lost." },
};

export const statusWords: Readonly<Record<"confirmed" | "suspected" | "disproved", Word>> = {
  confirmed: { word: "confirmed", css: "confirmed", means: "It has been seen and explained well enough to count." },
  suspected: { word: "suspected", css: "suspected", means: "It rules nothing out; it makes the answer not known until it is settled." },
  disproved: {
    word: "disproved",
    css: "disproved",
    means: "It was looked into and is not so. It is kept so that nobody has to ask again.",
  },
};

export const outcomeWords: Readonly<Record<"worked" | "partly" | "failed", Word & { readonly verdict: Verdict }>> = {
  worked: { word: "worked", css: "works", verdict: "workable", means: "All that was tried ran." },
  partly: { word: "worked in part", css: "if", verdict: "conditional", means: "Some of it ran; what did not is named." },
  failed: { word: "failed", css: "no", verdict: "ruled-out", means: "It did not run." },
};

export const costWords: Readonly<Record<string, string>> = {
  jumper: "a jumper to move",
  slot: "another slot",
  firmware: "another firmware version",
  part: "a part to get",
  solder: "soldering",
  "trace-cut": "a trace to cut",
};

export const classWords: Readonly<Record<string, string>> = {
  "io-overlap": "two cards at the same ports",
  "io-alias": "ports that answer again at an alias",
  "mem-overlap": "two things at the same memory addresses",
  "rom-scan": "an option ROM that is not found",
  "irq-dup": "one interrupt line, two owners",
  "irq-alias": "one interrupt line under two names",
  "irq-unreachable": "an interrupt line that does not reach the slot",
  "dma-dup": "one DMA channel, two owners",
  "dma-limit": "a DMA transfer beyond what the channel can do",
  timing: "timing",
  "power-rail": "too much current on a rail",
  "power-neg": "a negative rail that is weak or missing",
  inrush: "current at switching on",
  "mech-width": "room on the board",
  "mech-bracket": "room at the rear opening",
  "firmware-min": "firmware too old",
  "firmware-max": "firmware too new",
  "socket-wiring": "how the socket is wired",
  "width-order": "bytes in the wrong order",
  "bank-float": "a floating bank line",
  "bank-live": "a bank switched under power",
  "ram-hole": "a hole in memory",
  "cache-shadow": "a cache or shadow over a window",
  termination: "termination",
  "mirror-drawing": "a drawing that is a mirror image",
  "clone-rev": "a copy or revision that differs",
  heat: "heat",
  ground: "ground",
};
