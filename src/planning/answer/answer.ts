// What the planner answers: verdicts, evidence, combinations, reasons, repairs, all naming the records behind them.
// Plain data: it goes to pages, to the command line and over a worker boundary as it is.
import type { Condition, Fact, OnInMode, OwnersChoice, Ref, ToGet } from "../../encoding/index.js";
import type { Edit } from "../../machine/index.js";
import type { Build, Unread } from "../../records/index.js";
import type { Evidence, LidCard, Verdict } from "../../words/index.js";

export type { Condition, Evidence, Fact, OnInMode, OwnersChoice, Ref, ToGet, Verdict };

/** A fact that is missing and would decide. */
export interface UnknownFact {
  readonly says: string;
  /** How to find it out: what to measure, which marking to read. */
  readonly how: string;
  readonly refs: readonly Ref[];
  /** In how many of the combinations looked at it decides. */
  readonly settles: number;
}

/** What a card needs beside the machine, in its record's own words. No rule judges it, and nobody can tell whether it is at hand. */
export interface AlsoNeeded {
  /** Name of the copy that needs it. */
  readonly as: string;
  readonly says: string;
  readonly refs: readonly Ref[];
}

export interface PlacedCard {
  /** Name of the copy (the card id unless the machine has two). */
  readonly as: string;
  readonly card: string;
  readonly revision: string;
  readonly slot: string;
  readonly settings: Readonly<Record<string, string>>;
  /** Every slot it may stand in with all else of this combination's group as it is. */
  readonly slots: readonly string[];
  /** The same in words: "any of 3 long slots", "only S2". */
  readonly freedom: string;
}

export interface ModePlan {
  readonly id: string;
  readonly name: string;
  readonly firmware: string;
  /** Names of the copies switched on. */
  readonly enabled: readonly string[];
}

export interface EvidenceNote {
  readonly grade: Evidence;
  /** "card", "pair" or "whole": which link of the chain it stands for. */
  readonly link: "card" | "pair" | "whole";
  readonly says: string;
  /** The same without what it is about, for a place that says that already: "its papers say so (manual)". */
  readonly basis?: string;
  readonly refs: readonly Ref[];
}

export interface Combination {
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly board: string;
  readonly revision: string;
  /** Bytes of main memory, when the board record names options. */
  readonly memory?: number;
  readonly firmwareFamily: string;
  readonly modes: readonly ModePlan[];
  readonly cards: readonly PlacedCard[];
  readonly conditions: readonly Condition[];
  readonly unknowns: readonly UnknownFact[];
  /** What else the cards need, which no rule judges. */
  readonly alsoNeeded: readonly AlsoNeeded[];
  /** Set when this is exactly a tested build that ran: then what is not written down does not hold it back, and is told all the same. */
  readonly exactTest?: { readonly build: string; readonly by: string; readonly date: string; readonly notWritten: readonly UnknownFact[] };
  /** Weakest link first. */
  readonly rests: readonly EvidenceNote[];
  /** Tested builds that nearly match, and in what they differ. Named, never counted. */
  readonly nearMatches: readonly { readonly build: string; readonly differs: string }[];
  /** Changes from the machine as it stands, in words, dearest last. */
  readonly changes: readonly string[];
  /** Least headroom over all rails, in A, where known. */
  readonly headroom: readonly { readonly rail: string; readonly used_A: number | "unknown"; readonly limit_A: number | "unknown" }[];
  readonly spareSlots: number;
  /** A switch is needed: modes differ in firmware or in enabled cards. */
  readonly switched: boolean;
}

export interface PossibleValue {
  readonly value: string;
  readonly label: string;
  /** workable: some certain combination takes it; unknown: only ones that hang on unknown facts; ruled-out: none. */
  readonly verdict: "workable" | "unknown" | "ruled-out";
}

/** One hole of the build: what may still be chosen. */
export interface OpenChoice {
  /** As choiceId writes it: "revision", "slot:<card>". */
  readonly id: string;
  readonly label: string;
  readonly chosen?: string | undefined;
  readonly values: readonly PossibleValue[];
}

/** Choices that cannot all stand, with the facts that make it so. */
export interface Reason {
  readonly choices: readonly OwnersChoice[];
  /** Smallest set of facts that excludes these choices together; proven minimal. */
  readonly facts: readonly Fact[];
  /** Whether other sets of facts exclude them as well; unknown when that was not looked into, or not to the end. */
  readonly moreFacts: "yes" | "no" | "unknown";
  readonly says: string;
}

export interface Repair {
  /** `ways`: several ways to run it with one switch; `by-hand`: the same by opening the machine; `second-mode`: one of its modes run as two. */
  readonly kind: "drop" | "change" | "second-mode" | "ways" | "by-hand";
  /** What to give up. Empty for a repair that only adds (a second mode). */
  readonly gives: readonly OwnersChoice[];
  readonly says: string;
  /** The verdict after it, by solving again. */
  readonly verdict: Verdict;
  readonly count: string;
  /** False: at least so many. */
  readonly exact: boolean;
  /** What to choose instead, when it is a change. */
  readonly instead?: readonly { readonly choice: string; readonly values: readonly string[] }[];
  /** What to change in the build. None for a change-over by hand, which leads to no one build. */
  readonly edits: readonly Edit[];
  /** The build after these edits, for a program that puts it straight back to the planner. */
  readonly build?: Build;
  /** Of a change-over by hand: the machine in each of its ways, and the steps between them. */
  readonly lid?: LidCard;
  /** Of several ways, with a switch or by hand: what differs between them. */
  readonly differs?: WaysDiffer;
}

export interface WaysDiffer {
  /** Cards that are on in some ways only. */
  readonly cards: number;
  /** Versions beyond the first. */
  readonly versions: number;
  /** Least and most things the hand does between two ways; power and start not counted. */
  readonly each?: readonly [least: number, most: number];
}

/**
 * How far one way of helping was searched: every case of it, some, none; or no case of it could help ("no-help"), which needs no search.
 * A list is said to be complete only of what was tried to the end.
 */
export type Tried = "all" | "some" | "none" | "no-help";

export interface RepairsComplete {
  /** Smallest sets of choices to give up. */
  readonly givingUp: Tried;
  /** One of several modes run as two, with a switch: every way to share the cards out between them. */
  readonly twoModes: Tried;
  /** One of several modes run as three or more. */
  readonly moreModes: Tried;
  /** A machine with one mode run in as few ways as can be, with a switch: every way to share the cards out. */
  readonly ways: Tried;
}

/** A record that is in a file and could not be read, and whether it could bear on the answer. */
export interface UnreadRecord extends Pick<Unread, "kind" | "id" | "file" | "line" | "column" | "says" | "hint"> {
  /** False: whatever it was meant to say, this answer would be the same. */
  readonly bears: boolean;
}

export interface Answer {
  readonly kind: "answer";
  /** False when the budget ran out: then counts are lower bounds and lists may lack entries; a verdict given is still right. */
  readonly finished: boolean;
  readonly verdict: Verdict;
  /** One sentence a friend would say. */
  readonly says: string;
  /** Certain combinations, as decimal digits. */
  readonly count: string;
  readonly exact: boolean;
  /** Combinations that hang on unknown facts. */
  readonly hanging: string;
  readonly hangingExact: boolean;
  /** Where the build says that it does not matter whether a card is on in a mode: what the answer takes it as. */
  readonly taken: readonly OnInMode[];
  /** Ranked representatives, best first. */
  readonly combinations: readonly Combination[];
  readonly possible: readonly OpenChoice[];
  readonly reasons: readonly Reason[];
  /** Every smallest set of choices that cannot stand together is listed. Of the facts behind each, `moreFacts` speaks. */
  readonly reasonsComplete: boolean;
  readonly repairs: readonly Repair[];
  readonly repairsComplete: RepairsComplete;
  readonly unknowns: readonly UnknownFact[];
  /** Every record that could not be read, those that bear on this answer first. */
  readonly unread: readonly UnreadRecord[];
  /** Conflicts that were looked at and count for nothing (disproved), or only add a note. */
  readonly history: readonly Fact[];
}
