// Alike: values that no rule still at work tells apart. Exchanging two of them everywhere turns solutions into solutions, so a part of the
// problem is known by what its values are like rather than by which they are, and of alike values one is counted for all
// (interchangeability: Freuder, "Eliminating Interchangeable Values in Constraint Satisfaction Problems", AAAI 1991). A machine whose
// slots are of two kinds has as many states as there are ways to fill so many of each kind, not as there are sets of slots.
//
// Variables bound by an all-different rule share their values: such a value is exchanged for all of them at once. So a value's likeness
// is the list, over the variables of its family that still have it, of what each rule sees in it there.
import type { Engine } from "./engine.js";
import { Keys } from "./keys.js";
import type { Arc } from "./pairs.js";
import type { Part } from "./parts.js";
import type { Propagator } from "./propagator.js";
import { Different } from "./rules/different.js";

export class Alike {
  /** Likenesses seen so far; a likeness is known by its slot. */
  private readonly seen = new Keys();
  private readonly family: Int32Array;
  private readonly rowIds = new Map<Arc, Int32Array>();
  private readonly arcsOf: Arc[][];
  private readonly clausesOf: number[][];
  private readonly propagatorsOf: number[][];
  private readonly has: ReadonlySet<number>[];
  private readonly lists: number[][] = [];
  /** For each variable and value the likeness found by the last `describe`. */
  readonly of: Int32Array[];

  constructor(private readonly engine: Engine) {
    const { count, propagators, store } = engine;
    this.family = Int32Array.from({ length: count }, (_, v) => v);
    for (const rule of propagators) {
      if (!(rule instanceof Different) || rule.variables.length === 0) continue;
      const joined = new Set(rule.variables.map((v) => this.family[v]!));
      const first = Math.min(...joined);
      for (let v = 0; v < count; v++) if (joined.has(this.family[v]!)) this.family[v] = first;
    }
    this.arcsOf = store.sizes.map(() => []);
    this.clausesOf = store.sizes.map(() => []);
    this.propagatorsOf = store.sizes.map(() => []);
    this.has = propagators.map((rule) => new Set(rule.variables));
    this.of = store.sizes.map((size) => new Int32Array(size));
  }

  /** Adds to `key`, for each family of the part's variables, the sorted likenesses of its values. */
  describe(part: Part, key: number[]): void {
    this.gather(part);
    const families = new Map<number, number[]>();
    for (const v of part.variables) {
      const members = families.get(this.family[v]!);
      if (members) members.push(v);
      else families.set(this.family[v]!, [v]);
    }
    for (const [family, members] of families) {
      key.push(-2, family);
      const start = key.length;
      this.likenesses(members, key);
      sortFrom(key, start);
    }
  }

  /** How many rules tie a variable of the part described last, and how many likenesses its values have. */
  ties(variable: number): number {
    return this.arcsOf[variable]!.length + this.clausesOf[variable]!.length + this.propagatorsOf[variable]!.length;
  }

  kinds(variable: number): number {
    const seen = new Set<number>();
    for (const value of this.engine.store.values(variable)) seen.add(this.of[variable]![value]!);
    return seen.size;
  }

  /** Each rule at work on a variable of the part described last, as a function from the value to what it sees in it. */
  forEachRule(variable: number, visit: (sees: (value: number) => number, rule?: Propagator) => void): void {
    const { clauses, propagators } = this.engine;
    for (const arc of this.arcsOf[variable]!) {
      const rows = this.rowsOf(arc);
      visit((value) => rows[value]!);
    }
    for (const c of this.clausesOf[variable]!) visit((value) => clauses.sees(clauses.clauses[c]!, variable, value));
    for (const p of this.propagatorsOf[variable]!) visit((value) => propagators[p]!.trait(variable, value), propagators[p]);
  }

  private likenesses(members: readonly number[], key: number[]): void {
    const { store } = this.engine;
    const { lists } = this;
    const values: number[] = [];
    for (const v of members) {
      const start = store.start[v]!;
      for (let w = 0; w < store.length[v]!; w++) {
        for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
          const value = (w << 5) + 31 - Math.clz32(word & -word);
          lists[value] ??= [];
          const list = lists[value]!;
          if (list.length === 0) values.push(value);
          this.see(v, value, list);
        }
      }
    }
    for (const value of values) {
      const slot = this.seen.slot(lists[value]!);
      lists[value]!.length = 0;
      key.push(slot);
      for (const v of members) if (value < this.of[v]!.length) this.of[v]![value] = slot;
    }
  }

  /** What each rule at work sees in one value of one variable. */
  private see(variable: number, value: number, list: number[]): void {
    const { clauses, propagators } = this.engine;
    list.push(variable);
    for (const arc of this.arcsOf[variable]!) list.push(this.rowsOf(arc)[value]!);
    for (const c of this.clausesOf[variable]!) list.push(clauses.sees(clauses.clauses[c]!, variable, value));
    for (const p of this.propagatorsOf[variable]!) list.push(propagators[p]!.trait(variable, value));
  }

  private gather(part: Part): void {
    for (const v of part.variables) {
      this.arcsOf[v]!.length = 0;
      this.clausesOf[v]!.length = 0;
      this.propagatorsOf[v]!.length = 0;
    }
    for (const arc of part.arcs) this.arcsOf[arc.from]!.push(arc);
    for (const c of part.clauses) for (const v of this.engine.clauses.clauses[c]!.variables) this.clausesOf[v]!.push(c);
    for (const p of part.propagators) for (const v of part.variables) if (this.has[p]!.has(v)) this.propagatorsOf[v]!.push(p);
    // Clauses reach variables of other parts, too; those lists are cleared when their own part is described.
  }

  /** Equal rows of a table have equal numbers. */
  private rowsOf(arc: Arc): Int32Array {
    const known = this.rowIds.get(arc);
    if (known) return known;
    const { sizes, length } = this.engine.store;
    const width = length[arc.to]!;
    const ids = new Map<string, number>();
    const rows = Int32Array.from({ length: sizes[arc.from]! }, (_, value) => {
      const at = arc.forward + value * width;
      const row = this.engine.pairs.rows.subarray(at, at + width).join();
      if (!ids.has(row)) ids.set(row, ids.size);
      return ids.get(row)!;
    });
    this.rowIds.set(arc, rows);
    return rows;
  }
}

function sortFrom(list: number[], start: number): void {
  for (let i = start + 1; i < list.length; i++) {
    const item = list[i]!;
    let j = i - 1;
    while (j >= start && list[j]! > item) {
      list[j + 1] = list[j]!;
      j--;
    }
    list[j + 1] = item;
  }
}
