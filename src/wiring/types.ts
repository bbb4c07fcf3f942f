// What a wiring plan is: plain data, so that it crosses a worker boundary and goes to drawings, pages and sheets as it is.
// Every word a person reads stands in fields named `says`, `label`, `text` or `name`; the rest is for programs.

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
  /** One device a socket; two when even and odd bytes lie in sockets of their own. */
  readonly sockets: readonly { readonly socket: string; readonly lane: "whole" | "even" | "odd" }[];
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

/** A line of the device above those used inside one bank. */
export interface BankLine {
  /** As the data sheet names it: A17. */
  readonly line: string;
  /** Its weight in the bank number: 0 for the lowest bank line. */
  readonly bit: number;
  readonly pin: number;
  /** Pin of the socket it stands over; left out when it overhangs. */
  readonly socketPin?: number;
  readonly carries: "driven" | "high" | "low" | "open" | "supply" | "overhangs" | "unknown";
  readonly role: "switched" | "fixed-high" | "fixed-low";
  readonly net?: string;
  readonly says: string;
}

/** Work on one pin of one device. */
export interface PinWork {
  readonly socket: string;
  readonly pin: number;
  readonly signal: string;
  readonly does: "lift-and-switch" | "wire-in-place" | "overhang-and-switch" | "lift-and-tie" | "tie" | "lift-and-wire";
  readonly to?: string;
  readonly says: string;
  /** Why: what the socket carries there and what would happen otherwise. */
  readonly why: string;
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
  readonly hubNet: string;
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
  readonly key?: string;
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
  readonly fix: string;
}

export type FaultKind =
  | "throws-swapped"
  | "wires-swapped"
  | "wire-open"
  | "wire-to-ground"
  | "contacts-bridged"
  | "terminals-bridged"
  | "plug-mirrored"
  | "halves-swapped"
  | "banks-reversed"
  | "banks-exchanged"
  | "lanes-exchanged"
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
  readonly outcomes: readonly { readonly sees: string; readonly faults: readonly string[] }[];
}

export interface FaultGroup {
  /** What is seen, position by position; only where it differs from the plan is marked. */
  readonly seen: readonly (Observation & { readonly differs: boolean })[];
  readonly says: string;
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
  /** Different things that can be seen, apart from the good build. */
  readonly distinct: number;
  readonly says: string;
  readonly suggestion?: { readonly says: string; readonly distinct: number; readonly alone: number };
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

export interface RunnerUp {
  readonly says: string;
  readonly switchPart: string;
  readonly device?: string;
  readonly poles: number;
  readonly lines: number;
  readonly saves: readonly string[];
  readonly costs: readonly string[];
}

export interface Optimality {
  readonly poles: number;
  readonly lines: number;
  readonly lifted: number;
  /** Why nothing smaller exists among what was searched. */
  readonly says: string;
  readonly proven: boolean;
  readonly searched: { readonly switches: number; readonly devices: number; readonly candidates: number };
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
  readonly faults: FaultTable;
  /** Second table: two throws swapped twice over. */
  readonly doubleFaults: FaultTable;
  readonly parts: readonly PartLine[];
  readonly cautions: readonly Caution[];
  readonly notes: readonly string[];
}

export interface WayOut {
  readonly says: string;
  /** A part that would do. */
  readonly part?: string;
}

/** One reason why no wiring is handed out. */
export interface WiringReason {
  readonly code: WiringReasonCode;
  readonly says: string;
  readonly refs: readonly { readonly kind: string; readonly id: string; readonly pointer: string }[];
}

export type WiringReasonCode =
  | "no-board"
  | "no-socket"
  | "sockets-differ"
  | "image-unknown"
  | "image-too-large"
  | "image-uneven"
  | "image-width"
  | "no-device"
  | "device-unfit"
  | "no-switch"
  | "switch-unfit"
  | "enable-missing"
  | "enable-by-setting"
  | "enable-points"
  | "connector-unfit"
  | "cable-unfit"
  | "rating"
  | "simulation";

export type Wiring =
  | { readonly kind: "wiring"; readonly plan: WiringPlan }
  | { readonly kind: "not-needed"; readonly says: string }
  | {
      readonly kind: "refused";
      readonly says: string;
      readonly reasons: readonly WiringReason[];
      readonly waysOut: readonly WayOut[];
    };

export interface WiringOptions {
  /** Parts the owner chose. */
  readonly switch?: {
    readonly device?: string;
    readonly switch?: string;
    readonly connector?: string;
    readonly cable?: string;
  };
  /** Ids of parts at hand; they cost nothing. */
  readonly atHand?: readonly string[];
  /** Mode to fall into with every bank line open; left out: the mode with the fewest cards on. */
  readonly safest?: string;
  /** Length of the cable between connector and switch, in m. */
  readonly length_m?: number;
}
