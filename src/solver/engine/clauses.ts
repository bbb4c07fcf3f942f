// Clauses: at least one literal holds. A literal is a variable and a bitset of values; it is open while the domain has one of them.
// Each clause is watched through two open literals (Moskewicz and others, "Chaff", 2001): only when one of the two closes is the clause
// looked at, and stepping back needs no repair. Nogoods learnt between restarts live here too.
import type { Solution } from "../model/problem.js";
import type { Store } from "./store.js";

export interface Clause {
  readonly variables: readonly number[];
  /** Where each literal's bitset starts in the clauses' `words`. */
  readonly masks: readonly number[];
  readonly selector: number;
  /** Positions of the two watched literals. */
  one: number;
  two: number;
  /** Of a long clause, where each variable stands; made when first asked for. */
  positions?: ReadonlyMap<number, number>;
}

/** Longer clauses are looked up by a map. */
const long = 16;

export class ClauseSet {
  failed: readonly number[] = [];
  readonly clauses: Clause[] = [];
  private words = new Int32Array(1 << 10);
  private used = 0;
  private readonly watching: Clause[][];
  /** The clauses of each variable, gathered when first asked for; learnt ones follow from the rest and may be missing. */
  private containing: Clause[][] | undefined;

  constructor(
    private readonly store: Store,
    private readonly on: Uint8Array,
  ) {
    this.watching = store.sizes.map(() => []);
  }

  /** The variables are distinct; the masks are copied. Takes part from the next `wake` or `attach` on. */
  add(variables: readonly number[], masks: readonly Int32Array[], selector = -1): Clause {
    const places = variables.map((variable, i) => this.keep(masks[i]!, this.store.length[variable]!));
    const clause: Clause = { variables, masks: places, selector, one: 0, two: 0 };
    this.clauses.push(clause);
    return clause;
  }

  private keep(mask: Int32Array, width: number): number {
    const at = this.used;
    this.used += width;
    if (this.used > this.words.length) {
      const larger = new Int32Array(this.words.length * 2 + width);
      larger.set(this.words);
      this.words = larger;
    }
    for (let w = 0; w < width; w++) this.words[at + w] = mask[w]!;
    return at;
  }

  /** Sets the watches of all clauses whose selector is on, and applies those with one open literal. */
  wake(): boolean {
    for (const list of this.watching) list.length = 0;
    for (const clause of this.clauses) {
      if ((clause.selector < 0 || this.on[clause.selector] === 1) && !this.attach(clause)) return false;
    }
    return true;
  }

  attach(clause: Clause): boolean {
    const one = this.seek(clause, -1, -1);
    if (one < 0) return this.fail(clause);
    const two = this.seek(clause, one, -1);
    clause.one = one;
    clause.two = two < 0 ? (one === 0 ? clause.variables.length - 1 : 0) : two;
    this.watching[clause.variables[one]!]!.push(clause);
    if (clause.two !== one) this.watching[clause.variables[clause.two]!]!.push(clause);
    return two >= 0 || this.apply(clause, one);
  }

  /** Drops the clauses added since there were so many. */
  forget(count: number): void {
    if (this.clauses.length === count) return;
    this.used = this.clauses[count]!.masks[0] ?? this.used;
    const gone = new Set(this.clauses.splice(count));
    for (const [v, list] of this.watching.entries()) this.watching[v] = list.filter((clause) => !gone.has(clause));
  }

  /** Looks at the clauses watched through a variable that changed. */
  propagate(variable: number): boolean {
    const list = this.watching[variable]!;
    let kept = 0;
    for (let i = 0; i < list.length; i++) {
      const clause = list[i]!;
      const closed = clause.variables[clause.one] === variable ? clause.one : clause.two;
      if (clause.variables[closed] !== variable) continue;
      if (this.isOpen(clause, closed)) {
        list[kept++] = clause;
        continue;
      }
      const other = closed === clause.one ? clause.two : clause.one;
      if (this.isTrue(clause, other)) {
        list[kept++] = clause;
        continue;
      }
      const next = this.seek(clause, closed, other);
      if (next < 0) {
        list[kept++] = clause;
        if (this.apply(clause, other)) continue;
        while (++i < list.length) list[kept++] = list[i]!;
        list.length = kept;
        return this.fail(clause);
      }
      clause.one = next;
      clause.two = other;
      this.watching[clause.variables[next]!]!.push(clause);
      if (this.isOpen(clause, other)) continue;
      const third = this.seek(clause, next, closed);
      if (third >= 0) {
        clause.two = third;
        this.watching[clause.variables[third]!]!.push(clause);
      } else this.apply(clause, next);
    }
    list.length = kept;
    return true;
  }

  /** Whether a complete assignment keeps the clauses one variable is in. */
  accept(variable: number, solution: Solution): boolean {
    this.containing ??= this.index();
    for (const clause of this.containing[variable]!) {
      if (clause.selector >= 0 && this.on[clause.selector] === 0) continue;
      let holds = false;
      for (let p = 0; p < clause.variables.length && !holds; p++) {
        const value = solution[clause.variables[p]!]!;
        holds = ((this.words[clause.masks[p]! + (value >>> 5)]! >>> (value & 31)) & 1) === 1;
      }
      if (!holds) return false;
    }
    return true;
  }

  private index(): Clause[][] {
    const index: Clause[][] = this.store.sizes.map(() => []);
    for (const clause of this.clauses) for (const v of clause.variables) index[v]!.push(clause);
    return index;
  }

  /** For the counting diagram: joins the variables of the open literals, unless some literal is sure to hold. */
  couple(clause: Clause, join: (one: number, two: number) => void): boolean {
    if (clause.selector >= 0 && this.on[clause.selector] === 0) return false;
    let first = -1;
    for (let p = 0; p < clause.variables.length; p++) if (this.isTrue(clause, p)) return false;
    for (let p = 0; p < clause.variables.length; p++) {
      if (!this.isOpen(clause, p)) continue;
      if (first < 0) first = clause.variables[p]!;
      else join(first, clause.variables[p]!);
    }
    return first >= 0;
  }

  /** For the counting diagram: 1 when the value makes the clause hold. */
  sees(clause: Clause, variable: number, value: number): number {
    return (this.words[clause.masks[positionIn(clause, variable)]! + (value >>> 5)]! >>> (value & 31)) & 1;
  }

  isOpenOn(clause: Clause, variable: number): boolean {
    return this.isOpen(clause, positionIn(clause, variable));
  }

  private isOpen(clause: Clause, position: number): boolean {
    const variable = clause.variables[position]!;
    const mask = clause.masks[position]!;
    const { cells, start, length } = this.store;
    for (let w = 0; w < length[variable]!; w++) if ((cells[start[variable]! + w]! & this.words[mask + w]!) !== 0) return true;
    return false;
  }

  private isTrue(clause: Clause, position: number): boolean {
    const variable = clause.variables[position]!;
    const mask = clause.masks[position]!;
    const { cells, start, length } = this.store;
    for (let w = 0; w < length[variable]!; w++) if ((cells[start[variable]! + w]! & ~this.words[mask + w]!) !== 0) return false;
    return true;
  }

  /** An open literal other than the two given; -1 when there is none. */
  private seek(clause: Clause, but: number, nor: number): number {
    for (let p = 0; p < clause.variables.length; p++) if (p !== but && p !== nor && this.isOpen(clause, p)) return p;
    return -1;
  }

  private apply(clause: Clause, position: number): boolean {
    return this.store.keepAll(clause.variables[position]!, this.words, clause.masks[position]!) || this.fail(clause);
  }

  private fail(clause: Clause): false {
    this.failed = clause.variables;
    return false;
  }
}

function positionIn(clause: Clause, variable: number): number {
  if (clause.variables.length <= long) return clause.variables.indexOf(variable);
  clause.positions ??= new Map(clause.variables.map((v, i) => [v, i]));
  return clause.positions.get(variable) ?? -1;
}
