// What a question and its answer are told in: facts with the records they rest on, conditions, and what the owner chose.
// Plain data, so that it goes on to pages, to the command line and over a worker boundary as it is.
import type { Kind } from "../records/index.js";

/** A pointer to a fact in a record. */
export interface Ref {
  readonly kind: Kind;
  readonly id: string;
  /** JSON pointer into the record; "" is the record itself. */
  readonly pointer: string;
}

/** One fact in trade words, with the records it rests on. The leaf of every refusal. */
export interface Fact {
  /** Name of the trade rule: "io-windows", "needs-firmware", "conflict". */
  readonly rule: string;
  readonly says: string;
  readonly refs: readonly Ref[];
}

/** Something of the records that the owner lacks: a card, a part, or one version of a firmware family. */
export interface ToGet {
  readonly kind: "card" | "part" | "firmware";
  readonly id: string;
  /** The version, of a firmware family. */
  readonly version?: string;
  /** How many, when more than one. */
  readonly count?: number;
}

/** Something that holds a combination back from plain "workable". */
export interface Condition {
  readonly kind: "remedy" | "loss" | "cosmetic" | "to-get";
  readonly says: string;
  /** The loss itself, and whether it is only suspected, when that is the condition. */
  readonly loss?: { readonly says: string; readonly suspected: boolean };
  /** What to get, when that is the condition. */
  readonly get?: ToGet;
  /** Ways to meet it, cheapest first. */
  readonly ways: readonly { readonly says: string; readonly costs: string; readonly part?: string | undefined }[];
  readonly refs: readonly Ref[];
}

/** Something the owner chose and could give up. */
export interface OwnersChoice {
  readonly id: string;
  readonly kind: "card" | "mode" | "revision" | "memory" | "firmware" | "slot" | "setting" | "card-revision";
  /** Name of the copy it is a choice of: a card, its slot, its revision, its settings. */
  readonly card?: string;
  /** The mode it is a choice of: a mode, its firmware. */
  readonly mode?: string;
  readonly says: string;
}

/** A card that is on, or off, in a mode. */
export interface OnInMode {
  /** Id of the mode. */
  readonly mode: string;
  /** Name of the copy. */
  readonly card: string;
  readonly on: boolean;
}
