// From rules to what filters: rules over one pair of variables go into the pair tables, rules of literals become clauses, the rest
// propagators. A rule may have a selector and then counts only while that is on, so that one engine answers for many subsets of the
// same rules (reasons and repairs ask for hundreds).

import { AllDifferent } from "../constraints/all-different.js";
import { CardinalityFlow } from "../constraints/flow.js";
import { Linear } from "../constraints/linear.js";
import { CompactTable } from "../constraints/table.js";
import type { Constraint, Literal, Occupier, Term } from "../model/problem.js";
import type { Engine } from "./engine.js";
import { type Occupancy, occupancyOf, runsMeet } from "./occupancy.js";
import { maskOf } from "./propagator.js";
import { bitCount } from "./store.js";

/** A rule and its selector (activation literal); with selector -1 it always counts. */
export interface SelectedRule {
  readonly rule: Constraint;
  readonly selector: number;
}

export function compile(engine: Engine, rules: readonly SelectedRule[]): void {
  const posting = new Posting(engine);
  for (const { rule, selector } of rules) posting.post(rule, selector);
  cardinalityFlows(engine, rules);
  engine.pairs.finish();
}

class Posting {
  private readonly sizes: readonly number[];

  private selector = -1;
  /** A bitset for each literal of the clause at hand, and where in it each variable stands; -1 elsewhere. */
  private readonly scratch: Int32Array[] = [];
  private readonly position: Int32Array;
  private readonly widest: number;

  constructor(private readonly engine: Engine) {
    this.sizes = engine.store.sizes;
    this.position = new Int32Array(this.sizes.length).fill(-1);
    this.widest = engine.store.length.reduce((most, length) => Math.max(most, length), 1);
  }

  post(rule: Constraint, selector: number): void {
    this.selector = selector;
    this.pay(1);
    switch (rule.kind) {
      case "unary":
        this.clause([rule], false);
        break;
      case "clause":
        this.clause(rule.literals, false);
        break;
      case "forbid":
        this.clause(rule.literals, true);
        break;
      case "table":
        this.table(rule.variables, rule.rows);
        break;
      case "allDifferent":
        this.different(rule.variables, rule.except ?? []);
        break;
      case "cardinality":
        this.sum(
          rule.variables.map((variable) => ({ variable, weights: this.each(variable).map((v) => (rule.values.includes(v) ? 1 : 0)) })),
          rule.min,
          rule.max,
        );
        break;
      case "linear":
        this.sum(rule.terms, rule.min, rule.max);
        break;
      case "disjoint":
        this.disjoint(rule.occupiers);
        break;
      default:
        rule satisfies never;
    }
  }

  private pay(operations: number): void {
    this.engine.steps.chargeOrThrow(operations);
  }

  private each(variable: number): readonly number[] {
    return firstNumbers(this.sizes[variable]!);
  }

  /** At least one literal holds, or, `denied`, at least one does not: "never all of these" is a clause of the opposites. */
  private clause(literals: readonly Literal[], denied: boolean): void {
    const variables: number[] = [];
    const open = this.gather(literals, denied, variables);
    for (const variable of variables) this.position[variable] = -1;
    if (!open) return;
    const { engine, selector, scratch: masks } = this;
    if (variables.length === 1 && selector < 0) engine.store.keepAll(variables[0]!, masks[0]!);
    else if (variables.length === 2) {
      this.pay(this.sizes[variables[0]!]! * engine.store.length[variables[1]!]!);
      engine.pairs.either(variables[0]!, masks[0]!, variables[1]!, masks[1]!, selector);
    } else engine.clauses.add(variables, masks, selector);
  }

  /** Fills a bitset for each variable of a clause; false when the clause holds whatever they take. */
  private gather(literals: readonly Literal[], denied: boolean, variables: number[]): boolean {
    const { sizes, engine, scratch, position } = this;
    this.pay(literals.length);
    for (let i = 0; i < literals.length; i++) {
      const { variable, values } = literals[i]!;
      const size = sizes[variable]!;
      scratch[variables.length] ??= new Int32Array(this.widest);
      const mask = scratch[variables.length]!;
      const left = fill(mask, engine.store.length[variable]!, size, values, denied);
      if (left === size) return false;
      if (left === 0) continue;
      const before = position[variable]!;
      if (before < 0) position[variable] = variables.push(variable) - 1;
      else {
        const whole = scratch[before]!;
        for (let w = 0; w < engine.store.length[variable]!; w++) whole[w]! |= mask[w]!;
        if (sizeOf(whole, engine.store.length[variable]!) === size) return false;
      }
    }
    return true;
  }

  private table(variables: readonly number[], rows: readonly (readonly number[])[]): void {
    const { sizes } = this;
    this.pay(rows.length * variables.length);
    const distinct = [...new Set(variables)];
    const first = variables.map((v) => variables.indexOf(v));
    const good = rows.filter((row) => {
      for (let i = 0; i < first.length; i++) {
        const value = row[i]!;
        if (value !== row[first[i]!] || value < 0 || value >= sizes[variables[i]!]!) return false;
      }
      return true;
    });
    const columns = distinct.map((v) => variables.indexOf(v));
    this.pay(rows.length * variables.length * 4 + distinct.reduce((sum, v) => sum + sizes[v]!, 0));
    if (distinct.length > 2)
      this.engine.add(new CompactTable(distinct, once(good, columns, sizes, variables), this.engine.store), this.selector);
    else if (distinct.length === 2) {
      const [x, y] = distinct as [number, number];
      this.pay(3 * sizes[x]! * this.engine.store.length[y]!);
      this.engine.pairs.keepRows(x, y, good, columns as [number, number], this.selector);
    } else if (distinct.length === 1 || good.length === 0) {
      const literals = distinct.map((variable) => ({ variable, values: good.map((row) => row[0]!) }));
      this.clause(literals, false);
    }
  }

  private sum(terms: readonly Term[], min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): void {
    this.pay(terms.reduce((sum, { weights }) => sum + weights.length, 0));
    const sum = Linear.of(terms, this.sizes, min, max);
    if (sum.variables.length > 0) this.engine.add(sum, this.selector);
    else if (0 < min || 0 > max) this.clause([], false);
  }

  private different(variables: readonly number[], except: readonly number[]): void {
    const widest = variables.reduce((most, v) => Math.max(most, this.sizes[v]!), 1);
    this.engine.add(new AllDifferent(variables, except, widest), this.selector);
    const shared = maskOf(widest, except);
    this.flow(variables, (_, value) => (bit(shared, value) ? undefined : value));
  }

  /** At most one variable a place; values without a place are free. */
  private flow(variables: readonly number[], place: (i: number, value: number) => number | undefined): void {
    if (variables.length < 3) return;
    this.pay(variables.reduce((sum, v) => sum + this.sizes[v]!, 0));
    const index = new Map<number, number>();
    const free = -1;
    const of = variables.map((v, i) => {
      const groups = new Array<number>(this.sizes[v]!);
      for (let value = 0; value < groups.length; value++) {
        const at = place(i, value);
        if (at === undefined) groups[value] = free;
        else {
          if (!index.has(at)) index.set(at, index.size);
          groups[value] = index.get(at)!;
        }
      }
      return groups;
    });
    if (index.size === 0) return;
    for (const groups of of) for (let value = 0; value < groups.length; value++) if (groups[value] === free) groups[value] = index.size;
    const most = new Array<number>(index.size + 1).fill(1);
    most[index.size] = variables.length;
    this.pay(most.length * (most.length >>> 5));
    this.engine.add(new CardinalityFlow(variables, { of, least: new Array<number>(most.length).fill(0), most }), this.selector);
  }

  /** Pairs, and an assignment that follows from them: windows that do not overlap start, and end, in different places. */
  private disjoint(occupiers: readonly Occupier[]): void {
    const taken = occupiers.map(({ variable, windows }) => occupancyOf(this.sizes[variable]!, windows));
    this.pay(taken.reduce((sum, { runs }) => sum + runs.reduce((all, { length }) => all + length, 1), 0));
    for (const [i, j] of this.meeting(taken)) this.apart(occupiers[i]!.variable, taken[i]!, occupiers[j]!.variable, taken[j]!);
    const place = (side: "from" | "to") => (i: number, value: number) => {
      const at = taken[i]![side][value]!;
      return Number.isFinite(at) ? at : undefined;
    };
    const variables = occupiers.map((o) => o.variable);
    this.flow(variables, place("from"));
    if (taken.some(({ from, to }) => from.some((at, value) => Number.isFinite(at) && at !== to[value]))) this.flow(variables, place("to"));
  }

  /** The pairs whose windows, taken over all their values, reach into one another; found going along the starts. */
  private meeting(taken: readonly Occupancy[]): (readonly [number, number])[] {
    const order = taken.map((_, i) => i).filter((i) => Number.isFinite(taken[i]!.start));
    order.sort((i, j) => taken[i]!.start - taken[j]!.start);
    const out: (readonly [number, number])[] = [];
    for (const [at, i] of order.entries()) {
      for (let k = at + 1; k < order.length && taken[order[k]!]!.start <= taken[i]!.end; k++) {
        const j = order[k]!;
        out.push(i < j ? [i, j] : [j, i]);
        this.pay(1);
      }
    }
    return out.sort(([i, j], [k, l]) => i - k || j - l);
  }

  private apart(x: number, one: Occupancy, y: number, two: Occupancy): void {
    const clear = new Int32Array(this.engine.store.length[y]!);
    for (let a = 0; a < this.sizes[x]!; a++) {
      let clash = false;
      this.pay(this.sizes[y]!);
      for (let b = 0; b < this.sizes[y]!; b++) {
        if (two.from[b]! > one.to[a]! || two.to[b]! < one.from[a]!) continue;
        this.pay(one.runs[a]!.length + two.runs[b]!.length);
        if (!runsMeet(one.runs[a]!, two.runs[b]!)) continue;
        if (!clash) clear.fill(-1);
        clear[b >>> 5]! &= ~(1 << (b & 31));
        clash = true;
      }
      if (!clash) continue;
      if (x !== y) this.engine.pairs.restrict(x, a, y, clear, this.selector);
      else if (!bit(clear, a)) this.clause([{ variable: x, values: [a] }], true);
    }
  }
}

/** The rows in some columns, each once. */
function once(rows: readonly (readonly number[])[], columns: readonly number[], sizes: readonly number[], variables: readonly number[]) {
  const known = new Set<number | string>();
  const small = columns.reduce((product, c) => product * sizes[variables[c]!]!, 1) < Number.MAX_SAFE_INTEGER;
  const out: number[][] = [];
  for (const row of rows) {
    const part = columns.map((c) => row[c]!);
    const key = small ? columns.reduce((sum, c) => sum * sizes[variables[c]!]! + row[c]!, 0) : part.join();
    if (known.has(key)) continue;
    known.add(key);
    out.push(part);
  }
  return out;
}

/** 0..n-1, made once for each n: setting up reads it for every variable of every rule. */
function firstNumbers(n: number): readonly number[] {
  numbers[n] ??= Array.from({ length: n }, (_, i) => i);
  return numbers[n];
}
const numbers: number[][] = [];

const bit = (mask: Int32Array, value: number): boolean => ((mask[value >>> 5]! >>> (value & 31)) & 1) === 1;

function sizeOf(mask: Int32Array, width: number): number {
  let size = 0;
  for (let w = 0; w < width; w++) size += bitCount(mask[w]!);
  return size;
}

/** Makes a mask of the values, or of all others, and gives how many it has. */
function fill(mask: Int32Array, width: number, size: number, values: readonly number[], others: boolean): number {
  mask.fill(0);
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value >= 0 && value < size) mask[value >>> 5]! |= 1 << (value & 31);
  }
  if (others) for (let w = 0; w < width; w++) mask[w] = ~mask[w]! & (w < size >>> 5 ? -1 : (1 << (size & 31)) - 1);
  return sizeOf(mask, width);
}

/** Counting rules over the same variables and different values, seen together: each is a group of an assignment. */
function cardinalityFlows(engine: Engine, rules: readonly SelectedRule[]): void {
  const families = new Map<
    string,
    { variables: readonly number[]; selector: number; parts: { values: readonly number[]; min: number; max: number }[] }
  >();
  for (const { rule, selector } of rules) {
    if (rule.kind !== "cardinality") continue;
    const variables = [...rule.variables].sort((a, b) => a - b);
    const key = `${selector}:${variables}`;
    const family = families.get(key) ?? { variables, selector, parts: [] };
    const part = { values: rule.values, min: rule.min ?? 0, max: rule.max ?? variables.length };
    const taken = new Set(family.parts.flatMap((p) => p.values));
    if (!part.values.some((v) => taken.has(v)) && part.max >= Math.max(0, part.min)) family.parts.push(part);
    families.set(key, family);
  }
  for (const { variables, selector, parts } of families.values()) {
    if (parts.length < 2) continue;
    const groupOf = (value: number) => {
      const part = parts.findIndex((p) => p.values.includes(value));
      return part < 0 ? parts.length : part;
    };
    const groups = {
      of: variables.map((v) => Array.from({ length: engine.store.sizes[v]! }, (_, value) => groupOf(value))),
      least: [...parts.map((p) => Math.max(0, p.min)), 0],
      most: [...parts.map((p) => p.max), variables.length],
    };
    engine.add(new CardinalityFlow(variables, groups), selector);
  }
}
