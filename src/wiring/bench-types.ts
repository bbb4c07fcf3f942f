// What proof, bench test and fault table say of a wiring plan: plain data like the plan itself.
import type { Verdict } from "../planning/index.js";
import type { CardState, Level } from "./types.js";

/** A state of the whole machine as the simulation sees it. */
export interface MachineState {
  readonly levels: readonly { readonly line: string; readonly level: Level }[];
  readonly bank?: number;
  /** Version shown; left out when no level decides the bank. */
  readonly version?: string;
  readonly cards: readonly { readonly card: string; readonly state: CardState }[];
  readonly verdict: "planned" | "unplanned" | "undefined" | "short";
  /** The mode it equals, when planned. */
  readonly mode?: string;
  readonly says: string;
}

/** States that no mode plans, that one fault can leave, and that the rules do not call workable: alike in what runs and what is on. */
export interface Hazard {
  /** "R4A; Tallow on; Gannet off". */
  readonly says: string;
  readonly verdict: Verdict;
  /** What rules it out, or what is not known about it. */
  readonly why: readonly string[];
  /** The single faults of the proof that leave it: wires open, the plug pulled. */
  readonly after: readonly string[];
  /** Wires that need only come open. */
  readonly wires: readonly number[];
}

export interface ProofCase {
  readonly kind: "position" | "transit" | "open-wire" | "pulled-plug";
  readonly says: string;
  /** Position, or "from > to". */
  readonly position: string;
  readonly wire?: number;
  readonly manner?: "break-before-make" | "make-before-break";
  /** The manner is the fitted switch's own. */
  readonly fitted: boolean;
  /** Every different state met, in the order met. */
  readonly states: readonly MachineState[];
  readonly safe: boolean;
  readonly cure?: string;
}

export interface Proof {
  /** Every position simulates to its planned mode. Always true in a plan that is handed out. */
  readonly holds: boolean;
  readonly cases: readonly ProofCase[];
  /** Worst first; empty where nobody judged. */
  readonly hazards: readonly Hazard[];
  readonly unsafe: readonly { readonly says: string; readonly cure: string; readonly count: number }[];
  readonly simulated: number;
  readonly says: string;
}

export interface BenchStep {
  readonly number: number;
  readonly stage: "power-off" | "continuity" | "no-cards" | "device" | "cards" | "soak";
  readonly power: "off" | "on";
  readonly does: string;
  readonly expect: readonly { readonly position?: string; readonly see: string }[];
  readonly cautions: readonly string[];
}

export interface Observation {
  readonly position: string;
  /** Version shown, or what is seen instead. */
  readonly shows: string;
  readonly answers: readonly string[];
  readonly unsure: readonly string[];
}

export interface Fault {
  readonly id: string;
  readonly kind: FaultKind;
  readonly says: string;
  /** The same without labels that the table of wires has. */
  readonly short?: string;
  readonly fix: string;
}

export type FaultKind =
  | "throws-swapped"
  | "terminals-swapped"
  | "wires-swapped"
  | "wire-open"
  | "wire-to-ground"
  | "wire-to-supply"
  | "contacts-bridged"
  | "terminals-bridged"
  | "plug-mirrored"
  | "halves-swapped"
  | "image-not-repeated"
  | "banks-reversed"
  | "banks-exchanged"
  | "banks-shifted"
  | "lanes-exchanged"
  | "lane-twice"
  | "bytes-swapped"
  | "pull-up-missing"
  | "pin-not-lifted"
  | "knob-offset"
  | "knob-reversed"
  | "contact-stuck"
  | "two-swaps";

/** A measurement that tells twins apart. */
export interface Measurement {
  readonly says: string;
  /** The same where what holds for all of them was said: power off, device and cards out. */
  readonly short: string;
  readonly outcomes: readonly { readonly sees: string; readonly faults: readonly string[] }[];
}

/** One line of the continuity list: power off, memory device and switched cards out, loom plugged in. */
export interface ContinuityRow {
  /** contacts, terminals: neighbours of one another, and what a contact joins; ground, supply: a net against it. */
  readonly kind: "wire" | "resistor" | "contacts" | "terminals" | "ground" | "supply";
  /** Left out: at every position. */
  readonly position?: string;
  readonly wire?: number;
  readonly label?: string;
  readonly from: string;
  readonly to: string;
  readonly must: "beep" | "silent" | "resistance";
  readonly ohms?: number;
}

/** The step of the bench test at which a fault is first found; read-back: only by reading the device again; nothing: it changes nothing. */
export type FoundAt = "meter" | "resistance" | "firmware" | "cards" | "read-back" | "nothing";

/** Faults that the same step finds, alike in kind or in the firmware they show. */
export interface FindingRow {
  readonly at: FoundAt;
  readonly kinds: readonly FaultKind[];
  /** What is shown at each position, where the firmware tells it. */
  readonly shows: readonly { readonly position: string; readonly shows: string }[];
  readonly faults: readonly string[];
  readonly says: readonly string[];
}

export interface FaultGroup {
  /** What is seen, position by position; only where it differs from the plan is marked. */
  readonly seen: readonly (Observation & { readonly differs: boolean })[];
  readonly says: string;
  /** What cards do that the records rule out is not known; so this may look like the good build. */
  readonly mayLookRight: boolean;
  /** What the rules hold against the states it leaves the machine in. */
  readonly harm: readonly string[];
  readonly faults: readonly Fault[];
  readonly measurements: readonly Measurement[];
  /** Faults no measurement offered here tells apart; they share a fix or are looked for one by one. */
  readonly twins: readonly (readonly string[])[];
}

export interface FaultTable {
  readonly groups: readonly FaultGroup[];
  /** Faults that change nothing seen. */
  readonly silent: readonly Fault[];
  readonly faults: number;
  /** Faults that stand alone in their group. */
  readonly alone: number;
  /** Faults that what is seen and the measurements given tell from all others. */
  readonly apart: number;
  /** Different things that can be seen, apart from the good build. */
  readonly distinct: number;
  readonly says: string;
  readonly suggestion?: { readonly says: string; readonly distinct: number; readonly alone: number };
}
