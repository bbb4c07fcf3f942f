// From rules to what filters: rules over one pair of variables go into the pair tables, rules of literals become clauses, the rest
// propagators. Rules may be guarded: a guarded rule counts only while its guard is on, so that one engine answers for many subsets of the
// same rules (reasons and repairs ask for hundreds).

import { Different } from "../constraints/different.js";
import { Flow } from "../constraints/flow.js";
import { Linear } from "../constraints/linear.js";
import { Table } from "../constraints/table.js";
import { overlap } from "../model/holds.js";
import type { Literal, Occupier, Rule, Term } from "../model/problem.js";
import type { Engine } from "./engine.js";
import { maskOf } from "./propagator.js";
import { bitCount } from "./store.js";

/** A rule and the guard it hangs on; guard -1 always counts. */
export interface Guarded {
  readonly rule: Rule;
  readonly guard: number;
}

export function compile(engine: Engine, rules: readonly Guarded[]): void {
  const posting = new Posting(engine);
  for (const { rule, guard } of rules) posting.post(rule, guard);
  cardinalityFlows(engine, rules);
  engine.pairs.finish();
}

class Posting {
  private readonly sizes: readonly number[];

  private guard = -1;
  /** A bitset for each literal of the clause at hand. */
  private readonly scratch: Int32Array[] = [];

  constructor(private readonly engine: Engine) {
    this.sizes = engine.store.sizes;
  }

  post(rule: Rule, guard: number): void {
    this.guard = guard;
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

  private each(variable: number): readonly number[] {
    return firstNumbers(this.sizes[variable]!);
  }

  /** At least one literal holds, or, `denied`, at least one does not: "never all of these" is a clause of the opposites. */
  private clause(literals: readonly Literal[], denied: boolean): void {
    const { sizes, engine, guard, scratch } = this;
    const variables: number[] = [];
    for (let i = 0; i < literals.length; i++) {
      const { variable, values } = literals[i]!;
      const size = sizes[variable]!;
      scratch[variables.length] ??= new Int32Array(Math.max(...engine.store.length));
      const mask = scratch[variables.length]!;
      const left = fill(mask, engine.store.length[variable]!, size, values, denied);
      if (left === size) return;
      if (left === 0) continue;
      const before = variables.indexOf(variable);
      if (before < 0) variables.push(variable);
      else {
        const whole = scratch[before]!;
        for (let w = 0; w < engine.store.length[variable]!; w++) whole[w]! |= mask[w]!;
        if (sizeOf(whole, engine.store.length[variable]!) === size) return;
      }
    }
    const masks = scratch;
    if (variables.length === 1 && guard < 0) engine.store.keepAll(variables[0]!, masks[0]!);
    else if (variables.length === 2) engine.pairs.either(variables[0]!, masks[0]!, variables[1]!, masks[1]!, guard);
    else engine.clauses.add(variables, masks, guard);
  }

  private table(variables: readonly number[], rows: readonly (readonly number[])[]): void {
    const { sizes } = this;
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
    if (distinct.length > 2) this.engine.add(new Table(distinct, once(good, columns, sizes, variables), this.engine.store), this.guard);
    else if (distinct.length === 2) {
      const [x, y] = distinct as [number, number];
      const goes = this.each(x).map(() => maskOf(sizes[y]!, []));
      for (const row of good) goes[row[columns[0]!]!]![row[columns[1]!]! >>> 5]! |= 1 << (row[columns[1]!]! & 31);
      for (const a of this.each(x)) this.engine.pairs.restrict(x, a, y, goes[a]!, this.guard);
    } else if (distinct.length === 1 || good.length === 0) {
      const literals = distinct.map((variable) => ({ variable, values: good.map((row) => row[0]!) }));
      this.clause(literals, false);
    }
  }

  private sum(terms: readonly Term[], min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): void {
    const sum = Linear.of(terms, this.sizes, min, max);
    if (sum.variables.length > 0) this.engine.add(sum, this.guard);
    else if (0 < min || 0 > max) this.clause([], false);
  }

  private different(variables: readonly number[], except: readonly number[]): void {
    const widest = Math.max(1, ...variables.map((v) => this.sizes[v]!));
    this.engine.add(new Different(variables, except, widest), this.guard);
    const shared = maskOf(widest, except);
    this.flow(variables, (_, value) => (bit(shared, value) ? undefined : value));
  }

  /** At most one variable a place; values without a place are free. */
  private flow(variables: readonly number[], place: (i: number, value: number) => number | undefined): void {
    if (variables.length < 3) return;
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
    this.engine.add(new Flow(variables, { of, least: new Array<number>(most.length).fill(0), most }), this.guard);
  }

  /** Pairs, and an assignment that follows from them: windows that do not overlap start, and end, in different places. */
  private disjoint(occupiers: readonly Occupier[]): void {
    const spans = occupiers.map((occupier) => this.spans(occupier));
    for (let i = 0; i < occupiers.length; i++) {
      for (let j = i + 1; j < occupiers.length; j++) this.apart(occupiers[i]!, occupiers[j]!, { one: spans[i]!, two: spans[j]! });
    }
    const place = (side: "from" | "to") => (i: number, value: number) => {
      const at = spans[i]![side][value]!;
      return Number.isFinite(at) ? at : undefined;
    };
    const variables = occupiers.map((o) => o.variable);
    this.flow(variables, place("from"));
    if (spans.some(({ from, to }) => from.some((at, value) => Number.isFinite(at) && at !== to[value]))) this.flow(variables, place("to"));
  }

  private apart(one: Occupier, two: Occupier, spans: { readonly one: Spans; readonly two: Spans }): void {
    const [x, y] = [one.variable, two.variable];
    const clear = new Int32Array(this.engine.store.length[y]!);
    for (let a = 0; a < this.sizes[x]!; a++) {
      const [from, to] = [spans.one.from[a]!, spans.one.to[a]!];
      let clash = false;
      for (let b = 0; b < this.sizes[y]!; b++) {
        if (spans.two.from[b]! > to || spans.two.to[b]! < from || !overlap(one.windows[a]!, two.windows[b]!)) continue;
        if (!clash) clear.fill(-1);
        clear[b >>> 5]! &= ~(1 << (b & 31));
        clash = true;
      }
      if (!clash) continue;
      if (x !== y) this.engine.pairs.restrict(x, a, y, clear, this.guard);
      else if (!bit(clear, a)) this.clause([{ variable: x, values: [a] }], true);
    }
  }

  private spans({ variable, windows }: Occupier): Spans {
    const size = this.sizes[variable]!;
    const spans = {
      from: new Float64Array(size).fill(Number.POSITIVE_INFINITY),
      to: new Float64Array(size).fill(Number.NEGATIVE_INFINITY),
    };
    for (let value = 0; value < size; value++) {
      for (const [from, to] of windows[value] ?? []) {
        if (from < spans.from[value]!) spans.from[value] = from;
        if (to > spans.to[value]!) spans.to[value] = to;
      }
    }
    return spans;
  }
}

/** For each value where its windows begin and end; a value without windows ends before it begins. */
interface Spans {
  readonly from: Float64Array;
  readonly to: Float64Array;
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
function cardinalityFlows(engine: Engine, rules: readonly Guarded[]): void {
  const families = new Map<
    string,
    { variables: readonly number[]; guard: number; parts: { values: readonly number[]; min: number; max: number }[] }
  >();
  for (const { rule, guard } of rules) {
    if (rule.kind !== "cardinality") continue;
    const variables = [...rule.variables].sort((a, b) => a - b);
    const key = `${guard}:${variables}`;
    const family = families.get(key) ?? { variables, guard, parts: [] };
    const part = { values: rule.values, min: rule.min ?? 0, max: rule.max ?? variables.length };
    const taken = new Set(family.parts.flatMap((p) => p.values));
    if (!part.values.some((v) => taken.has(v)) && part.max >= Math.max(0, part.min)) family.parts.push(part);
    families.set(key, family);
  }
  for (const { variables, guard, parts } of families.values()) {
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
    engine.add(new Flow(variables, groups), guard);
  }
}
