// All different: no two variables take the same value, except values that may be shared.
import type { Propagator } from "../propagator.js";
import { maskOf } from "../propagator.js";
import type { Store } from "../store.js";

export class Different implements Propagator {
  readonly priority = 1;
  private readonly except: Int32Array;

  constructor(
    readonly variables: readonly number[],
    except: readonly number[],
    widest: number,
  ) {
    this.except = maskOf(widest, except);
  }

  propagate(store: Store): boolean {
    const done = new Set<number>();
    for (let again = true; again; ) {
      again = false;
      for (let i = 0; i < this.variables.length; i++) {
        const v = this.variables[i]!;
        if (done.has(i) || store.size(v) !== 1) continue;
        done.add(i);
        const value = store.first(v);
        if ((this.except[value >>> 5]! >>> (value & 31)) & 1) continue;
        again = true;
        for (let j = 0; j < this.variables.length; j++) {
          const other = this.variables[j]!;
          if (j !== i && value < store.sizes[other]! && store.has(other, value) && !store.remove(other, value)) return false;
        }
      }
    }
    return true;
  }
}
