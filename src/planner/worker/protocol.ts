// What the page and its workers say to each other: plain data both ways. The page asks, a worker answers with the same number.

import type { InvalidBuild } from "../../machine/index.js";
import type { WayOutCost } from "../../pages/index.js";
import type {
  Answer,
  Combination,
  Counts,
  Fitting,
  Only,
  OnOff,
  Purchase,
  Reason,
  Repair,
  RepairsComplete,
  Verdict,
} from "../../planning/index.js";
import type { Build, Finding } from "../../records/index.js";
import type { CatalogueSummary } from "./catalogue-summary.js";
import type { SheetView } from "./sheet-view.js";

/** Where the records come from: an address the worker loads, or their text (in the single file). */
export type RecordsFrom = { readonly url: string } | { readonly text: string };

export interface WhyNot {
  readonly kind: "why-not";
  /** Of the build with the value taken. */
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly repairs: readonly Repair[];
  readonly repairsComplete: RepairsComplete;
}

export interface Answered {
  readonly kind: "answered";
  readonly answer: Answer;
  /** All that is counted, when it could be counted while the answer was worked out; else it is asked for apart. */
  readonly counts?: Counts | undefined;
  /** What is on in which way, and what switching it over would come to; of a machine that is run in one way with every card on, nothing. */
  readonly onOff?: readonly OnOff[] | undefined;
  readonly took: number;
}

/** Ways of one kind alone. */
export interface Narrowed {
  readonly kind: "narrowed";
  readonly ways: readonly Combination[];
}

/** What the solving worker can be asked, each with its reply. */
export interface Tasks {
  readonly open: { readonly asks: { readonly records: RecordsFrom }; readonly gives: CatalogueSummary };
  readonly answer: { readonly asks: { readonly build: Build; readonly most_ms: number }; readonly gives: Answered | InvalidBuild };
  /** Counting to the end, or to the end of its time; asked of a worker of its own, so that it holds nothing else up. */
  readonly count: { readonly asks: { readonly build: Build; readonly most_ms: number }; readonly gives: Counts | InvalidBuild };
  readonly narrow: {
    readonly asks: { readonly build: Build; readonly only: Only; readonly most_ms: number };
    readonly gives: Narrowed | InvalidBuild;
  };
  readonly why: {
    readonly asks: { readonly build: Build; readonly choice: string; readonly value: string };
    readonly gives: WhyNot | InvalidBuild;
  };
  readonly buy: { readonly asks: { readonly build: Build; readonly card: string }; readonly gives: Purchase | InvalidBuild };
  readonly fits: { readonly asks: { readonly build: Build }; readonly gives: readonly Fitting[] | InvalidBuild };
}

export type Pasted =
  | { readonly kind: "read"; readonly build: Build; readonly warnings: readonly Finding[] }
  | { readonly kind: "unreadable"; readonly findings: readonly Finding[] }
  /** It is a build, but names things the records do not have. */
  | { readonly kind: "unresolved"; readonly findings: readonly Finding[] };

/** What the second worker can be asked: all that is wanted only once a way has been found, or a file comes in or goes out. */
export interface BenchTasks {
  readonly open: { readonly asks: { readonly records: RecordsFrom }; readonly gives: true };
  readonly sheet: {
    /** Left out: of the combination that is best to build. */
    readonly asks: { readonly build: Build; readonly combination?: Combination };
    readonly gives: SheetView;
  };
  /** What the ways out that are shown cost, cheapest first, of each sort one. */
  readonly costs: { readonly asks: { readonly repairs: readonly Repair[] }; readonly gives: readonly WayOutCost[] };
  /** Ids of the cards that what was typed could mean, the likeliest first. */
  readonly find: { readonly asks: { readonly typed: string }; readonly gives: readonly string[] };
  readonly write: { readonly asks: { readonly build: Build }; readonly gives: string };
  readonly read: { readonly asks: { readonly text: string; readonly file: string }; readonly gives: Pasted };
}

export interface Message {
  readonly number: number;
  readonly task: string;
  readonly asks: unknown;
}

export type Reply =
  | { readonly number: number; readonly gives: unknown }
  /** Our own fault: the worker could not finish. */
  | { readonly number: number; readonly failed: string };
