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
        this.clause([rule]);
        break;
      case "clause":
        this.clause(rule.literals);
        break;
      case "forbid":
        this.clause(this.denied(rule.literals));
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

  /** "Never all of these" as "at least one of the opposites". */
  private denied(literals: readonly Literal[]): Literal[] {
    const all = new Map<number, readonly number[]>();
    for (const { variable, values } of literals) {
      const before = all.get(variable);
      all.set(variable, before ? values.filter((v) => before.includes(v)) : values);
    }
    return [...all].map(([variable, values]) => ({ variable, values: this.each(variable).filter((v) => !values.includes(v)) }));
  }

  private clause(literals: readonly Literal[]): void {
    const merged = new Map<number, Set<number>>();
    for (const { variable, values } of literals) {
      const set = merged.get(variable) ?? new Set<number>();
      for (const value of values) if (value >= 0 && value < this.sizes[variable]!) set.add(value);
      merged.set(variable, set);
    }
    if ([...merged].some(([v, set]) => set.size === this.sizes[v])) return;
    const open = [...merged].filter(([, set]) => set.size > 0);
    if (open.length === 2) {
      const [[x, good], [y, fine]] = open as [[number, Set<number>], [number, Set<number>]];
      for (const a of this.each(x)) {
        if (!good.has(a)) for (const b of this.each(y)) if (!fine.has(b)) this.engine.pairs.forbid(x, a, y, b, this.guard);
      }
      return;
    }
    const masks = open.map(([v, set]) => maskOf(this.sizes[v]!, set));
    this.engine.clauses.add(
      open.map(([v]) => v),
      masks,
      this.guard,
    );
  }

  private table(variables: readonly number[], rows: readonly (readonly number[])[]): void {
    const distinct = [...new Set(variables)];
    const first = variables.map((v) => variables.indexOf(v));
    const good = rows
      .filter((row) => row.every((value, i) => row[first[i]!] === value && value >= 0 && value < this.sizes[variables[i]!]!))
      .map((row) => distinct.map((v) => row[variables.indexOf(v)]!));
    if (distinct.length > 2) this.engine.add(new Table(distinct, good, this.engine.store), this.guard);
    else if (distinct.length === 2) {
      const [x, y] = distinct as [number, number];
      const seen = new Set(good.map((row) => row.join()));
      for (const a of this.each(x))
        for (const b of this.each(y)) if (!seen.has(`${a},${b}`)) this.engine.pairs.forbid(x, a, y, b, this.guard);
    } else if (distinct.length === 1 || good.length === 0) {
      this.clause(distinct.map((variable) => ({ variable, values: good.map((row) => row[0]!) })));
    }
  }

  private sum(terms: readonly Term[], min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): void {
    const merged = new Map<number, number[]>();
    for (const { variable, weights } of terms) {
      const before = merged.get(variable);
      merged.set(
        variable,
        this.each(variable).map((v) => (before?.[v] ?? 0) + (weights[v] ?? 0)),
      );
    }
    const flat = [...merged].map(([variable, weights]) => ({ variable, weights }));
    this.engine.add(new Linear(flat, min, max), this.guard);
    if (flat.length === 0 && (0 < min || 0 > max)) this.clause([]);
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
    for (const a of this.each(one.variable)) {
      for (const b of this.each(two.variable)) {
        if (!overlap(one.windows[a] ?? [], two.windows[b] ?? [])) continue;
        if (one.variable !== two.variable) this.engine.pairs.forbid(one.variable, a, two.variable, b, this.guard);
        else if (a === b) this.clause([{ variable: one.variable, values: this.each(one.variable).filter((v) => v !== a) }]);
      }
    }
  }
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
