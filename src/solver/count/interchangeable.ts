// Interchangeable values: those that no rule still at work tells apart. Exchanging two of them everywhere turns solutions into solutions, so a component of the
// problem is known by what its values are like rather than by which they are, and of interchangeable values one is counted for all
// (interchangeability: Freuder, "Eliminating Interchangeable Values in Constraint Satisfaction Problems", AAAI 1991). A machine whose
// slots are of two kinds has as many states as there are ways to fill so many of each kind, not as there are sets of slots.
//
// A table sees in a value the values it still lets go with it. That two components with equal descriptions are interchangeable then takes a thought: what a
// value of x may go with is told by name, and the values of y so told of are those that y still has, apart from values nothing goes with.
//
// Variables bound by an all-different rule share their values: such a value is exchanged for all of them at once. So a value's class
// is the list, over the variables of its family that still have it, of what each rule sees in it there.

import { AllDifferent } from "../constraints/all-different.js";
import type { Engine } from "../engine/engine.js";
import type { Arc } from "../engine/pairs.js";
import type { Propagator } from "../engine/propagator.js";
import type { Component } from "./components.js";
import { Keys } from "./keys.js";

export class InterchangeableValues {
  /** Classes seen so far; a class is known by its slot. */
  private readonly seen = new Keys();
  private readonly family: Int32Array;
  /** The rules at work on each variable of the component described last, and what is seen of each value; longer than what is in use. */
  private readonly arcsOf: Arc[][];
  private readonly clausesOf: number[][];
  private readonly propagatorsOf: number[][];
  private readonly arcs: Int32Array;
  private readonly clauses: Int32Array;
  private readonly propagators: Int32Array;
  private readonly has: ReadonlySet<number>[];
  private readonly lists: number[][] = [];
  private readonly filled: Int32Array;
  /** The variables of each family in the component being described. */
  private readonly members: number[][];
  /** For each variable and value the class found by the last `describe`. */
  readonly of: Int32Array[];

  constructor(private readonly engine: Engine) {
    const { count, propagators, store } = engine;
    this.family = Int32Array.from({ length: count }, (_, v) => v);
    for (const rule of propagators) {
      if (!(rule instanceof AllDifferent) || rule.variables.length === 0) continue;
      const joined = new Set(rule.variables.map((v) => this.family[v]!));
      const first = Math.min(...joined);
      for (let v = 0; v < count; v++) if (joined.has(this.family[v]!)) this.family[v] = first;
    }
    this.members = store.sizes.map(() => []);
    this.arcsOf = store.sizes.map(() => []);
    this.clausesOf = store.sizes.map(() => []);
    this.propagatorsOf = store.sizes.map(() => []);
    this.arcs = new Int32Array(count);
    this.clauses = new Int32Array(count);
    this.propagators = new Int32Array(count);
    this.has = propagators.map((rule) => new Set(rule.variables));
    this.filled = new Int32Array(Math.max(1, ...store.sizes));
    this.of = store.sizes.map((size) => new Int32Array(size));
  }

  /** Writes to `key` from `at` on, for each family of the component's variables, the sorted classes of its values; gives where it ends. */
  describe(component: Component, key: number[], at: number): number {
    this.gather(component);
    const { family } = this;
    const { variables } = component;
    const { members } = this;
    for (let i = 0; i < variables.length; i++) members[family[variables[i]!]!]!.push(variables[i]!);
    let end = at;
    for (let i = 0; i < variables.length; i++) {
      const own = family[variables[i]!]!;
      if (members[own]!.length === 0) continue;
      key[end++] = -2;
      key[end++] = own;
      const start = end;
      end = this.valueClasses(members[own]!, key, end);
      members[own]!.length = 0;
      sort(key, start, end);
    }
    return end;
  }

  /** How many rules tie a variable of the component described last, and how many classes its values fall into. */
  ties(variable: number): number {
    return this.arcs[variable]! + this.clauses[variable]! + this.propagators[variable]!;
  }

  kinds(variable: number): number {
    const seen: number[] = [];
    for (const value of this.engine.store.values(variable)) {
      const like = this.of[variable]![value]!;
      if (!seen.includes(like)) seen.push(like);
    }
    return seen.length;
  }

  /** What a rule at work on a variable of the component described last sees in a value; rules are numbered up to `ties`. */
  sees(variable: number, rule: number, value: number): number {
    if (rule < this.arcs[variable]!) return this.partners(this.arcsOf[variable]![rule]!, value);
    const at = rule - this.arcs[variable]!;
    if (at >= this.clauses[variable]!) return this.rule(variable, rule)!.trait(variable, value);
    const { clauses } = this.engine;
    return clauses.sees(clauses.clauses[this.clausesOf[variable]![at]!]!, variable, value);
  }

  /** The propagator a rule is, if it is one. */
  rule(variable: number, rule: number): Propagator | undefined {
    const at = rule - this.arcs[variable]! - this.clauses[variable]!;
    return at < 0 ? undefined : this.engine.propagators[this.propagatorsOf[variable]![at]!];
  }

  /** The values of the other variable a table still lets go with this one, as one number (two wide sets in a million may share theirs). */
  private partners(arc: Arc, value: number): number {
    const { rows } = this.engine.pairs;
    const { cells, start, length } = this.engine.store;
    const width = length[arc.to]!;
    const row = arc.forward + value * width;
    let sum = 0;
    for (let w = 0; w < width; w++) sum = sum * 0x1_0000_0001 + ((rows[row + w]! & cells[start[arc.to]! + w]!) >>> 0);
    return sum;
  }

  private valueClasses(variables: readonly number[], key: number[], at: number): number {
    const { store } = this.engine;
    const { lists, filled } = this;
    const values: number[] = [];
    for (const v of variables) {
      const start = store.start[v]!;
      for (let w = 0; w < store.length[v]!; w++) {
        for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
          const value = (w << 5) + 31 - Math.clz32(word & -word);
          if (filled[value] === 0) values.push(value);
          lists[value] ??= [];
          filled[value] = this.see(v, value, lists[value], filled[value]!);
        }
      }
    }
    let end = at;
    for (const value of values) {
      const slot = this.seen.slot(lists[value]!, filled[value]!);
      filled[value] = 0;
      key[end++] = slot;
      for (const v of variables) if (value < this.of[v]!.length) this.of[v]![value] = slot;
    }
    return end;
  }

  /** Writes what each rule at work sees in one value of one variable; gives where it ends. */
  private see(variable: number, value: number, list: number[], at: number): number {
    const { clauses, propagators, pairs, store } = this.engine;
    const { cells, start, length } = store;
    let end = at;
    list[end++] = variable;
    for (let i = 0; i < this.arcs[variable]!; i++) {
      const arc = this.arcsOf[variable]![i]!;
      const width = length[arc.to]!;
      const row = arc.forward + value * width;
      for (let w = 0; w < width; w++) list[end++] = pairs.rows[row + w]! & cells[start[arc.to]! + w]!;
    }
    for (let i = 0; i < this.clauses[variable]!; i++) {
      list[end++] = clauses.sees(clauses.clauses[this.clausesOf[variable]![i]!]!, variable, value);
    }
    for (let i = 0; i < this.propagators[variable]!; i++) {
      list[end++] = propagators[this.propagatorsOf[variable]![i]!]!.trait(variable, value);
    }
    return end;
  }

  private gather(component: Component): void {
    const { arcs, clauses, propagators } = this;
    for (const v of component.variables) {
      arcs[v] = 0;
      clauses[v] = 0;
      propagators[v] = 0;
    }
    for (const arc of component.arcs) this.arcsOf[arc.from]![arcs[arc.from]!++] = arc;
    for (const c of component.clauses) for (const v of this.engine.clauses.clauses[c]!.variables) this.clausesOf[v]![clauses[v]!++] = c;
    for (const p of component.propagators) {
      for (const v of component.variables) if (this.has[p]!.has(v)) this.propagatorsOf[v]![propagators[v]!++] = p;
    }
    // Clauses reach variables of other components, too; those lists are emptied when their own component is described.
  }
}

function sort(list: number[], start: number, end: number): void {
  for (let i = start + 1; i < end; i++) {
    const item = list[i]!;
    let j = i - 1;
    while (j >= start && list[j]! > item) {
      list[j + 1] = list[j]!;
      j--;
    }
    list[j + 1] = item;
  }
}
