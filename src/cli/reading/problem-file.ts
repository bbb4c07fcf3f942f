// The problem file: a finite-domain problem as JSON, with names and values of the writer's own. Turns it into the engine's numbers and
// back; a mistake is told with its line and column. The form is described in src/solver/README.md.
import { itemAt } from "../../records/index.js";
import type { Choice, Constraint, Cost, Literal, Problem, Solution } from "../../solver/index.js";
import { JsonMistake, lineAndColumn, offsetOf, readJson } from "./json-text.js";
import { type ScaledSum, SumMistake, scaledSum, type WrittenTerm } from "./scaled-sum.js";

type Value = string | number | boolean;

export interface ProblemFile {
  readonly problem: Problem;
  readonly choices: readonly Choice[];
  readonly costs: readonly Cost[];
  /** For each cost how many decimal places of what was written its whole numbers count: 7 is 0.7 at one place. */
  readonly places: readonly number[];
  readonly project?: readonly number[];
  /** The values of each variable as written. */
  readonly values: readonly (readonly Value[])[];
}

export type Read = { readonly kind: "read"; readonly file: ProblemFile } | { readonly kind: "bad"; readonly mistakes: readonly string[] };

/** A solution in the writer's words. */
export function named(file: ProblemFile, solution: Solution): Record<string, Value> {
  return Object.fromEntries(file.problem.variables.map((v, i) => [v.name, itemAt(itemAt(file.values, i), itemAt(solution, i))]));
}

export function readProblemFile(text: string): Read {
  const bad = (offset: number, says: string): Read => ({ kind: "bad", mistakes: [`${lineAndColumn(text, offset)} ${says}`] });
  if (text.trim() === "") return bad(0, "the problem file must be an object");
  const reader = new Reader();
  try {
    return { kind: "read", file: reader.file(readJson(text)) };
  } catch (error) {
    if (error instanceof JsonMistake) return bad(error.offset, error.says);
    if (error instanceof Mistake) return bad(offsetOf(text, reader.path, error.key), error.message);
    throw error;
  }
}

/** What is wrong at the reader's path; with `key`, at the name there. */
class Mistake extends Error {
  constructor(
    says: string,
    readonly key = false,
  ) {
    super(says);
  }
}

type Step = string | number;
type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields => typeof value === "object" && value !== null && !Array.isArray(value);

class Reader {
  /** The way to the value being read; where it ends, a mistake was made. */
  readonly path: Step[] = [];
  private readonly index = new Map<string, number>();
  private readonly values: Value[][] = [];
  private readonly numbers: ReadonlyMap<Value, number>[] = [];

  file(root: unknown): ProblemFile {
    const fields = this.fields(root, "the problem file", ["variables", "rules", "choices", "costs", "project"], ["variables"]);
    const variables = this.at("variables", () =>
      this.entries(fields.variables, "variables", (name, value) => {
        const values = this.domain(value, name);
        this.index.set(name, this.values.push(values) - 1);
        this.numbers.push(new Map(values.map((v, i) => [v, i])));
        return { name, size: values.length };
      }),
    );
    const rules = this.at("rules", () => this.list(fields.rules ?? [], "rules", (value) => this.rule(value)));
    const choices = this.at("choices", () => this.choices(fields.choices ?? []));
    const costs = this.at("costs", () => this.list(fields.costs ?? [], "costs", (value) => this.sum(value, "a cost")));
    const project = fields.project === undefined ? {} : { project: this.at("project", () => this.names(fields.project)) };
    return {
      problem: { variables, rules },
      choices,
      costs: costs.map(({ terms }) => ({ terms })),
      places: costs.map(({ places }) => places),
      ...project,
      values: this.values,
    };
  }

  private domain(value: unknown, name: string): Value[] {
    if (isObject(value)) {
      const fields = this.fields(value, `variable "${name}"`, ["from", "to"], ["from", "to"]);
      const [from, to] = [this.at("from", () => this.whole(fields.from)), this.at("to", () => this.whole(fields.to))];
      if (to < from || to - from > 9999) this.fail(`"from" and "to" of "${name}" must hold 1 to 10000 whole numbers`);
      return Array.from({ length: to - from + 1 }, (_, i) => from + i);
    }
    const values = this.list(value, `the values of "${name}"`, (item) => this.value(item));
    if (values.length === 0) this.fail(`variable "${name}" has no value to take`);
    if (new Set(values).size < values.length) this.fail(`variable "${name}" lists a value twice`);
    return values;
  }

  private choices(value: unknown): Choice[] {
    const known = new Set<string>();
    return this.list(value, "choices", (item) => {
      const fields = this.fields(item, "a choice", ["id", "rules"], ["id", "rules"]);
      const id = this.at("id", () => {
        const own = this.id(fields.id);
        if (known.has(own)) this.fail(`another choice has the id "${own}" already; give each its own`);
        known.add(own);
        return own;
      });
      return { id, rules: this.at("rules", () => this.list(fields.rules, "rules", (rule) => this.rule(rule))) };
    });
  }

  private rule(value: unknown): Constraint {
    if (!isObject(value)) return this.fail('a rule is an object with a "kind"');
    const kind = typeof value.kind === "string" ? value.kind : JSON.stringify(value.kind ?? "");
    const id = value.id === undefined ? {} : { id: this.at("id", () => this.id(value.id)) };
    const fields = (allowed: readonly string[], needed: readonly string[] = allowed) =>
      this.fields(value, `a rule of kind "${kind}"`, ["kind", "id", ...allowed], needed);
    switch (kind) {
      case "unary": {
        const f = fields(["variable", "values"]);
        const variable = this.at("variable", () => this.variable(f.variable));
        return { ...id, kind, variable, values: this.at("values", () => this.valuesOf(variable, f.values)) };
      }
      case "forbid":
      case "clause": {
        const { literals } = fields(["literals"]);
        return { ...id, kind, literals: this.at("literals", () => this.literals(literals)) };
      }
      case "table": {
        const f = fields(["variables", "rows"]);
        const variables = this.at("variables", () => this.names(f.variables));
        const rows = this.at("rows", () =>
          this.list(f.rows, "rows", (row) => {
            const items = this.list(row, "a row", (item, i) => (i < variables.length ? this.valueOf(itemAt(variables, i), item) : -1));
            if (items.length !== variables.length) this.fail(`a row has ${items.length} values for ${variables.length} variables`);
            return items;
          }),
        );
        return { ...id, kind, variables, rows };
      }
      case "allDifferent": {
        const f = fields(["variables", "except"], ["variables"]);
        const variables = this.sameValues(f.variables);
        const first = variables[0];
        if (f.except === undefined || first === undefined) return { ...id, kind, variables };
        return { ...id, kind, variables, except: this.at("except", () => this.valuesOf(first, f.except)) };
      }
      case "cardinality": {
        const f = fields(["variables", "values", "min", "max"], ["variables", "values"]);
        const variables = this.sameValues(f.variables);
        const first = variables[0];
        const values = first === undefined ? [] : this.at("values", () => this.valuesOf(first, f.values));
        return { ...id, kind, variables, values, ...this.bounds(f, (bound) => this.whole(bound)) };
      }
      case "linear": {
        const f = fields(["terms", "min", "max"], ["terms"]);
        const bounds = this.bounds(f, (bound) => this.number(bound));
        const { terms, min, max } = this.at("terms", () => this.sum(f.terms, "a sum", bounds));
        return { ...id, kind, terms, ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) };
      }
      case "disjoint": {
        const { windows } = fields(["windows"]);
        const occupiers = this.at("windows", () =>
          this.entries(windows, "windows", (name, item) => {
            const variable = this.named(name, true);
            const lists = this.list(item, `the windows of "${name}"`, (runs) => this.list(runs, "runs", (run) => this.run(run)));
            const count = itemAt(this.values, variable).length;
            if (lists.length !== count) this.fail(`"${name}" has ${count} values but ${lists.length} lists of windows`);
            return { variable, windows: lists };
          }),
        );
        return { ...id, kind, occupiers };
      }
      default:
        if (value.kind !== undefined) this.path.push("kind");
        return this.fail(
          `unknown rule kind "${kind}"; known are unary, forbid, clause, table, allDifferent, cardinality, linear, disjoint`,
        );
    }
  }

  private run(value: unknown): readonly [number, number] {
    const ends = this.list(value, "a run", (end) => this.whole(end));
    const [from, to] = ends;
    if (ends.length !== 2 || from === undefined || to === undefined || from > to)
      return this.fail("a run is two whole numbers, the smaller first");
    return [from, to];
  }

  private bounds(fields: Fields, read: (value: unknown) => number): { min?: number; max?: number } {
    return {
      ...(fields.min === undefined ? {} : { min: this.at("min", () => read(fields.min)) }),
      ...(fields.max === undefined ? {} : { max: this.at("max", () => read(fields.max)) }),
    };
  }

  private literals(value: unknown): Literal[] {
    return this.entries(value, "literals", (name, item) => {
      const variable = this.named(name, true);
      return { variable, values: this.valuesOf(variable, item) };
    });
  }

  /** A number multiplies a variable of numbers; a list gives the weight of each value in turn. */
  private sum(value: unknown, what: string, bounds: { min?: number; max?: number } = {}): ScaledSum {
    const written = this.entries(value, what, (name, item): WrittenTerm => {
      const variable = this.named(name, true);
      const values = itemAt(this.values, variable);
      if (Array.isArray(item)) {
        const weights = this.list(item, "weights", (w) => this.number(w));
        if (weights.length !== values.length) this.fail(`"${name}" has ${values.length} values but ${weights.length} weights`);
        return { variable, factor: 1, weights };
      }
      const factor = this.number(item);
      const weights = values.filter((v) => typeof v === "number");
      if (weights.length < values.length) this.fail(`the values of "${name}" are not all numbers; give a list of weights`);
      return { variable, factor, weights };
    });
    try {
      return scaledSum(written, bounds);
    } catch (error) {
      if (error instanceof SumMistake) return this.fail(error.message);
      throw error;
    }
  }

  private sameValues(value: unknown): number[] {
    return this.at("variables", () => {
      const variables = this.names(value);
      const first = JSON.stringify(this.values[variables[0] ?? 0]);
      if (!variables.every((v) => JSON.stringify(this.values[v]) === first))
        this.fail("these variables must all have the same values in the same order");
      return variables;
    });
  }

  private valuesOf(variable: number, value: unknown): number[] {
    return Array.isArray(value) ? this.list(value, "values", (item) => this.valueOf(variable, item)) : [this.valueOf(variable, value)];
  }

  private valueOf(variable: number, value: unknown): number {
    const found = itemAt(this.numbers, variable).get(this.value(value));
    if (found !== undefined) return found;
    const name = [...this.index].find(([, v]) => v === variable)?.[0];
    return this.fail(`"${name}" has no value ${JSON.stringify(value)}`);
  }

  private names(value: unknown): number[] {
    return this.list(value, "a list of variables", (item) => this.variable(item));
  }

  private variable(value: unknown): number {
    return this.named(String(this.value(value)));
  }

  private named(name: string, key = false): number {
    return this.index.get(name) ?? this.fail(`there is no variable "${name}"`, key);
  }

  private id(value: unknown): string {
    if ((typeof value === "string" && value !== "") || typeof value === "number") return String(value);
    return this.fail("an id is a text or a number; give one, or leave it out");
  }

  private value(value: unknown): Value {
    if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
    return this.fail("expected a text, a number, true or false");
  }

  private number(value: unknown): number {
    return typeof value === "number" ? value : this.fail("expected a number");
  }

  private whole(value: unknown): number {
    return typeof value === "number" && Number.isSafeInteger(value) ? value : this.fail("expected a whole number");
  }

  private list<T>(value: unknown, what: string, read: (item: unknown, index: number) => T): T[] {
    if (!Array.isArray(value)) return this.fail(`expected ${what} as a list`);
    return value.map((item: unknown, i) => this.at(i, () => read(item, i)));
  }

  private entries<T>(value: unknown, what: string, read: (name: string, item: unknown) => T): T[] {
    if (!isObject(value)) return this.fail(`expected ${what} as an object`);
    return Object.entries(value).map(([name, item]) => this.at(name, () => read(name, item)));
  }

  private fields(value: unknown, what: string, allowed: readonly string[], needed: readonly string[]): Fields {
    if (!isObject(value)) return this.fail(`${what} must be an object`);
    for (const name of Object.keys(value)) {
      if (!allowed.includes(name))
        this.at(name, () => this.fail(`${what} has no field "${name}"; it may have ${allowed.join(", ")}`, true));
    }
    for (const name of needed) if (value[name] === undefined) this.fail(`${what} lacks "${name}"`);
    return value;
  }

  /** Reads a value inside the one at hand; the path stays where a mistake was made. */
  private at<T>(step: Step, read: () => T): T {
    this.path.push(step);
    const result = read();
    this.path.pop();
    return result;
  }

  private fail(says: string, key = false): never {
    throw new Mistake(says, key);
  }
}
