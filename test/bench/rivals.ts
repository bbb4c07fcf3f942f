// The general solvers the engine is measured against, each given the same build from its text or numbers on: encoding counts, as it would
// for an owner who waits. All three must give the engine's own answer, or the comparison is worth nothing.
import { createRequire } from "node:module";
import type { Literal, Problem } from "../../src/solver/index.js";
import { clingoProgram, loadClingo } from "../support/solver/clingo.js";
import { range } from "../support/solver/random.js";

export interface Rival {
  readonly name: string;
  decide(problem: Problem): Promise<boolean>;
}

type Text = (line: string) => void;

/** The rule kinds the generator makes, as clauses over "variable takes value" and weighted bounds. */
function encode(
  problem: Problem,
  clause: (literals: readonly [sign: boolean, v: number, a: number][]) => void,
  atMost: (terms: readonly [number, number, number][], max: number) => void,
): void {
  problem.variables.forEach((v, i) => {
    clause(range(v.size).map((a) => [true, i, a]));
    atMost(
      range(v.size).map((a) => [i, a, 1]),
      1,
    );
  });
  const holds = (l: Literal): [boolean, number, number][] => l.values.map((a) => [true, l.variable, a]);
  const others = (l: Literal): [boolean, number, number][] =>
    range(problem.variables[l.variable]!.size)
      .filter((a) => !l.values.includes(a))
      .map((a) => [true, l.variable, a]);
  for (const rule of problem.rules) {
    switch (rule.kind) {
      case "unary":
        clause(holds(rule));
        break;
      case "clause":
        clause(rule.literals.flatMap(holds));
        break;
      case "forbid":
        clause(rule.literals.flatMap(others));
        break;
      case "allDifferent":
        for (const a of range(Math.max(...rule.variables.map((v) => problem.variables[v]!.size)))) {
          if (rule.except?.includes(a)) continue;
          atMost(
            rule.variables.filter((v) => a < problem.variables[v]!.size).map((v) => [v, a, 1]),
            1,
          );
        }
        break;
      case "linear":
        atMost(
          rule.terms.flatMap((t) => t.weights.map((w, a): [number, number, number] => [t.variable, a, w])),
          rule.max!,
        );
        break;
      case "disjoint":
        rule.occupiers.forEach((one, i) => {
          for (const two of rule.occupiers.slice(i + 1)) {
            one.windows.forEach((runs, a) => {
              two.windows.forEach((more, b) => {
                if (runs.some(([f, t]) => more.some(([g, u]) => f <= u && g <= t)))
                  clause([
                    [false, one.variable, a],
                    [false, two.variable, b],
                  ]);
              });
            });
          }
        });
        break;
      default:
        throw new Error(`the generator makes no ${rule.kind}`);
    }
  }
}

async function clingo(): Promise<Rival> {
  const run = await loadClingo();
  return { name: "clingo (WebAssembly)", decide: async (problem) => (await run(clingoProgram(problem), 1)).Result === "SATISFIABLE" };
}

interface LogicModule {
  readonly Solver: new () => { require(formula: unknown): void; solve(): unknown };
  or(...parts: unknown[]): unknown;
  not(part: unknown): unknown;
  weightedSum(parts: unknown[], weights: number[]): unknown;
  constantBits(n: number): unknown;
  lessThanOrEqual(a: unknown, b: unknown): unknown;
  atMostOne(...parts: unknown[]): unknown;
}

interface Z3Module {
  init(): Promise<{
    Context(name: string): { readonly Solver: new () => { fromString(text: string): void; check(): Promise<"sat" | "unsat" | "unknown"> } };
  }>;
}

/** From the benchmark's own package beside this file's source, so that nobody else has to install it. */
function fromBenchPackage<T>(name: string): T {
  const inPackage = createRequire(new URL("../../../test/bench/package.json", import.meta.url));
  return inPackage(name) as T;
}

async function logicSolver(): Promise<Rival> {
  const Logic = fromBenchPackage<LogicModule>("logic-solver");
  const name = (v: number, a: number) => `x${v}_${a}`;
  return {
    name: "logic-solver (MiniSat)",
    decide: async (problem) => {
      const solver = new Logic.Solver();
      encode(
        problem,
        (literals) => solver.require(Logic.or(...literals.map(([sign, v, a]) => (sign ? name(v, a) : Logic.not(name(v, a)))))),
        (terms, max) => {
          const used = terms.filter(([, , w]) => w > 0);
          if (used.length === 0) return;
          const parts = used.map(([v, a]) => name(v, a));
          if (max === 1 && used.every(([, , w]) => w === 1)) solver.require(Logic.atMostOne(...parts));
          else
            solver.require(
              Logic.lessThanOrEqual(
                Logic.weightedSum(
                  parts,
                  used.map(([, , w]) => w),
                ),
                Logic.constantBits(max),
              ),
            );
        },
      );
      return solver.solve() !== null;
    },
  };
}

async function z3(): Promise<Rival> {
  const { init } = fromBenchPackage<Z3Module>("z3-solver");
  const { Context } = await init();
  return {
    name: "Z3 (WebAssembly)",
    decide: async (problem) => {
      const context = Context("bench");
      const solver = new context.Solver();
      const lines: string[] = [];
      const put: Text = (line) => lines.push(line);
      const name = (v: number, a: number) => `x${v}_${a}`;
      problem.variables.forEach((v, i) => {
        for (const a of range(v.size)) put(`(declare-const ${name(i, a)} Bool)`);
      });
      encode(
        problem,
        (literals) => put(`(assert (or false ${literals.map(([sign, v, a]) => (sign ? name(v, a) : `(not ${name(v, a)})`)).join(" ")}))`),
        (terms, max) => {
          const used = terms.filter(([, , w]) => w > 0);
          if (used.length > 0)
            put(`(assert ((_ pble ${max} ${used.map(([, , w]) => w).join(" ")}) ${used.map(([v, a]) => name(v, a)).join(" ")}))`);
        },
      );
      solver.fromString(lines.join("\n"));
      return (await solver.check()) === "sat";
    },
  };
}

export const rivalsOf: readonly (() => Promise<Rival>)[] = [clingo, logicSolver, z3];
