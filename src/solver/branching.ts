// Branching, for the count: which variable of a part to split, and into which blocks of values. Not always into single values: what ties
// a variable to the others is what their rules see of its values, and often that is little (a card is in or out, in this group of slots or
// another). Split into blocks that a rule sees no difference in, that rule is settled at once, and the part falls asunder sooner.
import type { Alike } from "./alike.js";
import type { Engine } from "./engine.js";
import type { Part } from "./parts.js";
import type { Solution } from "./problem.js";
import { Different } from "./rules/different.js";

export interface Block {
  readonly mask: Int32Array;
  /** So many blocks are like this one and need not be looked at. */
  readonly times: bigint;
}

export interface Split {
  readonly variable: number;
  readonly blocks: readonly Block[];
}

/** A way to split a variable: for each of its values, in order, the number of its block. */
interface Offer {
  readonly variable: number;
  readonly labels: readonly number[];
  readonly single: boolean;
}

export class Branching {
  constructor(
    private readonly engine: Engine,
    private readonly alike: Alike,
    private readonly wanted?: Uint8Array,
  ) {}

  /** The split that costs least for what it settles; of a part just described. Variables that need not be told apart come last. Of blocks
   * that are alike the one with the known solution's value is looked at.
   */
  choose(part: Part, known?: Solution): Split {
    let best: Offer | undefined;
    let least = Number.POSITIVE_INFINITY;
    const anyWanted = this.wanted !== undefined && part.variables.some((v) => this.wanted![v] === 1);
    for (const variable of part.variables) {
      if (anyWanted && this.wanted![variable] === 0) continue;
      for (const { offer, blocks, settled } of this.offers(variable)) {
        const score = ((offer.single ? 2 : 1) * blocks) / (1 + settled * settled);
        if (score < least) [best, least] = [offer, score];
      }
    }
    return this.split(best!, known?.[best!.variable]);
  }

  private *offers(variable: number): Generator<{ offer: Offer; blocks: number; settled: number }> {
    const values = this.engine.store.values(variable);
    const ties = this.alike.ties(variable);
    const like = values.map((value) => this.alike.of[variable]![value]!);
    yield { offer: { variable, labels: like, single: true }, blocks: new Set(like).size, settled: ties };
    const groups = new Map<string, { labels: number[]; blocks: number; settled: number }>();
    this.alike.forEachRule(variable, (sees, rule) => {
      if (rule instanceof Different) return;
      const { labels, blocks } = parted(values.map(sees));
      const key = labels.join();
      const group = groups.get(key);
      if (group) group.settled++;
      else groups.set(key, { labels, blocks, settled: 1 });
    });
    const all = [...groups.values()];
    for (const group of all) {
      if (group.blocks === 1 || group.blocks === values.length) continue;
      // A rule that sees less than the blocks tell apart is settled with them.
      let settled = 0;
      for (const other of all)
        if (other.blocks > 1 && other.blocks <= group.blocks && follows(other.labels, group.labels)) settled += other.settled;
      yield { offer: { variable, labels: group.labels, single: false }, blocks: group.blocks, settled };
    }
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

/** Labels numbered as they come, so that equal partings are equal lists. */
function parted(seen: readonly number[]): { labels: number[]; blocks: number } {
  const names = new Map<number, number>();
  const labels = seen.map((label) => {
    if (!names.has(label)) names.set(label, names.size);
    return names.get(label)!;
  });
  return { labels, blocks: names.size };
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
