// From rules to propagators. Rules may be guarded: a guarded rule counts only while its guard is switched on, so that one engine can
// answer for many subsets of the same rules (reasons and repairs ask for hundreds).
import { overlap } from "./holds.js";
import type { Literal, Problem, Rule } from "./problem.js";
import { maskOf, type Propagator } from "./propagator.js";
import { Clause } from "./rules/clause.js";
import { Different } from "./rules/different.js";
import { Linear } from "./rules/linear.js";
import { PairTable } from "./rules/pair.js";
import { Table } from "./rules/table.js";

/** A rule and the guard it hangs on; guard -1 always counts. */
export interface Guarded {
  readonly rule: Rule;
  readonly guard: number;
}

export interface Compiled {
  readonly propagators: readonly Propagator[];
  /** The guard of each propagator. */
  readonly guards: readonly number[];
}

export function compile(problem: Problem, rules: readonly Guarded[]): Compiled {
  const propagators: Propagator[] = [];
  const guards: number[] = [];
  const pairs = new Map<string, PairTable>();
  const sizeOf = (v: number) => problem.variables[v]!.size;
  const post = (propagator: Propagator, guard: number) => {
    propagators.push(propagator);
    guards.push(guard);
  };
  const pairOf = (x: number, y: number, guard: number): PairTable => {
    const [a, b] = x < y ? [x, y] : [y, x];
    const key = `${guard}:${a}:${b}`;
    let table = pairs.get(key);
    if (!table) {
      table = new PairTable(a, b, sizeOf(a), sizeOf(b));
      pairs.set(key, table);
      post(table, guard);
    }
    return table;
  };
  const forbidPair = (x: number, a: number, y: number, b: number, guard: number) => {
    if (x < y) pairOf(x, y, guard).forbid(a, b);
    else pairOf(x, y, guard).forbid(b, a);
  };

  const clause = (literals: readonly Literal[], guard: number) => {
    const byVariable = new Map<number, Set<number>>();
    for (const { variable, values } of literals) {
      const set = byVariable.get(variable) ?? new Set<number>();
      for (const value of values) if (value >= 0 && value < sizeOf(variable)) set.add(value);
      byVariable.set(variable, set);
    }
    if ([...byVariable].some(([v, set]) => set.size === sizeOf(v))) return;
    const kept = [...byVariable].filter(([, set]) => set.size > 0);
    if (kept.length === 2) {
      const [[x, good], [y, fine]] = kept as [[number, Set<number>], [number, Set<number>]];
      for (let a = 0; a < sizeOf(x); a++) {
        if (good.has(a)) continue;
        for (let b = 0; b < sizeOf(y); b++) if (!fine.has(b)) forbidPair(x, a, y, b, guard);
      }
      return;
    }
    const masks = kept.map(([v, set]) => maskOf(sizeOf(v), set));
    post(
      new Clause(
        kept.map(([v]) => v),
        masks,
      ),
      guard,
    );
  };

  for (const { rule, guard } of rules) {
    switch (rule.kind) {
      case "unary":
        clause([{ variable: rule.variable, values: rule.values }], guard);
        break;
      case "clause":
        clause(rule.literals, guard);
        break;
      case "forbid": {
        const byVariable = new Map<number, Set<number>>();
        for (const { variable, values } of rule.literals) {
          const before = byVariable.get(variable);
          byVariable.set(variable, new Set(before ? values.filter((v) => before.has(v)) : values));
        }
        clause(
          [...byVariable].map(([variable, set]) => ({
            variable,
            values: Array.from({ length: sizeOf(variable) }, (_, v) => v).filter((v) => !set.has(v)),
          })),
          guard,
        );
        break;
      }
      case "table":
        tableRule(rule.variables, rule.rows, guard);
        break;
      case "allDifferent":
        post(new Different(rule.variables, rule.except ?? [], Math.max(1, ...rule.variables.map(sizeOf))), guard);
        break;
      case "cardinality":
        sum(
          rule.variables.map((variable) => ({
            variable,
            weights: Array.from({ length: sizeOf(variable) }, (_, v) => (rule.values.includes(v) ? 1 : 0)),
          })),
          rule.min,
          rule.max,
          guard,
        );
        break;
      case "linear":
        sum(rule.terms, rule.min, rule.max, guard);
        break;
      case "disjoint":
        for (let i = 0; i < rule.occupiers.length; i++) {
          for (let j = i + 1; j < rule.occupiers.length; j++) {
            const one = rule.occupiers[i]!;
            const two = rule.occupiers[j]!;
            for (let a = 0; a < sizeOf(one.variable); a++) {
              for (let b = 0; b < sizeOf(two.variable); b++) {
                if (!overlap(one.windows[a] ?? [], two.windows[b] ?? [])) continue;
                if (one.variable !== two.variable) forbidPair(one.variable, a, two.variable, b, guard);
                else if (a === b) clause([{ variable: one.variable, values: others(sizeOf(one.variable), a) }], guard);
              }
            }
          }
        }
        break;
      default:
        rule satisfies never;
    }
  }

  function tableRule(variables: readonly number[], rows: readonly (readonly number[])[], guard: number) {
    const distinct = [...new Set(variables)];
    const good = rows.filter((row) =>
      row.every((value, i) => row[variables.indexOf(variables[i]!)] === value && value >= 0 && value < sizeOf(variables[i]!)),
    );
    const short = good.map((row) => distinct.map((v) => row[variables.indexOf(v)]!));
    if (distinct.length === 2) {
      const [x, y] = distinct as [number, number];
      const seen = new Set(short.map((row) => row[0]! * sizeOf(y) + row[1]!));
      pairOf(x, y, guard);
      for (let a = 0; a < sizeOf(x); a++)
        for (let b = 0; b < sizeOf(y); b++) if (!seen.has(a * sizeOf(y) + b)) forbidPair(x, a, y, b, guard);
    } else if (distinct.length === 0) {
      if (rows.length === 0) post(new Clause([], []), guard);
    } else post(new Table(distinct, short), guard);
  }

  function sum(
    terms: readonly { readonly variable: number; readonly weights: readonly number[] }[],
    min: number | undefined,
    max: number | undefined,
    guard: number,
  ) {
    const byVariable = new Map<number, number[]>();
    for (const { variable, weights } of terms) {
      const total = byVariable.get(variable) ?? new Array<number>(sizeOf(variable)).fill(0);
      byVariable.set(
        variable,
        total.map((w, v) => w + (weights[v] ?? 0)),
      );
    }
    const merged = [...byVariable].map(([variable, weights]) => ({ variable, weights }));
    post(new Linear(merged, min ?? Number.NEGATIVE_INFINITY, max ?? Number.POSITIVE_INFINITY), guard);
  }

  return { propagators, guards };
}

function others(size: number, value: number): number[] {
  return Array.from({ length: size }, (_, v) => v).filter((v) => v !== value);
}
