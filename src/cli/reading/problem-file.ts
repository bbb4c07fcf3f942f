// The problem file: a finite-domain problem as JSON, with names and values of the writer's own. Turns it into the engine's numbers and
// back; a mistake is told with its line and column. The form is described in DEVELOPERS.md, section "Solver".
import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from "yaml";
import type { Choice, Cost, Literal, Problem, Rule, Solution, Term } from "../../solver/index.js";

type Value = string | number | boolean;

export interface ProblemFile {
  readonly problem: Problem;
  readonly choices: readonly Choice[];
  readonly costs: readonly Cost[];
  readonly project?: readonly number[];
  /** The values of each variable as written. */
  readonly values: readonly (readonly Value[])[];
}

export type Read = { readonly kind: "read"; readonly file: ProblemFile } | { readonly kind: "bad"; readonly mistakes: readonly string[] };

/** A solution in the writer's words. */
export function named(file: ProblemFile, solution: Solution): Record<string, Value> {
  return Object.fromEntries(file.problem.variables.map((v, i) => [v.name, file.values[i]![solution[i]!]!]));
}

class Mistake extends Error {}

export function readProblemFile(text: string): Read {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, schema: "json", strict: true, uniqueKeys: true });
  const place = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return `${line}:${col}`;
  };
  if (document.errors.length > 0) {
    return {
      kind: "bad",
      mistakes: document.errors.map((e) => `${place(e.pos[0])} ${e.message.split("\n")[0]!.replace(/ at line .*$/, "")}`),
    };
  }
  const reader = new Reader((node, says) => {
    throw new Mistake(`${place(node?.range?.[0] ?? 0)} ${says}`);
  });
  try {
    return { kind: "read", file: reader.file(document.contents as Node | null) };
  } catch (error) {
    if (error instanceof Mistake) return { kind: "bad", mistakes: [error.message] };
    throw error;
  }
}

type Fail = (node: Node | null | undefined, says: string) => never;

class Reader {
  private readonly index = new Map<string, number>();
  private readonly values: Value[][] = [];

  constructor(private readonly fail: Fail) {}

  file(root: Node | null): ProblemFile {
    const fields = this.fields(root, "the problem file", ["variables", "rules", "choices", "costs", "project"], ["variables"]);
    const variables = this.entries(fields.get("variables"), "variables").map(([name, node]) => {
      this.index.set(name, this.values.length);
      this.values.push(this.domain(node, name));
      return { name, size: this.values.at(-1)!.length };
    });
    const rules = this.list(fields.get("rules"), "rules").map((node) => this.rule(node));
    const choices = this.list(fields.get("choices"), "choices").map((node) => this.choice(node));
    const costs = this.list(fields.get("costs"), "costs").map((node): Cost => ({ terms: this.terms(node, "a cost") }));
    const project = fields.get("project");
    return {
      problem: { variables, rules },
      choices,
      costs,
      ...(project ? { project: this.names(project) } : {}),
      values: this.values,
    };
  }

  private domain(node: Node, name: string): Value[] {
    if (isMap(node)) {
      const fields = this.fields(node, `variable "${name}"`, ["from", "to"], ["from", "to"]);
      const [from, to] = [this.whole(fields.get("from")), this.whole(fields.get("to"))];
      if (to < from || to - from > 9999) this.fail(node, `"from" and "to" of "${name}" must hold 1 to 10000 whole numbers`);
      return Array.from({ length: to - from + 1 }, (_, i) => from + i);
    }
    const values = this.list(node, `the values of "${name}"`).map((item) => this.value(item));
    if (values.length === 0) this.fail(node, `variable "${name}" has no value to take`);
    if (new Set(values).size < values.length) this.fail(node, `variable "${name}" lists a value twice`);
    return values;
  }

  private choice(node: Node): Choice {
    const fields = this.fields(node, "a choice", ["id", "rules"], ["id", "rules"]);
    return { id: String(this.value(fields.get("id")!)), rules: this.list(fields.get("rules"), "rules").map((rule) => this.rule(rule)) };
  }

  private rule(node: Node): Rule {
    if (!isMap(node)) return this.fail(node, 'a rule is an object with a "kind"');
    const kind = String((node.get("kind") as unknown) ?? "");
    const id = node.has("id") ? { id: String(node.get("id")) } : {};
    const fields = (allowed: readonly string[], needed: readonly string[] = allowed) =>
      this.fields(node, `a rule of kind "${kind}"`, ["kind", "id", ...allowed], needed);
    switch (kind) {
      case "unary": {
        const f = fields(["variable", "values"]);
        const variable = this.variable(f.get("variable")!);
        return { ...id, kind, variable, values: this.valuesOf(variable, f.get("values")!) };
      }
      case "forbid":
      case "clause":
        return { ...id, kind, literals: this.literals(fields(["literals"]).get("literals")!) };
      case "table": {
        const f = fields(["variables", "rows"]);
        const variables = this.names(f.get("variables")!);
        const rows = this.list(f.get("rows"), "rows").map((row) => {
          const items = this.list(row, "a row");
          if (items.length !== variables.length) this.fail(row, `a row has ${items.length} values for ${variables.length} variables`);
          return items.map((item, i) => this.valueOf(variables[i]!, item));
        });
        return { ...id, kind, variables, rows };
      }
      case "allDifferent": {
        const f = fields(["variables", "except"], ["variables"]);
        const variables = this.names(f.get("variables")!);
        this.sameValues(variables, f.get("variables")!);
        return {
          ...id,
          kind,
          variables,
          ...(f.has("except") && variables.length > 0 ? { except: this.valuesOf(variables[0]!, f.get("except")!) } : {}),
        };
      }
      case "cardinality": {
        const f = fields(["variables", "values", "min", "max"], ["variables", "values"]);
        const variables = this.names(f.get("variables")!);
        this.sameValues(variables, f.get("variables")!);
        return {
          ...id,
          kind,
          variables,
          values: variables.length > 0 ? this.valuesOf(variables[0]!, f.get("values")!) : [],
          ...this.bounds(f),
        };
      }
      case "linear": {
        const f = fields(["terms", "min", "max"], ["terms"]);
        return { ...id, kind, terms: this.terms(f.get("terms")!, "a sum"), ...this.bounds(f) };
      }
      case "disjoint": {
        const occupiers = this.entries(fields(["windows"]).get("windows"), "windows").map(([name, item]) => {
          const variable = this.named(name, item);
          const windows = this.list(item, `the windows of "${name}"`).map((runs) => this.list(runs, "runs").map((run) => this.run(run)));
          if (windows.length !== this.values[variable]!.length)
            this.fail(item, `"${name}" has ${this.values[variable]!.length} values but ${windows.length} lists of windows`);
          return { variable, windows };
        });
        return { ...id, kind, occupiers };
      }
      default:
        return this.fail(
          (node.get("kind", true) as Node | undefined) ?? node,
          `unknown rule kind "${kind}"; known are unary, forbid, clause, table, allDifferent, cardinality, linear, disjoint`,
        );
    }
  }

  private run(node: Node): readonly [number, number] {
    const ends = this.list(node, "a run").map((end) => this.whole(end));
    if (ends.length !== 2 || ends[0]! > ends[1]!) this.fail(node, "a run is two whole numbers, the smaller first");
    return [ends[0]!, ends[1]!];
  }

  private bounds(fields: ReadonlyMap<string, Node>): { min?: number; max?: number } {
    return {
      ...(fields.has("min") ? { min: this.whole(fields.get("min")) } : {}),
      ...(fields.has("max") ? { max: this.whole(fields.get("max")) } : {}),
    };
  }

  private literals(node: Node): Literal[] {
    return this.entries(node, "literals").map(([name, item]) => {
      const variable = this.named(name, item);
      return { variable, values: this.valuesOf(variable, item) };
    });
  }

  /** A number multiplies a variable of numbers; a list gives the weight of each value in turn. */
  private terms(node: Node, what: string): Term[] {
    return this.entries(node, what).map(([name, item]) => {
      const variable = this.named(name, item);
      const values = this.values[variable]!;
      if (isSeq(item)) {
        const weights = this.list(item, "weights").map((w) => this.whole(w));
        if (weights.length !== values.length) this.fail(item, `"${name}" has ${values.length} values but ${weights.length} weights`);
        return { variable, weights };
      }
      const factor = this.whole(item);
      if (!values.every((v) => typeof v === "number"))
        this.fail(item, `the values of "${name}" are not all numbers; give a list of weights`);
      return { variable, weights: values.map((v) => factor * (v as number)) };
    });
  }

  private sameValues(variables: readonly number[], node: Node): void {
    const first = JSON.stringify(this.values[variables[0] ?? 0]);
    if (!variables.every((v) => JSON.stringify(this.values[v]) === first))
      this.fail(node, "these variables must all have the same values in the same order");
  }

  private valuesOf(variable: number, node: Node): number[] {
    return isSeq(node) ? this.list(node, "values").map((item) => this.valueOf(variable, item)) : [this.valueOf(variable, node)];
  }

  private valueOf(variable: number, node: Node): number {
    const value = this.values[variable]!.indexOf(this.value(node));
    const name = [...this.index.keys()][variable];
    if (value < 0) this.fail(node, `"${name}" has no value ${JSON.stringify(this.value(node))}`);
    return value;
  }

  private names(node: Node): number[] {
    return this.list(node, "a list of variables").map((item) => this.variable(item));
  }

  private variable(node: Node): number {
    return this.named(String(this.value(node)), node);
  }

  private named(name: string, node: Node): number {
    return this.index.get(name) ?? this.fail(node, `there is no variable "${name}"`);
  }

  private value(node: Node): Value {
    if (isScalar(node) && (typeof node.value === "string" || typeof node.value === "number" || typeof node.value === "boolean"))
      return node.value;
    return this.fail(node, "expected a text, a number, true or false");
  }

  private whole(node: Node | undefined): number {
    if (isScalar(node) && Number.isSafeInteger(node.value)) return node.value as number;
    return this.fail(node, "expected a whole number");
  }

  private list(node: Node | undefined, what: string): Node[] {
    if (node === undefined) return [];
    if (!isSeq(node)) return this.fail(node, `expected ${what} as a list`);
    return node.items as Node[];
  }

  private entries(node: Node | undefined, what: string): [string, Node][] {
    if (!isMap(node)) return this.fail(node, `expected ${what} as an object`);
    return node.items.map((pair) => [String((pair.key as { value: unknown }).value), pair.value as Node]);
  }

  private fields(node: Node | null | undefined, what: string, allowed: readonly string[], needed: readonly string[]): Map<string, Node> {
    if (!isMap(node)) return this.fail(node, `${what} must be an object`);
    for (const { key } of node.items) {
      const name = String((key as { value: unknown }).value);
      if (!allowed.includes(name)) this.fail(key as Node, `${what} has no field "${name}"; it may have ${allowed.join(", ")}`);
    }
    const found = new Map(this.entries(node, what));
    for (const name of needed) if (!found.has(name)) this.fail(node, `${what} lacks "${name}"`);
    return found;
  }
}
