// All reasons and all repairs from one run, by their duality: the reasons are the minimal sets that meet every repair (Reiter, "A Theory of
// Diagnosis from First Principles", 1987; Stern, Kalech and others, "Exploring the Duality in Conflict-Directed Model-Based Diagnosis",
// 2012). While some repairs are known, each minimal set that meets them is put to the engine (Gunopulos and others, "Discovering All Most
// Specific Sentences", 2003):
// - It cannot stand: a reason, and minimal without further proof, since without any one of its members it misses a known repair.
// - It stands: a solution that keeps it is grown to a largest one, and what that gives up is a new repair, which the set does not meet.
// The minimal sets are a tree (Kavvadias, Stavropoulos, "An Efficient Algorithm for the Transversal Hypergraph Generation", 2005): a set
// that meets the first repairs minimally and misses the next one has as children the sets with one more member of it that still meet all of
// these minimally. No set comes up twice, and repairs may join at the end while the tree is walked. When nothing is left to walk, every
// set that stands is inside the complement of a known repair (or it would meet them all and hold a reason): both lists are complete.
// The walk goes by size, so reasons come shortest first; what is too hard for a share of the budget waits until the rest is done.

import { type Bits, bitsOf, has, meets, membersOf, noBits, put, within } from "../engine/bits.js";
import { BudgetExhausted } from "../model/step-budget.js";
import { quickXplain } from "./quick.js";
import type { Subsets } from "./subsets.js";

export interface Duals {
  readonly reasons: readonly (readonly number[])[];
  readonly repairs: readonly (readonly number[])[];
  readonly complete: boolean;
}

/** Steps a question may take before it is put off; ten times as many when its turn comes again. */
const firstShare = 400;

/** With a limit: the so many shortest reasons, and not complete if any may be left. */
export function dualize(subsets: Subsets, limit = Number.POSITIVE_INFINITY, share = firstShare): Duals {
  // A limit asks for the shortest first, so there nothing may be put off.
  const duality = new Duality(subsets, limit, limit === Number.POSITIVE_INFINITY ? share : Number.POSITIVE_INFINITY);
  let complete = false;
  try {
    complete = duality.walk();
  } catch (error) {
    if (!(error instanceof BudgetExhausted)) throw error;
    duality.addEarly();
  }
  return { reasons: duality.reasons.map(membersOf), repairs: duality.proven().map(membersOf), complete };
}

/** A set that meets the repairs before `next` minimally and misses that one; `more` are the members of it that may join. */
interface Branch {
  readonly set: Bits;
  readonly next: number;
  readonly more: Bits;
}

class Duality {
  readonly reasons: Bits[] = [];
  readonly repairs: Bits[] = [];
  /** A few reasons found at once, so that a run cut short has some to show. */
  private readonly early: Bits[] = [];
  /** The known reasons each member is in. */
  private readonly holding: Bits[][];
  /** The repairs once more, one after another, for the one loop that goes over all of them. */
  private flat = new Int32Array(1 << 10);
  private readonly position: Int32Array;
  private readonly bySize: Branch[][] = [];
  /** Sets too hard for their share of the budget: one hard question should not keep the easy ones from being answered. */
  private late: { readonly set: Bits; readonly next: number; readonly size: number }[] = [];
  /** The repairs that may not be minimal: for the hard members it was not found out whether they could stay. */
  private readonly doubts = new Map<Bits, readonly number[]>();

  constructor(
    private readonly subsets: Subsets,
    private readonly limit: number,
    private share: number,
  ) {
    this.position = new Int32Array(subsets.count);
    this.holding = Array.from({ length: subsets.count }, () => []);
  }

  /** True when all is found, false when the limit was met. */
  walk(): boolean {
    const nothing = noBits(this.subsets.count);
    this.findEarly();
    if (!this.visit(nothing, nothing, 0, 0) || !this.descend()) return false;
    while (this.late.length > 0) {
      const { late } = this;
      this.late = [];
      this.share *= 10;
      for (const { set, next, size } of late) if (!this.visit(set, nothing, next, size)) return false;
      if (!this.descend()) return false;
    }
    return true;
  }

  private descend(): boolean {
    for (let size = 0; size < this.bySize.length; size++) {
      const branches = this.bySize[size] ?? [];
      for (let branch = branches.pop(); branch; branch = branches.pop()) {
        for (const member of membersOf(branch.more)) {
          const set = branch.set.slice();
          put(set, member);
          if (!this.visit(set, branch.set, branch.next + 1, size + 1)) return false;
        }
      }
    }
    return true;
  }

  /** Reasons without common members, until what is left can stand. */
  private findEarly(): void {
    let left = Array.from({ length: this.subsets.count }, (_, g) => g);
    while (left.length > 0 && !this.subsets.stands(left)) {
      const reason = quickXplain(this.subsets, left);
      if (reason.length === 0) return;
      this.early.push(bitsOf(this.subsets.count, reason));
      this.index(this.early.at(-1)!);
      left = left.filter((g) => !reason.includes(g));
    }
  }

  addEarly(): void {
    for (const reason of this.early) if (!this.reasons.some((known) => within(known, reason))) this.reasons.push(reason);
  }

  /** Judges a set that meets the repairs before `next` minimally; false when the limit forbids. */
  private visit(set: Bits, base: Bits, next: number, size: number): boolean {
    const { repairs, subsets } = this;
    let at = next;
    while (at < repairs.length && meets(repairs[at]!, set)) at++;
    if (at < repairs.length) {
      if (!subsets.steps.spend()) throw new BudgetExhausted();
    } else {
      if (this.reasons.length >= this.limit) return false;
      const keeps = this.early.some((reason) => within(reason, set)) ? undefined : subsets.witness(set, base, this.share);
      if (keeps === "exhausted") {
        this.late.push({ set, next: at, size });
        return true;
      }
      if (!keeps) {
        this.reasons.push(set);
        this.index(set);
        return true;
      }
      this.addRepair(this.grow(keeps));
    }
    const more = this.joining(set, at);
    if (more) {
      this.bySize[size] ??= [];
      this.bySize[size].push({ set, next: at, more });
    }
    return true;
  }

  /** The repairs known to be minimal: what was in doubt is settled by the reasons found since. */
  proven(): Bits[] {
    return this.repairs.filter((repair) =>
      (this.doubts.get(repair) ?? []).every((member) =>
        this.holding[member]!.some((reason) =>
          reason.every((word, w) => (word & repair[w]!) === (w === member >>> 5 ? 1 << (member & 31) : 0)),
        ),
      ),
    );
  }

  private addRepair(repair: Bits): void {
    const at = this.repairs.length * repair.length;
    if (at + repair.length > this.flat.length) {
      const longer = new Int32Array(this.flat.length * 2 + repair.length);
      longer.set(this.flat);
      this.flat = longer;
    }
    this.flat.set(repair, at);
    this.repairs.push(repair);
  }

  private index(reason: Bits): void {
    for (const member of membersOf(reason)) this.holding[member]!.push(reason);
  }

  /** What a largest standing superset of a standing set leaves out, as far as the share shows. */
  private grow(start: Bits): Bits {
    const out = noBits(this.subsets.count);
    const doubtful: number[] = [];
    let keeps = start;
    for (let g = 0; g < this.subsets.count; g++) {
      if (has(keeps, g)) continue;
      const more = keeps.slice();
      put(more, g);
      const larger = this.holding[g]!.some((reason) => within(reason, more)) ? undefined : this.subsets.witness(more, keeps, this.share);
      if (larger && larger !== "exhausted") keeps = larger;
      else put(out, g);
      if (larger === "exhausted") doubtful.push(g);
    }
    if (doubtful.length > 0) this.doubts.set(out, doubtful);
    return out;
  }

  /**
   * The members of a missed repair that leave all others of the set needed: for each of those, some repair before it is met by nothing
   * else, and not by the one that joins either.
   */
  private joining(set: Bits, at: number): Bits | undefined {
    const { flat } = this;
    const members = membersOf(set);
    const missed = this.repairs[at]!;
    const words = missed.length;
    const bars = new Int32Array(members.length * words);
    for (let p = 0; p < members.length; p++) {
      bars.set(missed, p * words);
      this.position[members[p]!] = p * words;
    }
    let open = members.length;
    for (let i = 0; i < at && open > 0; i++) {
      const repair = i * words;
      let only = -1;
      for (let w = 0; w < words && only > -2; w++) {
        const word = flat[repair + w]! & set[w]!;
        if (word !== 0) only = only >= 0 || (word & (word - 1)) !== 0 ? -2 : (w << 5) + 31 - Math.clz32(word);
      }
      if (only < 0) continue;
      const bar = this.position[only]!;
      let [before, after] = [0, 0];
      for (let w = 0; w < words; w++) {
        before |= bars[bar + w]!;
        bars[bar + w]! &= flat[repair + w]!;
        after |= bars[bar + w]!;
      }
      if (before !== 0 && after === 0) open--;
    }
    const more = missed.slice();
    for (let i = 0; i < bars.length; i++) more[i % words]! &= ~bars[i]!;
    return meets(more, more) ? more : undefined;
  }
}
