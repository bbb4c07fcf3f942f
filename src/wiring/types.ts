// What a wiring plan is: plain data, so that it crosses a worker boundary and goes to drawings, pages and sheets as it is.
// Every word a person reads stands in fields named `says`, `label`, `text` or `name`; the rest is for programs.

import type { BankLine, Optimality, PinWork, RunnerUp, WindowPart } from "../switching/index.js";
import type { BenchStep, ContinuityRow, FaultTable, FindingRow, Proof } from "./bench-types.js";

export type * from "./answer-types.js";
export type * from "./bench-types.js";
export type { BankLine, Optimality, PinWork, RunnerUp };

/** A line a contact can pull down. `floating`: nothing decides it. `short`: supply meets ground, or two drivers fight. */
export type Level = "low" | "high" | "floating" | "short";

export type CardState = "on" | "off" | "undefined";

/** One end of a wire. */
export type End =
  | { readonly at: "device"; readonly socket: string; readonly pin: number; readonly lifted: boolean }
  | { readonly at: "socket"; readonly socket: string; readonly pin: number }
  | { readonly at: "card"; readonly card: string; readonly point: string }
  | { readonly at: "connector"; readonly connector: string; readonly half: "panel" | "cable"; readonly contact: string }
  | { readonly at: "switch"; readonly terminal: string }
  | { readonly at: "lead"; readonly card: string; readonly conductor: number; readonly signal: string }
  | { readonly at: "resistor"; readonly resistor: string }
  | { readonly at: "ground"; readonly says: string }
  | { readonly at: "supply"; readonly says: string };

/** A net: all that is joined whatever the switch does. The name is the label on its wires. */
export interface Net {
  readonly id: string;
  /** Label on the wires: "A17", "GND", "tallow EN". Free of colours. */
  readonly label: string;
  readonly kind: "ground" | "bank-line" | "enable" | "lead";
  /** The card, for an enable or a lead. */
  readonly card?: string;
  /** Point on the card, for an enable. */
  readonly point?: string;
}

export interface PlannedMode {
  readonly id: string;
  readonly name: string;
  readonly firmware: string;
  readonly enabled: readonly string[];
  /** The mode the machine falls into with every bank line open. */
  readonly safest: boolean;
  /** Positions of the switch that give this mode. */
  readonly positions: readonly string[];
}

export interface DevicePlan {
  readonly part: string;
  readonly name: string;
  readonly family: string;
  readonly capacity: number;
  readonly words: number;
  readonly width: number;
  readonly package: string;
  /** One device a socket: even and odd bytes, and the parts of a window in a row, lie in devices of their own. */
  readonly sockets: readonly { readonly socket: string; readonly lane: "whole" | "even" | "odd"; readonly part?: WindowPart }[];
  /** Slowest grade that still works; unknown when the board's figure or the device's is. */
  readonly grade: { readonly marking: string; readonly access_ns: number } | "unknown";
  readonly slowest_ns: number | "unknown";
  readonly says: string;
  readonly atHand: boolean;
}

export interface Bank {
  readonly index: number;
  /** First byte inside each device. */
  readonly offset: number;
  /** Bytes inside each device. */
  readonly size: number;
  readonly version: string;
  /** How often the image is repeated to fill the bank. */
  readonly repeats: number;
  /** mode: a position selects it; copy: a further copy that a position selects; safe: filled so that no fault reaches an empty bank. */
  readonly use: "mode" | "copy" | "safe";
  readonly modes: readonly string[];
}

export interface SwitchPlan {
  readonly part: string;
  readonly name: string;
  readonly form: string;
  readonly poles: number;
  readonly polesUsed: number;
  readonly positions: readonly string[];
  readonly transit: "break-before-make" | "make-before-break";
  readonly atHand: boolean;
  /** Pole by pole: the hub, what it carries, and what each other terminal carries. */
  readonly sections: readonly SwitchSection[];
  readonly spareTerminals: readonly string[];
}

export interface SwitchSection {
  readonly pole: number;
  readonly hub: string;
  /** Left out: nothing is wired to the common terminal; it only joins the throws that meet it. */
  readonly hubNet?: string;
  readonly throws: readonly { readonly terminal: string; readonly net?: string; readonly positions: readonly string[] }[];
}

/** One row of the contact table. */
export interface ContactRow {
  readonly position: string;
  readonly mode: string;
  readonly joined: readonly (readonly [string, string])[];
  readonly levels: readonly { readonly line: string; readonly level: Level }[];
  readonly bank?: number;
  readonly version: string;
  readonly cards: readonly { readonly card: string; readonly state: CardState }[];
}

export interface Wire {
  /** Running number from 1. */
  readonly number: number;
  readonly net: string;
  readonly label: string;
  readonly from: End;
  readonly to: End;
  readonly fromText: string;
  readonly toText: string;
  /** board: inside the machine; cable: a conductor of the cable; jumper: a short link at the switch or between sockets. */
  readonly run: "board" | "cable" | "jumper";
  /** Conductor of the cable, counted from 1. */
  readonly conductor?: number;
  readonly current_mA: number | "unknown";
  readonly length_m?: number;
  /** There and back when it is part of a loop through the cable. */
  readonly drop_mV?: number;
}

export interface FaceContact {
  readonly contact: string;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly net?: string;
  readonly label?: string;
}

/** A face of a connector as the eye sees it: x to the right, y up. */
export interface Face {
  readonly half: "panel" | "cable";
  readonly shape: "plug" | "socket";
  readonly view: "mating" | "rear" | "solder";
  /** From where: "solder side: the view while soldering". */
  readonly seen: string;
  /** The half and from where it is seen. */
  readonly says: string;
  readonly contacts: readonly FaceContact[];
}

export interface ConnectorPlan {
  /** J1, J2. */
  readonly id: string;
  readonly purpose: "switch" | "lead";
  readonly part: string;
  readonly name: string;
  readonly panel: boolean;
  readonly half: "plug" | "socket";
  readonly mates?: string;
  readonly contacts: readonly { readonly contact: string; readonly net?: string; readonly label: string }[];
  readonly spare: readonly string[];
  readonly faces: readonly Face[];
  readonly key?: string | undefined;
  readonly rating_A: number | "unknown";
  readonly atHand: boolean;
}

export interface CablePlan {
  readonly part: string;
  readonly name: string;
  readonly purpose: "switch" | "lead";
  readonly conductors: number;
  readonly used: number;
  readonly spare: number;
  readonly awg: number;
  readonly ohm_per_m: number;
  readonly length_m?: number;
  readonly atHand: boolean;
}

export interface PullUp {
  /** R1, R2. */
  readonly id: string;
  readonly net: string;
  readonly label: string;
  readonly ohms: number;
  readonly part?: string;
  readonly from: End;
  readonly to: End;
  /** Through a closed contact. */
  readonly current_mA: number;
  /** Level of the open line with the leakage planned for. */
  readonly openVolts: number;
  readonly says: string;
}

export interface PartLine {
  readonly part?: string;
  readonly name: string;
  readonly count: number;
  readonly use: string;
  readonly atHand: boolean;
}

export interface Caution {
  readonly id: string;
  /** stop: do not go on unless competent and equipped. */
  readonly severity: "stop" | "care";
  readonly title: string;
  readonly text: string;
  readonly source: string;
}

export interface Electrical {
  readonly supply_V: number;
  readonly pullUps_mA: number;
  readonly ground_mA: number | "unknown";
  readonly says: readonly string[];
  readonly checks: readonly { readonly what: string; readonly ok: boolean | "unknown"; readonly says: string }[];
}

export interface WiringPlan {
  readonly board: string;
  readonly boardName: string;
  readonly revision: string;
  readonly firmwareFamily: string;
  readonly modes: readonly PlannedMode[];
  /** Left out when every mode runs the same firmware. */
  readonly device?: DevicePlan;
  readonly banks: readonly Bank[];
  readonly lines: readonly BankLine[];
  readonly pinWork: readonly PinWork[];
  readonly nets: readonly Net[];
  readonly switch: SwitchPlan;
  readonly contacts: readonly ContactRow[];
  readonly wires: readonly Wire[];
  readonly connectors: readonly ConnectorPlan[];
  readonly cables: readonly CablePlan[];
  readonly pullUps: readonly PullUp[];
  readonly electrical: Electrical;
  readonly optimality: Optimality;
  readonly runnerUp?: RunnerUp;
  readonly proof: Proof;
  readonly benchTest: readonly BenchStep[];
  readonly continuity: readonly ContinuityRow[];
  /** At which step of the bench test each single fault is found. */
  readonly finding: readonly FindingRow[];
  readonly faults: FaultTable;
  /** Second table: two throws swapped twice over. */
  readonly doubleFaults: FaultTable;
  readonly parts: readonly PartLine[];
  readonly cautions: readonly Caution[];
  /** What must be done or left, beyond parts, pins and wires. */
  readonly toDo: readonly string[];
  readonly notes: readonly string[];
}
