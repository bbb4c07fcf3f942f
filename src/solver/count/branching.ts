// Branching, for the count: which variable of a component to split, and into which blocks of values. Not always into single values: what ties
// a variable to the others is what their rules see of its values, and often that is little (a card is in or out, in this group of slots or
// another). Split into blocks that a rule sees no difference in, that rule is settled at once, and the component falls asunder sooner.

import { AllDifferent } from "../constraints/all-different.js";
import type { Engine } from "../engine/engine.js";
import type { Solution } from "../model/problem.js";
import type { Component } from "./components.js";
import type { InterchangeableValues } from "./interchangeable.js";
import { separator } from "./separator.js";

export interface Block {
  readonly mask: Int32Array;
  /** So many blocks are like this one and need not be looked at. */
  readonly times: bigint;
}

export interface Split {
  readonly variable: number;
  readonly blocks: readonly Block[];
}

/** A way to split a variable: for each of its values, in order, its block; or each by itself, of interchangeable ones one for all. */
interface Offer {
  readonly variable: number;
  readonly labels: readonly number[];
  readonly single: boolean;
}

/** How rules part the values; `same` rules part them just so, and `settled` are done with once they are so parted. */
interface Partition {
  readonly labels: readonly number[];
  readonly blocks: number;
  same: number;
  settled: number;
}

export class Branching {
  constructor(
    private readonly engine: Engine,
    private readonly interchangeable: InterchangeableValues,
    private readonly wanted?: Uint8Array,
  ) {}

  /** The split that costs least for what it settles; of a component just described. Variables that need not be told apart come last. Of blocks
   * that are interchangeable the one with the known solution's value is looked at.
   */
  choose(component: Component, known?: Solution): Split {
    const cut = this.wanted ? undefined : separator(component);
    if (cut !== undefined) {
      const labels = this.engine.store.values(cut).map((value) => this.interchangeable.of[cut]![value]!);
      return this.split({ variable: cut, labels, single: true }, known?.[cut]);
    }
    let best: Offer | undefined;
    let least = Number.POSITIVE_INFINITY;
    const anyWanted = this.wanted !== undefined && component.variables.some((v) => this.wanted![v] === 1);
    for (const variable of component.variables) {
      if (anyWanted && this.wanted![variable] === 0) continue;
      const ties = this.interchangeable.ties(variable);
      if (price(2, ties) >= least) continue;
      const values = this.engine.store.values(variable);
      const single = 2 * price(this.interchangeable.kinds(variable), ties);
      if (single < least)
        [best, least] = [{ variable, labels: values.map((value) => this.interchangeable.of[variable]![value]!), single: true }, single];
      for (const { labels, blocks, settled } of this.partitions(variable, values)) {
        if (price(blocks, settled) < least) [best, least] = [{ variable, labels, single: false }, price(blocks, settled)];
      }
    }
    return this.split(best!, known?.[best!.variable]);
  }

  /** The ways rules part the values, each with how many rules it settles: those that see no more than its blocks tell apart. */
  private partitions(variable: number, values: readonly number[]): readonly Partition[] {
    const different: Partition[] = [];
    for (let rule = this.interchangeable.ties(variable) - 1; rule >= 0; rule--) {
      if (this.interchangeable.rule(variable, rule) instanceof AllDifferent) continue;
      const partition = partitionBy(values, (value) => this.interchangeable.sees(variable, rule, value));
      if (partition.blocks === 1) continue;
      const known = different.find((one) => one.blocks === partition.blocks && equal(one.labels, partition.labels));
      if (known) known.same++;
      else different.push(partition);
    }
    for (const one of different) {
      for (const other of different) if (other.blocks <= one.blocks && follows(other.labels, one.labels)) one.settled += other.same;
    }
    return different.filter((one) => one.blocks < values.length);
  }

  private split({ variable, labels, single }: Offer, known: number | undefined): Split {
    const values = this.engine.store.values(variable);
    const width = this.engine.store.length[variable]!;
    const blocks = new Map<number, { mask: Int32Array; times: bigint }>();
    values.forEach((value, i) => {
      const block = blocks.get(labels[i]!);
      if (block && single) {
        block.times++;
        if (value !== known) return;
        block.mask.fill(0);
        block.mask[value >>> 5]! |= 1 << (value & 31);
      } else if (block) block.mask[value >>> 5]! |= 1 << (value & 31);
      else {
        const mask = new Int32Array(width);
        mask[value >>> 5]! |= 1 << (value & 31);
        blocks.set(labels[i]!, { mask, times: 1n });
      }
    });
    return { variable, blocks: [...blocks.values()] };
  }
}

/** What it costs to look at so many blocks, for so many rules settled. */
const price = (blocks: number, settled: number): number => blocks / (1 + settled * settled);

/** Labels are numbered as they come, so that equal partitions have equal lists. */
function partitionBy(values: readonly number[], sees: (value: number) => number): Partition {
  const seen: number[] = [];
  const labels = values.map((value) => {
    const what = sees(value);
    const known = seen.indexOf(what);
    return known < 0 ? seen.push(what) - 1 : known;
  });
  return { labels, blocks: seen.length, same: 1, settled: 0 };
}

function equal(one: readonly number[], two: readonly number[]): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] !== two[i]) return false;
  return true;
}

/** Whether equal labels in `fine` mean equal labels in `coarse`. */
function follows(coarse: readonly number[], fine: readonly number[]): boolean {
  const of: number[] = [];
  for (let i = 0; i < fine.length; i++) {
    const known = of[fine[i]!];
    if (known === undefined) of[fine[i]!] = coarse[i]!;
    else if (known !== coarse[i]) return false;
  }
  return true;
}
