// From rules to what filters: rules over one pair of variables go into the pair tables, rules of literals become clauses, the rest
// propagators. Rules may be guarded: a guarded rule counts only while its guard is on, so that one engine answers for many subsets of the
// same rules (reasons and repairs ask for hundreds).
import type { Engine } from "./engine.js";
import { overlap } from "./holds.js";
import type { Literal, Occupier, Rule, Term } from "./problem.js";
import { maskOf } from "./propagator.js";
import { Different } from "./rules/different.js";
import { Flow } from "./rules/flow.js";
import { Linear } from "./rules/linear.js";
import { Table } from "./rules/table.js";
import { bitCount } from "./store.js";

/** A rule and the guard it hangs on; guard -1 always counts. */
export interface Guarded {
  readonly rule: Rule;
  readonly guard: number;
}

export function compile(engine: Engine, rules: readonly Guarded[]): void {
  for (const { rule, guard } of rules) new Posting(engine, guard).post(rule);
  cardinalityFlows(engine, rules);
  engine.pairs.finish();
}

class Posting {
  private readonly sizes: readonly number[];

  constructor(
    private readonly engine: Engine,
    private readonly guard: number,
  ) {
    this.sizes = engine.store.sizes;
  }

  post(rule: Rule): void {
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

  private each(variable: number): number[] {
    return Array.from({ length: this.sizes[variable]! }, (_, v) => v);
  }

  /** At least one literal holds, or, `denied`, at least one does not: "never all of these" is a clause of the opposites. */
  private clause(literals: readonly Literal[], denied: boolean): void {
    const merged = new Map<number, Int32Array>();
    for (const { variable, values } of literals) {
      const mask = maskOf(this.sizes[variable]!, values);
      if (denied) flip(mask, this.sizes[variable]!);
      const before = merged.get(variable);
      if (before) for (let w = 0; w < mask.length; w++) before[w]! |= mask[w]!;
      else merged.set(variable, mask);
    }
    const open = [...merged].filter(([, mask]) => mask.some((word) => word !== 0));
    if (open.some(([v, mask]) => sizeOf(mask) === this.sizes[v])) return;
    if (open.length === 1 && this.guard < 0) this.engine.store.keepAll(open[0]![0], open[0]![1]);
    else if (open.length === 2) {
      const [[x, good], [y, fine]] = open as [[number, Int32Array], [number, Int32Array]];
      for (let a = 0; a < this.sizes[x]!; a++) if (!bit(good, a)) this.engine.pairs.restrict(x, a, y, fine, this.guard);
    } else {
      const variables = open.map(([v]) => v);
      this.engine.clauses.add(
        variables,
        open.map(([, mask]) => mask),
        this.guard,
      );
    }
  }

  private table(variables: readonly number[], rows: readonly (readonly number[])[]): void {
    const distinct = [...new Set(variables)];
    const first = variables.map((v) => variables.indexOf(v));
    const good = rows
      .filter((row) => row.every((value, i) => row[first[i]!] === value && value >= 0 && value < this.sizes[variables[i]!]!))
      .map((row) => distinct.map((v) => row[variables.indexOf(v)]!));
    if (distinct.length > 2) {
      const once = [...new Map(good.map((row) => [row.join(), row])).values()];
      this.engine.add(new Table(distinct, once, this.engine.store), this.guard);
    } else if (distinct.length === 2) {
      const [x, y] = distinct as [number, number];
      for (const a of this.each(x)) {
        const goes = good.filter((row) => row[0] === a).map((row) => row[1]!);
        this.engine.pairs.restrict(x, a, y, maskOf(this.sizes[y]!, goes), this.guard);
      }
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
    const shared = new Set(except);
    this.flow(
      variables,
      variables.map((v) => this.each(v).map((value) => (shared.has(value) ? undefined : value))),
    );
  }

  /** At most one variable a place; values without a place are free. */
  private flow(variables: readonly number[], of: readonly (readonly (number | undefined)[])[]): void {
    const used = [...new Set(of.flat())].filter((place) => place !== undefined);
    if (variables.length < 3 || used.length === 0) return;
    const index = new Map<number | undefined, number>(used.map((place, i) => [place, i]));
    const most = [...used.map(() => 1), variables.length];
    const groups = { of: of.map((row) => row.map((place) => index.get(place) ?? used.length)), least: most.map(() => 0), most };
    this.engine.add(new Flow(variables, groups), this.guard);
  }

  /** Pairs, and an assignment that follows from them: windows that do not overlap start, and end, in different places. */
  private disjoint(occupiers: readonly Occupier[]): void {
    for (const [i, one] of occupiers.entries()) {
      for (const two of occupiers.slice(i + 1)) this.apart(one, two);
    }
    const variables = occupiers.map((o) => o.variable);
    const places = (pick: (windows: Occupier["windows"][number]) => number) =>
      occupiers.map((o) => this.each(o.variable).map((v) => (o.windows[v]?.length ? pick(o.windows[v]!) : undefined)));
    const starts = places((windows) => Math.min(...windows.map(([from]) => from)));
    const ends = places((windows) => Math.max(...windows.map(([, to]) => to)));
    this.flow(variables, starts);
    if (`${starts}` !== `${ends}`) this.flow(variables, ends);
  }

  private apart(one: Occupier, two: Occupier): void {
    const [x, y] = [one.variable, two.variable];
    for (let a = 0; a < this.sizes[x]!; a++) {
      const windows = one.windows[a] ?? [];
      if (windows.length === 0) continue;
      const clear = this.each(y).filter((b) => !overlap(windows, two.windows[b] ?? []));
      if (clear.length === this.sizes[y]) continue;
      if (x !== y) this.engine.pairs.restrict(x, a, y, maskOf(this.sizes[y]!, clear), this.guard);
      else if (!clear.includes(a)) this.clause([{ variable: x, values: [a] }], true);
    }
  }
}

const bit = (mask: Int32Array, value: number): boolean => ((mask[value >>> 5]! >>> (value & 31)) & 1) === 1;

function sizeOf(mask: Int32Array): number {
  let size = 0;
  for (const word of mask) size += bitCount(word);
  return size;
}

function flip(mask: Int32Array, size: number): void {
  for (let w = 0; w < mask.length; w++) mask[w] = ~mask[w]! & (w < size >>> 5 ? -1 : (1 << (size & 31)) - 1);
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
