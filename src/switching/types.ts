// What a choice of contacts is asked with and told in: options, reasons, lines and pins of the device, why nothing smaller does.
import type { Combination, JudgeRunning } from "../planning/index.js";

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
  /** What the rules say of a state that no mode plans; left out: nobody has judged those. */
  readonly judge?: ((combination: Combination) => JudgeRunning) | undefined;
  /** False leaves the fault tables out: quicker while choices are still changing. Left out: they are made. */
  readonly tables?: boolean;
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

/** A line of the device above those used inside one bank. */
export interface BankLine {
  /** As the data sheet names it: A17. */
  readonly line: string;
  /** Its weight in the bank number: 0 for the lowest bank line. */
  readonly bit: number;
  readonly pin: number;
  /** Pin of the socket it stands over; left out when it overhangs. */
  readonly socketPin?: number;
  readonly carries: "driven" | "high" | "low" | "open" | "supply" | "rail" | "overhangs" | "unknown";
  readonly role: "switched" | "fixed-high" | "fixed-low";
  readonly net?: string;
  readonly says: string;
}

/** Work on one pin of one device. */
export interface PinWork {
  readonly socket: string;
  readonly pin: number;
  readonly signal: string;
  readonly does: "lift-and-switch" | "wire-in-place" | "overhang-and-switch" | "lift-and-tie" | "tie" | "lift-and-wire" | "lift";
  readonly to?: string;
  /** Pin of the same socket that a wire is led to. */
  readonly reaches?: number;
  /** It is lifted for that, and does not hang out beyond the socket. */
  readonly lifted?: boolean;
  readonly says: string;
  /** Why: what the socket carries there and what would happen otherwise. */
  readonly why: string;
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
