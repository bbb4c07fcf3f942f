// What a cost must come to at least when some of its variables must all differ: an assignment of variables to values at least cost, found
// by shortest augmenting paths (Kuhn's Hungarian method, 1955; Edmonds, Karp, 1972). Its prices also say what each single value would add
// at least, so values that would push the cost over the bound go (Focacci, Lodi, Milano, "Cost-Based Domain Filtering", 1999).
// A plain sum sees each variable alone: ten cards that all like the one cheapest slot best cost ten times its price to the sum, and what
// the ten cheapest slots cost together to the assignment.
import type { Propagator } from "../engine/propagator.js";
import type { Store } from "../engine/store.js";

/** Variables that must differ; values in `except` may be shared. A weight for each variable (by position) and value. */
export interface AllDifferentGroup {
  readonly variables: readonly number[];
  readonly except: readonly number[];
  readonly weights: readonly (readonly number[])[];
}

/** A path of moves adds up a cost for every variable and as many prices; all of that must be held exactly. */
const mostOnAPath = 2 ** 50;

/** A sum of assignments and single variables, bounded above. */
export class MinimumCostAssignment implements Propagator {
  readonly priority = 1;
  readonly variables: readonly number[];
  /** Moved between searches. */
  max = Number.POSITIVE_INFINITY;
  private readonly parts: readonly Part[];

  /** Whether all prices stay exact: weights are whole numbers, and so are prices, which grow by at most the dearest step a variable. */
  static fits(groups: readonly AllDifferentGroup[]): boolean {
    return groups.every(({ variables, weights }) => {
      let most = 0;
      for (const row of weights) for (const weight of row) most = Math.max(most, Math.abs(weight));
      return 2 * most * (variables.length + 2) ** 2 <= mostOnAPath;
    });
  }

  /** No two of the `groups` have a variable in common; one that need not differ from any is alone in its own. */
  constructor(groups: readonly AllDifferentGroup[], sizes: readonly number[]) {
    this.parts = groups.map((r) => new Part(r, Math.max(1, ...r.variables.map((v) => sizes[v]!))));
    this.variables = groups.flatMap((r) => r.variables);
  }

  propagate(store: Store): boolean {
    if (this.max === Number.POSITIVE_INFINITY) return true;
    const least = this.least(store);
    if (!(least <= this.max)) return false;
    return this.parts.every((part) => part.filter(store, this.max - least));
  }

  /** The least the sum can come to; infinite when there is no assignment. */
  least(store: Store): number {
    let sum = 0;
    for (const part of this.parts) sum += part.solve(store);
    return sum;
  }

  /** The sum itself is a rule as well; nothing here is more than a consequence of the rules. */
  accepts(): boolean {
    return true;
  }
  couple(): boolean {
    return false;
  }
  residue(_: Store, __: number[], at: number): number {
    return at;
  }
  trait(): number {
    return 0;
  }
}

class Part {
  private readonly count: number;
  /** Places: one for each value, and the last for all values that may be shared. */
  private readonly places: number;
  private readonly room: Int32Array;
  private readonly placeOf: Int32Array;
  /** Cost of each variable at each place. */
  private readonly cost: Float64Array;
  private readonly price: Float64Array;
  private readonly at: Int32Array;
  private readonly used: Int32Array;
  private readonly far: Float64Array;
  private readonly mover: Int32Array;
  private readonly settled: Uint8Array;

  constructor(
    private readonly groups: AllDifferentGroup,
    widest: number,
  ) {
    this.count = groups.variables.length;
    this.places = widest + 1;
    this.room = new Int32Array(this.places).fill(1);
    this.room[widest] = this.count;
    this.placeOf = Int32Array.from({ length: widest }, (_, value) => value);
    for (const value of groups.except) if (value >= 0 && value < widest) this.placeOf[value] = widest;
    this.cost = new Float64Array(this.count * this.places);
    this.price = new Float64Array(this.places);
    this.at = new Int32Array(this.count).fill(-1);
    this.used = new Int32Array(this.places);
    this.far = new Float64Array(this.places);
    this.mover = new Int32Array(this.places);
    this.settled = new Uint8Array(this.places);
  }

  /** The least cost of an assignment; what is still right of the last one is kept. */
  solve(store: Store): number {
    this.read(store);
    if (!this.mend()) {
      this.price.fill(0);
      this.used.fill(0);
      this.at.fill(-1);
      for (let i = 0; i < this.count; i++) if (!this.place(i)) return Number.POSITIVE_INFINITY;
    }
    let sum = 0;
    for (let i = 0; i < this.count; i++) sum += this.cost[i * this.places + this.at[i]!]!;
    return sum;
  }

  /**
   * Keeps the variables that stand where they stand cheapest under the prices, and places the others anew. That is an optimum when every
   * place with a price is full; otherwise false.
   */
  private mend(): boolean {
    const { places, cost, price, at, used, room } = this;
    used.fill(0);
    for (let i = 0; i < this.count; i++) {
      if (at[i]! < 0) continue;
      const most = cost[i * places + at[i]!]! + price[at[i]!]!;
      let cheaper = !(most < Number.POSITIVE_INFINITY);
      for (let g = 0; g < places && !cheaper; g++) cheaper = cost[i * places + g]! + price[g]! < most;
      if (cheaper) at[i] = -1;
      else used[at[i]!]!++;
    }
    for (let i = 0; i < this.count; i++) if (at[i]! < 0 && !this.place(i)) return false;
    for (let g = 0; g < places; g++) if (price[g]! > 0 && used[g]! < room[g]!) return false;
    return true;
  }

  /** Removes the values that add more than `slack` to the least cost. */
  filter(store: Store, slack: number): boolean {
    const { groups, places, price, cost } = this;
    for (let i = 0; i < this.count; i++) {
      const variable = groups.variables[i]!;
      if (store.cells[variable] === 1) continue;
      const home = this.at[i]!;
      const most = cost[i * places + home]! + price[home]! + slack;
      for (let w = 0; w < store.length[variable]!; w++) {
        let gone = 0;
        for (let word = store.cells[store.start[variable]! + w]!; word !== 0; word &= word - 1) {
          const bit = word & -word;
          const value = (w << 5) + 31 - Math.clz32(bit);
          if (groups.weights[i]![value]! + price[this.placeOf[value]!]! > most) gone |= bit;
        }
        if (gone !== 0 && !store.keep(variable, w, ~gone)) return false;
      }
    }
    return true;
  }

  private read(store: Store): void {
    const { groups, places, cost } = this;
    cost.fill(Number.POSITIVE_INFINITY);
    for (let i = 0; i < this.count; i++) {
      const variable = groups.variables[i]!;
      const weights = groups.weights[i]!;
      for (let w = 0; w < store.length[variable]!; w++) {
        for (let word = store.cells[store.start[variable]! + w]!; word !== 0; word &= word - 1) {
          const value = (w << 5) + 31 - Math.clz32(word & -word);
          const cell = i * places + this.placeOf[value]!;
          if (weights[value]! < cost[cell]!) cost[cell] = weights[value]!;
        }
      }
    }
  }

  /** Finds a place for one more variable along a shortest path of moves; the places on it become dearer. */
  private place(newcomer: number): boolean {
    const { places, price, cost, far, mover, settled, at, used, room } = this;
    settled.fill(0);
    for (let g = 0; g < places; g++) {
      far[g] = cost[newcomer * places + g]! + price[g]!;
      mover[g] = newcomer;
    }
    for (;;) {
      let next = -1;
      for (let g = 0; g < places; g++) if (settled[g] === 0 && (next < 0 || far[g]! < far[next]!)) next = g;
      if (next < 0 || far[next] === Number.POSITIVE_INFINITY) return false;
      const reach = far[next]!;
      if (used[next]! < room[next]!) {
        for (let g = 0; g < places; g++) if (settled[g] === 1) price[g]! += reach - far[g]!;
        used[next]!++;
        this.shift(newcomer, next);
        return true;
      }
      settled[next] = 1;
      for (let j = 0; j < this.count; j++) {
        if (at[j] !== next) continue;
        const here = reach - cost[j * places + next]! - price[next]!;
        for (let g = 0; g < places; g++) {
          const there = here + cost[j * places + g]! + price[g]!;
          if (settled[g] === 1 || there >= far[g]!) continue;
          far[g] = there;
          mover[g] = j;
        }
      }
    }
  }

  /** Makes the moves of the path that ends in `place`. */
  private shift(newcomer: number, place: number): void {
    for (let to = place; ; ) {
      const i = this.mover[to]!;
      const from = this.at[i]!;
      this.at[i] = to;
      if (i === newcomer) return;
      to = from;
    }
  }
}
