// The build sheet as rows of text: what a page, a file and a printer are handed.
import type { Combination } from "../planning/index.js";
import type { Caution, PanelPart, WiringPlan } from "../wiring/index.js";
import type { SheetFinding } from "./finding-words.js";

export interface SheetSlot {
  readonly slot: string;
  readonly card: string;
  readonly revision: string;
  readonly freedom: string;
}

export interface SheetJumper {
  readonly card: string;
  readonly setting: string;
  readonly position: string;
  /** J3 1-2 closed */
  readonly how?: string | undefined;
}

export interface SheetBank {
  readonly bank: number;
  readonly offset: string;
  readonly size: string;
  readonly version: string;
  readonly repeats: number;
  readonly crc32: string;
  readonly positions: string;
  readonly note: string;
}

export interface BurnSheet {
  readonly device: string;
  readonly grade: string;
  readonly sockets: readonly string[];
  readonly banks: readonly SheetBank[];
  readonly fill: string;
  /** CRC-32 of the whole device, where it can be told without the bytes. */
  readonly checksum?: string | undefined;
}

export interface SheetWire {
  readonly number: number;
  readonly label: string;
  readonly from: string;
  readonly to: string;
  readonly run: string;
  readonly current: string;
}

export interface SheetContact {
  readonly position: string;
  readonly mode: string;
  readonly joined: string;
  readonly levels: string;
  readonly version: string;
  readonly on: string;
}

export interface SheetFault {
  readonly seen: string;
  /** No record says what its cards do then; they may do what they should. */
  readonly mayLookRight: boolean;
  /** Numbered from 1; measurements refer to them by number. */
  readonly causes: readonly string[];
  /** Numbers of causes that nothing measured here tells apart. */
  readonly twins: readonly string[];
  readonly tellApart: readonly {
    readonly measure: string;
    readonly outcomes: readonly { readonly sees: string; readonly causes: string }[];
  }[];
}

export interface BuildSheet {
  readonly title: string;
  readonly machine: string;
  readonly verdict: Combination["verdict"];
  readonly evidence: Combination["evidence"];
  readonly cautions: readonly Caution[];
  /** The few of them that bear on this work most. */
  readonly today: readonly Caution[];
  /** The work in about ten lines. */
  readonly order: readonly string[];
  /** What must be done or left besides. */
  readonly toDo: readonly string[];
  readonly conditions: readonly string[];
  readonly unknowns: readonly { readonly says: string; readonly how: string }[];
  readonly parts: readonly {
    readonly name: string;
    readonly count: number;
    readonly use: string;
    readonly atHand: "yes" | "to get" | "look";
  }[];
  /** What the cards need besides, which no rule judges. */
  readonly alsoNeeded: readonly string[];
  readonly slots: readonly SheetSlot[];
  readonly jumpers: readonly SheetJumper[];
  readonly pinWork: readonly { readonly says: string; readonly why: string }[];
  /** Left out when every mode runs the same firmware. */
  readonly burn?: BurnSheet | undefined;
  readonly contacts: readonly SheetContact[];
  readonly wires: readonly SheetWire[];
  readonly pullUps: readonly string[];
  readonly proof: string;
  readonly unsafe: readonly { readonly says: string; readonly cure: string }[];
  /** What one open wire, or the pulled plug, can leave the machine in that the rules do not call workable, worst first. */
  readonly hazards: readonly { readonly says: string; readonly why: string; readonly after: string }[];
  /** Electrical checks: what was reckoned, and what came of it. */
  readonly checks: readonly { readonly says: string; readonly state: "holds" | "fails" | "not known" }[];
  readonly bench: WiringPlan["benchTest"];
  /** Finding a fault in two steps; left out where no fault was simulated. */
  readonly finding?: SheetFinding | undefined;
  readonly faults: readonly SheetFault[];
  readonly faultsSay: string;
  /** Faults that change nothing that is seen. */
  readonly silentFaults: readonly string[];
  /** The one further observation that would tell most of them apart. */
  readonly suggestion?: string;
  /** The second table: two pairs of throws swapped at once, by what is seen. */
  readonly doubleFaults: readonly { readonly seen: string; readonly causes: readonly string[] }[];
  readonly doubleFaultsSay: string;
  readonly evidenceNotes: readonly string[];
  readonly nearMatches: readonly string[];
  readonly panel: readonly PanelPart[];
  readonly notes: readonly string[];
}
