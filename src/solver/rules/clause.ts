// A clause: at least one of its literals holds. Each literal is a variable and a bitset of values.
import type { Propagator } from "../propagator.js";
import type { Store } from "../store.js";

export class Clause implements Propagator {
  readonly priority = 0;

  constructor(
    readonly variables: readonly number[],
    private readonly masks: readonly Int32Array[],
  ) {}

  propagate(store: Store): boolean {
    let open = -1;
    for (let i = 0; i < this.variables.length; i++) {
      const variable = this.variables[i]!;
      const start = store.start[variable]!;
      const mask = this.masks[i]!;
      for (let w = 0; w < mask.length; w++) {
        if ((store.cells[start + w]! & mask[w]!) !== 0) {
          if (open >= 0) return true;
          open = i;
          break;
        }
      }
    }
    return open >= 0 && store.keepAll(this.variables[open]!, this.masks[open]!);
  }
}
