// The tally: counts solutions part by part, each part looked up before it is worked on and known by what its values are like (alike.ts).
// It keeps numbers only; diagram.ts keeps the solutions themselves. When the budget ends it unwinds with what has been counted so far:
// every branch finished is a certain number of solutions, and along the path of one known solution every part has at least one.

import { AllDifferent } from "../constraints/all-different.js";
import type { Engine } from "../engine/engine.js";
import type { Solution } from "../model/problem.js";
import { StepBudget } from "../model/step-budget.js";
import { Alike } from "./alike.js";
import { Branching } from "./branching.js";
import { Keys } from "./keys.js";
import { type Part, Splitter } from "./parts.js";
import { Permanents } from "./permanents.js";

/** Parts in parts in parts: deeper, the program's own stack would end before the budget does. */
const deepest = 1_500;

export class Tally {
  /** The count is exact; false: at least so many. */
  exact = true;
  private readonly keys = new Keys();
  private readonly counts: bigint[] = [];
  private readonly splitter: Splitter;
  private readonly alike: Alike;
  private readonly branching: Branching;
  private readonly wanted: Uint8Array | undefined;
  private steps = new StepBudget();
  private known: Solution = [];
  private depth = 0;
  private readonly scratch: number[] = [];
  private permanents: Permanents | undefined;

  /** With `project` only these variables' values are told apart: a part without any of them counts once if it can be filled at all. */
  constructor(
    private readonly engine: Engine,
    project?: readonly number[],
  ) {
    this.splitter = new Splitter(engine);
    this.alike = new Alike(engine);
    if (project) {
      this.wanted = new Uint8Array(engine.count);
      for (const v of project) this.wanted[v] = 1;
    }
    this.branching = new Branching(engine, this.alike, this.wanted);
  }

  /** The solutions of the engine as it stands (propagated), of which one is known. What is looked up stays good for later counts. */
  count(steps: StepBudget, known: Solution): bigint {
    this.exact = true;
    this.steps = steps;
    this.known = known;
    this.depth = 0;
    return this.rest(this.splitter.whole(), true);
  }

  /** For each variable and value of the engine as it stands a number that alike values share. */
  likenesses(): Int32Array[] {
    const { parts } = this.splitter.split(this.splitter.whole());
    const of = this.engine.store.sizes.map((size) => new Int32Array(size).fill(-1));
    for (const part of parts) {
      this.alike.describe(part, [], 0);
      for (const v of part.variables) of[v]!.set(this.alike.of[v]!);
    }
    return of;
  }

  /** The solutions of what is left of a part as the store stands. */
  private rest(whole: Part, along: boolean): bigint {
    const { parts, free } = this.splitter.split(whole);
    let product = 1n;
    for (const v of free) if (this.wanted?.[v] !== 0) product *= BigInt(this.engine.store.size(v));
    for (const part of parts) {
      if (!this.exact && !along) return 0n;
      if (this.exact) product *= this.part(part, along);
      if (product === 0n) return product;
    }
    return product;
  }

  private part(part: Part, along: boolean): bigint {
    const slot = this.keys.slot(this.scratch, this.key(part));
    if (this.keys.get(slot) >= 0) return this.counts[this.keys.get(slot)]!;
    const ways = this.assigned(part);
    if (ways !== undefined) {
      this.keys.set(slot, this.counts.push(ways) - 1);
      return ways;
    }
    if (this.depth >= deepest) {
      this.exact = false;
      return along ? 1n : 0n;
    }
    this.depth++;
    const sum = this.branched(part, along);
    this.depth--;
    if (!this.exact) return sum > 0n || !along ? sum : 1n;
    this.keys.set(slot, this.counts.push(sum) - 1);
    return sum;
  }

  /** The solutions of a part, block by block of one of its variables. */
  private branched(part: Part, along: boolean): bigint {
    const { engine } = this;
    const { variable, blocks } = this.branching.choose(part, along ? this.known : undefined);
    const once = this.wanted?.[variable] === 0;
    const home = along ? blocks.findIndex(({ mask }) => bit(mask, this.known[variable]!)) : -1;
    let sum = 0n;
    for (let i = -1; i < blocks.length; i++) {
      // The known solution's own block comes first.
      const at = i < 0 ? home : i;
      if (at < 0 || (i >= 0 && at === home)) continue;
      if (!this.steps.spend()) {
        this.exact = false;
        break;
      }
      const { mask, times } = blocks[at]!;
      const mark = engine.store.mark();
      const found = engine.settle(engine.store.keepAll(variable, mask)) ? this.rest(part, at === home) : 0n;
      engine.store.undo(mark);
      if (found > 0n && once) {
        sum = 1n;
        break;
      }
      sum += found * times;
      if (!this.exact) break;
    }
    return sum;
  }

  /** The count of a part that nothing but one all-different rule holds together. */
  private assigned(part: Part): bigint | undefined {
    if (part.arcs.length > 0 || part.clauses.length > 0 || part.propagators.length !== 1) return undefined;
    const rule = this.engine.propagators[part.propagators[0]!]!;
    if (!(rule instanceof AllDifferent) || part.variables.some((v) => this.wanted?.[v] === 0)) return undefined;
    const { cells, start, length } = this.engine.store;
    this.permanents ??= new Permanents();
    const domains = part.variables.map((v) => cells.subarray(start[v]!, start[v]! + length[v]!));
    return this.permanents.count(domains, rule.shared);
  }

  /** Writes what tells a part from others to `scratch` and gives its length. */
  private key(part: Part): number {
    const { store, propagators, count } = this.engine;
    const key = this.scratch;
    let end = this.alike.describe(part, key, 0);
    key[end++] = -1;
    for (let i = 0; i < part.arcs.length; i += 2) key[end++] = part.arcs[i]!.from * count + part.arcs[i]!.to;
    key[end++] = -1;
    for (const c of part.clauses) key[end++] = c;
    key[end++] = -1;
    for (const p of part.propagators) {
      key[end++] = p;
      end = propagators[p]!.residue(store, key, end);
    }
    return end;
  }
}

const bit = (mask: Int32Array, value: number): boolean => ((mask[value >>> 5]! >>> (value & 31)) & 1) === 1;
