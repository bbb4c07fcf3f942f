// What planWiring takes and gives: options, and a plan, a word that none is needed, or the reasons why there is none.
import type { WiringPlan } from "./types.js";

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
  /** False leaves the fault tables out: quicker while choices are still changing. Left out: they are made. */
  readonly tables?: boolean;
}
