// The matrix in a club that grows: what one cell costs, and what is kept. Processor time, not the clock's, so that a busy machine
// does not spoil it. Both ratios must stay near 1: a cell may not cost more because the club is larger or because many were asked before.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { cell } from "../../src/planning/index.js";
import { Random } from "../support/solver/random.js";
import { type ClubSize, largeClub } from "./large-club.js";

export const clubSizes: readonly ClubSize[] = [
  { boards: 10, revisions: 3, cards: 500, versions: 40 },
  { boards: 33, revisions: 3, cards: 1600, versions: 130 },
  { boards: 100, revisions: 3, cards: 5000, versions: 400 },
];

export interface MatrixRow {
  readonly club: string;
  /** Cells the whole matrix would have. */
  readonly whole: number;
  readonly asked: number;
  readonly msPerCell: number;
  /** What a cell of the second half costs, as a multiple of one of the first half. */
  readonly laterRatio: number;
  /** Heap kept by asking, in MiB; undefined when the collector cannot be called. */
  readonly keptMiB: number | undefined;
  readonly verdicts: Readonly<Record<string, number>>;
}

/** Least of several rounds over different random cells: the figure that other work on the machine disturbs least. */
export function measureMatrix(size: ClubSize, asked: number, rounds = 3): MatrixRow {
  const catalogue = largeClub(size);
  const [boards, cards] = [[...catalogue.boards.values()], [...catalogue.cards.keys()]];
  const versions = catalogue.firmware.get("line")!.versions;
  const random = new Random(99);
  const verdicts: Record<string, number> = {};
  const some = (count: number): number => {
    const before = process.cpuUsage();
    for (let i = 0; i < count; i++) {
      const board = random.pick(boards);
      const { verdict } = cell(catalogue, {
        board: board.id,
        revision: random.pick(board.revisions).id,
        family: "line",
        firmware: random.pick(versions).id,
        card: random.pick(cards),
      });
      verdicts[verdict] = (verdicts[verdict] ?? 0) + 1;
    }
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000 / count;
  };
  some(Math.min(200, asked));
  const heap = heapNow();
  const first = Math.min(...Array.from({ length: rounds }, () => some(Math.ceil(asked / 2 / rounds))));
  const later = Math.min(...Array.from({ length: rounds }, () => some(Math.ceil(asked / 2 / rounds))));
  const after = heapNow();
  return {
    club: `${size.boards * size.revisions} board revisions, ${size.cards} cards, ${size.versions} versions`,
    whole: size.boards * size.revisions * size.cards * size.versions,
    asked,
    msPerCell: Math.min(first, later),
    laterRatio: later / first,
    keptMiB: heap === undefined || after === undefined ? undefined : (after - heap) / 2 ** 20,
    verdicts,
  };
}

/** Heap in use once all that can go is gone; undefined when the collector cannot be had. */
function heapNow(): number | undefined {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("globalThis.gc") as (() => void) | undefined;
  if (!collect) return undefined;
  collect();
  return process.memoryUsage().heapUsed;
}

export const most = { growth: 1.6, later: 1.6, keptMiB: 16 } as const;

/** The growth table as text, and what of it is out of bounds. */
export function matrixBench(asked = 1200): { readonly table: string; readonly failed: readonly string[] } {
  const rows = clubSizes.map((size) => measureMatrix(size, asked));
  const failed = [...complaints(rows)];
  const lines = rows.map((r) =>
    [
      r.club.padEnd(52),
      r.whole.toLocaleString("en").padStart(13),
      r.msPerCell.toFixed(2).padStart(11),
      (r.msPerCell / rows[0]!.msPerCell).toFixed(2).padStart(9),
      r.laterRatio.toFixed(2).padStart(9),
      (r.keptMiB === undefined ? "-" : r.keptMiB.toFixed(1)).padStart(9),
    ].join(" "),
  );
  const head = `${"club".padEnd(52)} ${"whole matrix".padStart(13)} ${"ms a cell".padStart(11)} ${"growth".padStart(9)} ${"later".padStart(9)} ${"kept MiB".padStart(9)}`;
  return { table: [head, ...lines].join("\n"), failed };
}

export function* complaints(rows: readonly MatrixRow[]): Generator<string> {
  for (const r of rows) {
    const growth = r.msPerCell / rows[0]!.msPerCell;
    if (growth > most.growth) yield `${r.club}: a cell costs ${growth.toFixed(2)} times what it costs in the small club.`;
    if (r.laterRatio > most.later) yield `${r.club}: later cells cost ${r.laterRatio.toFixed(2)} times what the first ones cost.`;
    if ((r.keptMiB ?? 0) > most.keptMiB) yield `${r.club}: asking kept ${r.keptMiB!.toFixed(1)} MiB.`;
  }
}
