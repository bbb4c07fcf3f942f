// The oracle: a problem as a logic program for clingo, an answer-set solver of another make. Brave consequences are the possible values,
// the models its solutions. Only rules, never the engine's own reading of them.
import type { Constraint, Cost, Problem } from "../../../src/solver/index.js";

interface ClingoAnswer {
  readonly Result: string;
  readonly Call: readonly { readonly Witnesses?: readonly { readonly Value: readonly string[] }[] }[];
  readonly Models: { readonly Number: number; readonly More: string; readonly Costs?: readonly number[] };
}

type Run = (program: string, models?: number, options?: readonly string[]) => Promise<ClingoAnswer>;

/** Loads clingo (WebAssembly); the same instance serves all calls. */
export async function loadClingo(): Promise<Run> {
  // A CommonJS package: Node hands all of it out as the default, a bundler as names.
  const loaded = (await import("clingo-wasm")) as unknown as { readonly default?: { readonly run: Run }; readonly run?: Run };
  const run = loaded.run ?? loaded.default?.run;
  if (!run) throw new Error("clingo-wasm hands out no `run`.");
  return run;
}

export function clingoProgram(problem: Problem): string {
  const lines: string[] = [];
  problem.variables.forEach((v, i) => {
    if (v.size === 0) lines.push(":- 1 = 1.");
    else lines.push(`1 { x(${i},0..${v.size - 1}) } 1.`);
  });
  problem.rules.forEach((rule, r) => {
    lines.push(...ruleLines(rule, r));
  });
  lines.push("#show x/2.");
  return lines.join("\n");
}

function ruleLines(rule: Constraint, r: number): string[] {
  const facts = (name: string, rows: readonly (readonly (number | string)[])[]) => rows.map((row) => `${name}${r}(${row.join()}).`);
  switch (rule.kind) {
    case "unary":
      return [
        ...facts(
          "u",
          rule.values.map((v) => [v]),
        ),
        `u${r}(-1).`,
        `:- x(${rule.variable},V), not u${r}(V).`,
      ];
    case "forbid": {
      const parts = rule.literals.map((l, i) => `x(${l.variable},V${i}), f${r}(${i},V${i})`);
      return [
        `f${r}(-1,-1).`,
        ...rule.literals.flatMap((l, i) =>
          facts(
            "f",
            l.values.map((v) => [i, v]),
          ),
        ),
        `:- ${parts.length > 0 ? parts.join(", ") : "1 = 1"}.`,
      ];
    }
    case "clause":
      return [
        `c${r}(-1,-1).`,
        ...rule.literals.flatMap((l, i) => [
          ...facts(
            "c",
            l.values.map((v) => [i, v]),
          ),
          `ok${r} :- x(${l.variable},V), c${r}(${i},V).`,
        ]),
        `ok${r} :- x(-1,-1).`,
        `:- not ok${r}.`,
      ];
    case "table":
      return [
        `t${r}(-1).`,
        ...rule.rows.map((row) => `ok${r} :- ${row.length > 0 ? row.map((v, i) => `x(${rule.variables[i]},${v})`).join(", ") : "1 = 1"}.`),
        `ok${r} :- x(-1,-1).`,
        `:- not ok${r}.`,
      ];
    case "allDifferent": {
      const pairs = rule.variables.flatMap((v, i) => rule.variables.slice(i + 1).map((w) => [v, w]));
      return [
        `e${r}(-1).`,
        ...facts(
          "e",
          (rule.except ?? []).map((v) => [v]),
        ),
        `d${r}(-1,-1).`,
        ...facts("d", pairs),
        `:- d${r}(V,W), x(V,A), x(W,A), not e${r}(A).`,
      ];
    }
    case "cardinality": {
      const sum = `#count { I : n${r}(I,V), x(V,A), k${r}(A) }`;
      return [
        `k${r}(-1).`,
        ...facts(
          "k",
          [...new Set(rule.values)].map((v) => [v]),
        ),
        `n${r}(-1,-1).`,
        ...facts(
          "n",
          rule.variables.map((v, i) => [i, v]),
        ),
        ...(rule.min === undefined ? [] : [`:- ${sum} < ${rule.min}.`]),
        ...(rule.max === undefined ? [] : [`:- ${sum} > ${rule.max}.`]),
      ];
    }
    case "linear": {
      const sum = `#sum { W,I : w${r}(I,V,A,W), x(V,A) }`;
      return [
        `w${r}(-1,-1,-1,0).`,
        ...rule.terms.flatMap((t, i) =>
          facts(
            "w",
            t.weights.map((w, v) => [i, t.variable, v, w]),
          ),
        ),
        ...(rule.min === undefined ? [] : [`:- ${sum} < ${rule.min}.`]),
        ...(rule.max === undefined ? [] : [`:- ${sum} > ${rule.max}.`]),
      ];
    }
    case "disjoint":
      return [
        `o${r}(-1,-1,-1,-1,-1).`,
        ...rule.occupiers.flatMap((o, i) =>
          o.windows.flatMap((runs, v) =>
            facts(
              "o",
              runs.map(([from, to]) => [i, o.variable, v, from, to]),
            ),
          ),
        ),
        `:- o${r}(I,X,A,F,T), o${r}(J,Y,B,G,U), I < J, X >= 0, x(X,A), x(Y,B), F <= U, G <= T.`,
      ];
  }
}

export interface OracleAnswer {
  readonly satisfiable: boolean;
  readonly models: number;
  readonly values: readonly ReadonlySet<number>[];
}

const valuesIn = (problem: Problem, atoms: readonly string[]) => {
  const values = problem.variables.map(() => new Set<number>());
  for (const atom of atoms) {
    const [, v, value] = /^x\((\d+),(\d+)\)$/.exec(atom)!;
    values[Number(v)]!.add(Number(value));
  }
  return values;
};

/** The values some solution takes; none at all when there is no solution. */
export async function bravelyPossible(run: Run, problem: Problem): Promise<readonly ReadonlySet<number>[]> {
  const brave = await run(clingoProgram(problem), 0, ["--enum-mode=brave"]);
  if (brave.Result === "ERROR") throw new Error(JSON.stringify(brave).slice(0, 400));
  return valuesIn(problem, brave.Call[0]?.Witnesses?.at(-1)?.Value ?? []);
}

export async function askClingo(run: Run, problem: Problem): Promise<OracleAnswer> {
  const program = clingoProgram(problem);
  const all = await run(program, 0, ["--quiet=2,2"]);
  const values = await bravelyPossible(run, problem);
  if (all.Result === "ERROR") throw new Error(JSON.stringify(all).slice(0, 400));
  const satisfiable = all.Result === "SATISFIABLE";
  return { satisfiable, models: satisfiable ? all.Models.Number : 0, values };
}

/** The least cost as clingo proves it; undefined when there is no solution. */
export async function leastByClingo(run: Run, problem: Problem, cost: Cost): Promise<number | undefined> {
  const weights = cost.terms.flatMap((t, i) => t.weights.map((w, value) => `cost(${i},${t.variable},${value},${w}).`));
  const program = `${clingoProgram(problem)}\n${weights.join("\n")}\n#minimize { W,I : cost(I,V,A,W), x(V,A) }.`;
  const answer = await run(program, 0, ["--quiet=1,2", "--opt-mode=opt"]);
  if (answer.Result === "UNSATISFIABLE") return undefined;
  if (answer.Result !== "OPTIMUM FOUND") throw new Error(JSON.stringify(answer).slice(0, 400));
  return answer.Models.Costs![0]!;
}
