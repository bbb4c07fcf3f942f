// The cards of a build over the releases of its firmware.
import type { Build } from "../records/index.js";
import { barOf, type CardBar } from "./bar.js";
import type { Cells } from "./cells.js";
import { type Context, recordLink } from "./common.js";

/** Each card alone on the build's own board revision, under every release that runs there; it shows why one release is not enough. */
export function cardBars(ctx: Context, cells: Cells, build: Build): readonly CardBar[] {
  const { revision } = build;
  const family = build.firmware ?? ctx.catalogue.boards.get(build.board)?.firmware[0];
  if (typeof revision !== "string" || family === undefined) return [];
  const columns = cells.columns(build.board, revision).filter((c) => c.family === family);
  if (columns.length < 2) return [];
  return [...new Set(build.cards.map((c) => c.card))].map((card) => ({
    card: recordLink(ctx.catalogue, "card", card),
    bar: barOf(columns.map(({ version }) => cells.at({ board: build.board, revision, family, version, card }))),
  }));
}
