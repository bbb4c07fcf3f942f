// Assignment by flow: every variable goes to one group of values, every group takes between `least` and `most` variables.
// All-different is the case of one value a group and at most one variable each; values that may be shared are one group without limit.
// A feasible assignment is kept by augmenting paths, and a value stays only while some feasible assignment uses it: a variable can move
// from its group to another exactly when both lie in one strongly connected component of the graph of moves
// (Régin, "A Filtering Algorithm for Constraints of Difference in CSPs", 1994; "Generalized Arc Consistency for Global Cardinality
// Constraint", 1996). Without it a machine with one slot too few is refused only after trying every order of cards.

import type { Propagator } from "../engine/propagator.js";
import type { Store } from "../engine/store.js";
import { StrongComponents } from "../engine/strong-components.js";

export interface Groups {
  /** For each variable (by position) and value the group it belongs to. */
  readonly of: readonly (readonly number[])[];
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** How many dead ends the rule finds by itself before it is filtered as well. */
const patience = 4;

export class CardinalityFlow implements Propagator {
  readonly priority = 1;
  private failures = 0;
  /** The value each variable has in the kept assignment, -1 for none. */
  private readonly chosen: Int32Array;
  /** The variables in each group. */
  private readonly members: number[][];
  /** A path of moves: `via[g]` comes into group g out of group `from[g]`. */
  private readonly from: Int32Array;
  private readonly via: Int32Array;
  private readonly moves: StrongComponents;

  constructor(
    readonly variables: readonly number[],
    private readonly groups: Groups,
  ) {
    this.chosen = new Int32Array(variables.length).fill(-1);
    this.members = groups.most.map(() => []);
    this.from = new Int32Array(groups.most.length);
    this.via = new Int32Array(groups.most.length);
    this.moves = new StrongComponents(groups.most.length + 1);
  }

  /** Filtering costs most of the time and mostly removes nothing; so it waits until the rule has shown itself to be tight. */
  propagate(store: Store): boolean {
    if (!this.assign(store)) {
      this.failures++;
      return false;
    }
    return this.failures < patience || this.filter(store);
  }

  /** Never alone: the rules it was made from are there as well. */
  couple(): boolean {
    return false;
  }

  accepts(): boolean {
    return true;
  }

  trait(): number {
    return 0;
  }

  residue(_: Store, __: number[], at: number): number {
    return at;
  }

  /** Repairs the kept assignment after domains changed; one that suited a smaller domain suits the larger one after stepping back. */
  private assign(store: Store): boolean {
    const { variables, chosen, members } = this;
    const { of, least } = this.groups;
    for (let i = 0; i < variables.length; i++) {
      const value = chosen[i]!;
      if (value < 0 || store.has(variables[i]!, value)) continue;
      chosen[i] = -1;
      drop(members[of[i]![value]!]!, i);
    }
    for (let i = 0; i < variables.length; i++) if (chosen[i]! < 0 && !this.place(store, i)) return false;
    for (let g = 0; g < least.length; g++) while (members[g]!.length < least[g]!) if (!this.raise(store, g)) return false;
    return true;
  }

  /** Finds a place for one more variable, moving others along a shortest path. */
  private place(store: Store, newcomer: number): boolean {
    this.from.fill(-2);
    const queue: number[] = [];
    let free = this.reach(store, newcomer, -1, queue);
    for (let at = 0; free < 0 && at < queue.length; at++) {
      for (const i of this.members[queue[at]!]!) {
        free = this.reach(store, i, queue[at]!, queue);
        if (free >= 0) break;
      }
    }
    if (free >= 0) this.shift(store, free);
    return free >= 0;
  }

  /** Brings one more variable into a group that has too few, out of a group that can spare one. */
  private raise(store: Store, needy: number): boolean {
    for (let spare = 0; spare < this.members.length; spare++) {
      if (this.members[spare]!.length <= this.groups.least[spare]!) continue;
      this.from.fill(-2);
      this.from[spare] = -1;
      this.via[spare] = -1;
      const queue = [spare];
      for (let at = 0; at < queue.length && this.from[needy] === -2; at++) {
        for (const i of this.members[queue[at]!]!) this.reach(store, i, queue[at]!, queue);
      }
      if (this.from[needy] === -2) continue;
      this.shift(store, needy);
      return true;
    }
    return false;
  }

  /** Marks the groups a variable could move to; gives the first that has room, else -1. */
  private reach(store: Store, i: number, origin: number, queue: number[]): number {
    const variable = this.variables[i]!;
    const start = store.start[variable]!;
    for (let w = 0; w < store.length[variable]!; w++) {
      for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
        const group = this.groups.of[i]![(w << 5) + 31 - Math.clz32(word & -word)]!;
        if (this.from[group] !== -2) continue;
        this.from[group] = origin;
        this.via[group] = i;
        queue.push(group);
        if (this.members[group]!.length < this.groups.most[group]!) return group;
      }
    }
    return -1;
  }

  /** Makes the moves of the path that ends in `last`, from the end backwards. */
  private shift(store: Store, last: number): void {
    for (let group = last; group >= 0 && this.via[group]! >= 0; ) {
      const i = this.via[group]!;
      const origin = this.from[group]!;
      if (origin >= 0) drop(this.members[origin]!, i);
      this.members[group]!.push(i);
      this.chosen[i] = store.values(this.variables[i]!).find((value) => this.groups.of[i]![value] === group)!;
      group = origin;
    }
  }

  /** Removes the values no feasible assignment uses. */
  private filter(store: Store): boolean {
    const { of, least, most } = this.groups;
    const { moves } = this;
    const open = most.length;
    moves.clear();
    for (let g = 0; g < open; g++) {
      const members = this.members[g]!;
      if (members.length < most[g]!) moves.link(g, open);
      if (members.length > least[g]!) moves.link(open, g);
      for (let m = 0; m < members.length; m++) {
        const i = members[m]!;
        const variable = this.variables[i]!;
        if (store.cells[variable] === 1) continue;
        for (let w = 0; w < store.length[variable]!; w++) {
          for (let word = store.cells[store.start[variable]! + w]!; word !== 0; word &= word - 1) {
            moves.link(g, of[i]![(w << 5) + 31 - Math.clz32(word & -word)]!);
          }
        }
      }
    }
    moves.find();
    for (let i = 0; i < this.variables.length; i++) {
      const variable = this.variables[i]!;
      if (store.cells[variable] === 1) continue;
      const home = moves.of[of[i]![this.chosen[i]!]!]!;
      for (let w = 0; w < store.length[variable]!; w++) {
        let gone = 0;
        for (let word = store.cells[store.start[variable]! + w]!; word !== 0; word &= word - 1) {
          const bit = word & -word;
          if (moves.of[of[i]![(w << 5) + 31 - Math.clz32(bit)]!] !== home) gone |= bit;
        }
        if (gone !== 0 && !store.keep(variable, w, ~gone)) return false;
      }
    }
    return true;
  }
}

function drop(list: number[], item: number): void {
  list[list.indexOf(item)] = list[list.length - 1]!;
  list.pop();
}
