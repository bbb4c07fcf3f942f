// A card as it lies on the bench: its outline to scale with edge and back plate, and its jumper and lever blocks under it,
// each with the place it left the factory with.
import { dashes, drawing, join, nothing, rect, type Svg, text, tone, unitsFor, weight, widthOf, wrap } from "./svg.js";

/** A jumper, lever or solder block: a box for each position it may have. Which posts or levers make a position no record says as data. */
export interface SettingBlock {
  readonly id: string;
  readonly positions: readonly { readonly id: string; readonly factory: boolean }[];
}

export interface CardFace {
  readonly name: string;
  /** In millimetres; left out where nobody wrote it down. */
  readonly length?: number | undefined;
  readonly height?: number | undefined;
  /** Name of its edge: "long", "short". */
  readonly edge: string;
  /** It fills the opening in the back of the case. */
  readonly plate: boolean;
  readonly blocks: readonly SettingBlock[];
}

const placeTall = 24;

export function cardFace(card: CardFace, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const [length, height] = [card.length ?? 200, card.height ?? 100];
  const scale = Math.min((width - 90) / Math.max(length, 330), 0.8);
  const [wide, tall] = [length * scale, height * scale];
  const [left, top] = [14, 10];
  const said = [
    card.length === undefined ? "length not known" : `${card.length}\u202fmm long`,
    card.height === undefined ? "height not known" : `${card.height}\u202fmm high`,
  ].join(", ");
  const outline = rect(
    left,
    top,
    wide,
    tall,
    card.length === undefined || card.height === undefined ? { "stroke-dasharray": dashes } : tone,
  );
  const plate = card.plate ? rect(left - 5, top - 6, 5, tall + 14, { fill: "currentColor" }) : nothing;
  const edgeWide = Math.min(wide * 0.7, wide - 20);
  const teeth = Math.max(4, Math.floor(edgeWide / 5));
  const edge = join(
    Array.from({ length: teeth }, (_, i) =>
      rect(left + 12 + i * 5, top + tall, 2.5, 7, { fill: "currentColor", "stroke-width": weight.thin }),
    ),
  );
  const about = `${card.plate ? "Back plate on the left. " : ""}Edge: ${card.edge}. ${said[0]?.toUpperCase()}${said.slice(1)}.`;
  const lines = wrap(about, width - left - 4, { small: true });
  const under = top + tall + 24 + (lines.length - 1) * 13;
  const words = join(lines.map((l, i) => text(left, top + tall + 24 + i * 13, l, { small: true })));
  const blocks = flow(card.blocks, left, under + 12, width);
  const legendLines = card.blocks.length > 0 ? ["One box a position, not the posts or levers.", "Filled: as it left the factory."] : [];
  const legend = join(legendLines.map((l, i) => text(left, blocks.bottom + 12 + i * 13, l, { small: true })));
  const blockSays = card.blocks.map((b) => {
    const factory = b.positions.find((p) => p.factory);
    return `${b.id} has the places ${b.positions.map((p) => p.id).join(", ")}${factory ? `, from the factory ${factory.id}` : ""}.`;
  });
  return drawing(
    {
      prefix,
      title: `${card.name}, as it lies on the bench`,
      says: [`A card with the ${card.edge} edge, ${said}${card.plate ? ", with a back plate" : ""}.`, ...blockSays].join(" "),
      width,
      height: card.blocks.length > 0 ? blocks.bottom + 33 : under + 8,
      class: "dw-card",
    },
    outline,
    plate,
    edge,
    words,
    blocks.drawn,
    legend,
  );
}

/** Blocks side by side, in as many lines as they need. */
function flow(blocks: readonly SettingBlock[], left: number, top: number, width: number): { drawn: Svg; bottom: number } {
  const drawn: Svg[] = [];
  let [x, y] = [left, top];
  for (const block of blocks) {
    const step = Math.max(20, ...block.positions.map((p) => widthOf(p.id, { mono: true, small: true }) + 8));
    const needs = Math.max(widthOf(block.id, { mono: true, bold: true }), step * block.positions.length);
    if (x + needs > width - 4 && x > left) {
      x = left;
      y += placeTall + 44;
    }
    drawn.push(text(x, y + 12, block.id, { mono: true, bold: true }));
    for (const [i, position] of block.positions.entries()) {
      const middle = x + i * step + step / 2;
      drawn.push(rect(middle - 6, y + 18, 12, placeTall, { rx: 3, ...(position.factory ? { fill: "currentColor" } : {}) }));
      drawn.push(text(middle, y + 18 + placeTall + 12, position.id, { mono: true, small: true, anchor: "middle" }));
    }
    x += needs + 20;
  }
  return { drawn: join(drawn), bottom: y + placeTall + 34 };
}
