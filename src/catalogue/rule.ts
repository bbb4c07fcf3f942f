// A house rule: something every record of the club keeps to, beyond its shape. One rule, one file in rules/.
import type { Finding, Kind } from "../records/index.js";
import type { Catalogue } from "./catalogue.js";
import type { Ref } from "./ref.js";

/** What a rule may know besides the records. The day is passed in; no rule looks at a clock. */
export interface Scene {
  readonly catalogue: Catalogue;
  /** YYYY-MM-DD; left out, rules about dates against today keep silent. */
  readonly today?: string | undefined;
  /** True for a record whose file could not be read: it is neither judged nor missed. */
  readonly failed: (kind: Kind, id: string) => boolean;
}

/** A finding before its places are looked up. */
export interface Draft {
  readonly says: string;
  readonly at: Ref;
  /** Point at the key, for what is missing beside it. */
  readonly on?: "key" | "value";
  readonly level?: Finding["level"];
  readonly related?: readonly { readonly says: string; readonly at: Ref }[];
  readonly expected?: string;
  readonly actual?: string;
  readonly hint?: string;
}

export interface Rule {
  readonly name: string;
  /** What records must be like, in one sentence. */
  readonly says: string;
  /** Why it matters to somebody who plans or builds a machine, in one sentence. */
  readonly why: string;
  /** How a record that breaks it is mended, in one sentence. */
  readonly mend: string;
  /** The kinds of record it judges. */
  readonly scope: readonly Kind[];
  readonly check: (scene: Scene) => Iterable<Draft>;
}

/** What one rule found. */
export interface Told {
  readonly rule: string;
  readonly draft: Draft;
}
