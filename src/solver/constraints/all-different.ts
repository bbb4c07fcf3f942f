// All different, the cheap half: a value taken by one variable goes from the others; values that may be shared stay. flow.ts does the rest.

import type { Propagator } from "../engine/propagator.js";
import { maskOf } from "../engine/propagator.js";
import type { Store } from "../engine/store.js";
import type { Solution } from "../model/problem.js";

export class AllDifferent implements Propagator {
  readonly priority = 0;
  /** The values that may be shared. */
  readonly shared: Int32Array;
  private readonly done: Uint8Array;
  private readonly owner: Int32Array;

  constructor(
    readonly variables: readonly number[],
    except: readonly number[],
    widest: number,
  ) {
    this.shared = maskOf(widest, except);
    this.owner = new Int32Array(this.shared.length * 32);
    this.done = new Uint8Array(variables.length);
  }

  propagate(store: Store): boolean {
    const { variables, done } = this;
    done.fill(0);
    for (let again = true; again; ) {
      again = false;
      for (let i = 0; i < variables.length; i++) {
        if (done[i] === 1 || store.cells[variables[i]!] !== 1) continue;
        done[i] = 1;
        const value = store.first(variables[i]!);
        const [word, bit] = [value >>> 5, 1 << (value & 31)];
        if ((this.shared[word]! & bit) !== 0) continue;
        for (let j = 0; j < variables.length; j++) {
          const other = variables[j]!;
          if (j === i || word >= store.length[other]! || (store.cells[store.start[other]! + word]! & bit) === 0) continue;
          if (!store.keep(other, word, ~bit)) return false;
          again = true;
        }
      }
    }
    return true;
  }

  /** Two variables are tied while they could take the same value. */
  couple(store: Store, join: (one: number, two: number) => void): boolean {
    const { cells, start, length } = store;
    this.owner.fill(-1);
    let any = false;
    for (let i = 0; i < this.variables.length; i++) {
      const v = this.variables[i]!;
      if (cells[v] === 1) continue;
      for (let w = 0; w < length[v]!; w++) {
        for (let word = cells[start[v]! + w]! & ~this.shared[w]!; word !== 0; word &= word - 1) {
          const value = (w << 5) + 31 - Math.clz32(word & -word);
          if (this.owner[value] === -1) this.owner[value] = v;
          else {
            join(this.owner[value]!, v);
            any = true;
          }
        }
      }
    }
    return any;
  }

  accepts(solution: Solution): boolean {
    const taken = new Set<number>();
    for (const v of this.variables) {
      const value = solution[v]!;
      if (taken.has(value) && this.trait(v, value) === 0) return false;
      taken.add(value);
    }
    return true;
  }

  trait(_: number, value: number): number {
    return (this.shared[value >>> 5]! >>> (value & 31)) & 1;
  }

  /** Nothing: a taken value has left the other domains. */
  residue(_: Store, __: number[], at: number): number {
    return at;
  }
}
