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
// The walk goes by size, so reasons come shortest first.
import { type Bits, bitsOf, has, meets, membersOf, noBits, onlyShared, put, within } from "./bits.js";
import { quickXplain } from "./quick.js";
import { Spent, type Subsets } from "./subsets.js";

export interface Duals {
  readonly reasons: readonly (readonly number[])[];
  readonly repairs: readonly (readonly number[])[];
  readonly complete: boolean;
}

/** With a limit: the so many shortest reasons, and not complete if any may be left. */
export function dualize(subsets: Subsets, limit = Number.POSITIVE_INFINITY): Duals {
  const duality = new Duality(subsets, limit);
  let complete = false;
  try {
    complete = duality.walk();
  } catch (error) {
    if (!(error instanceof Spent)) throw error;
    duality.addEarly();
  }
  return { reasons: duality.reasons.map(membersOf), repairs: duality.repairs.map(membersOf), complete };
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
  private readonly bySize: Branch[][] = [];

  constructor(
    private readonly subsets: Subsets,
    private readonly limit: number,
  ) {
    this.holding = Array.from({ length: subsets.count }, () => []);
  }

  /** True when all is found, false when the limit was met. */
  walk(): boolean {
    this.findEarly();
    if (!this.visit(noBits(this.subsets.count), 0, 0)) return false;
    for (let size = 0; size < this.bySize.length; size++) {
      const branches = this.bySize[size] ?? [];
      for (let branch = branches.pop(); branch; branch = branches.pop()) {
        for (const member of membersOf(branch.more)) {
          const set = branch.set.slice();
          put(set, member);
          if (!this.visit(set, branch.next + 1, size + 1)) return false;
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
  private visit(set: Bits, next: number, size: number): boolean {
    const { repairs, subsets } = this;
    let at = next;
    while (at < repairs.length && meets(repairs[at]!, set)) at++;
    if (at < repairs.length) {
      if (!subsets.purse.spend()) throw new Spent();
    } else {
      if (this.reasons.length >= this.limit) return false;
      const keeps = this.early.some((reason) => within(reason, set)) ? undefined : subsets.witness(set);
      if (!keeps) {
        this.reasons.push(set);
        this.index(set);
        return true;
      }
      repairs.push(this.grow(keeps));
    }
    const more = this.joining(set, at);
    if (more) {
      this.bySize[size] ??= [];
      this.bySize[size].push({ set, next: at, more });
    }
    return true;
  }

  private index(reason: Bits): void {
    for (const member of membersOf(reason)) this.holding[member]!.push(reason);
  }

  /** What a largest standing superset of a standing set leaves out. */
  private grow(start: Bits): Bits {
    const out = noBits(this.subsets.count);
    let keeps = start;
    for (let g = 0; g < this.subsets.count; g++) {
      if (has(keeps, g)) continue;
      const more = keeps.slice();
      put(more, g);
      const larger = this.holding[g]!.some((reason) => within(reason, more)) ? undefined : this.subsets.witness(more);
      if (larger) keeps = larger;
      else put(out, g);
    }
    return out;
  }

  /**
   * The members of a missed repair that leave all others of the set needed: for each of those, some repair before it is met by nothing
   * else, and not by the one that joins either.
   */
  private joining(set: Bits, at: number): Bits | undefined {
    const { repairs } = this;
    const missed = repairs[at]!;
    const barred = new Map(membersOf(set).map((member) => [member, missed.slice()]));
    const empty = noBits(this.subsets.count);
    let open = barred.size;
    for (let i = 0; i < at && open > 0; i++) {
      const member = onlyShared(repairs[i]!, set);
      if (member < 0) continue;
      const bars = barred.get(member)!;
      if (!meets(bars, bars)) continue;
      for (let w = 0; w < bars.length; w++) bars[w]! &= repairs[i]![w]!;
      if (!meets(bars, bars)) open--;
    }
    const more = missed.slice();
    for (const bars of barred.values()) for (let w = 0; w < more.length; w++) more[w]! &= ~bars[w]!;
    return within(more, empty) ? undefined : more;
  }
}
