// What planWiring takes and gives: options, and a plan, a word that none is needed, or the reasons why there is none.
import type { WayOut, WiringReason } from "../switching/index.js";
import type { WiringPlan } from "./types.js";

export type { WayOut, WiringOptions, WiringReason, WiringReasonCode } from "../switching/index.js";

export type Wiring =
  | { readonly kind: "wiring"; readonly plan: WiringPlan }
  | { readonly kind: "not-needed"; readonly says: string }
  | {
      readonly kind: "refused";
      readonly says: string;
      readonly reasons: readonly WiringReason[];
      readonly waysOut: readonly WayOut[];
    };
