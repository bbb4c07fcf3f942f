// A bus's page: its kinds of slot, lines and rails, and which boards and cards use it.
import type { Bus } from "../records/index.js";
import {
  type Context,
  countText,
  type LinkView,
  listText,
  type PageHead,
  recordHead,
  recordLink,
  type SourceView,
  sourcesView,
  type ValueView,
  value,
  withUnit,
} from "./common.js";

export interface BusPage extends PageHead {
  readonly name: string;
  readonly answer: string;
  readonly facts: readonly { readonly name: string; readonly value: ValueView; readonly code?: boolean }[];
  readonly edges: readonly { readonly name: string; readonly fits: string; readonly contacts: string; readonly lines: string }[];
  readonly interrupts: readonly { readonly id: string; readonly also: string; readonly trigger: ValueView; readonly share: ValueView }[];
  readonly rails: readonly { readonly id: string; readonly volts: string }[];
  readonly dma: readonly { readonly id: string; readonly width: string }[];
  readonly chain?: string | undefined;
  readonly boards: readonly LinkView[];
  readonly cards: number;
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
}

const shares: Readonly<Record<string, string>> = {
  never: "one owner only",
  "if-shareable": "several, when level-sensed and every owner shares",
};

export function busPage(ctx: Context, bus: Bus): BusPage {
  const boards = [...ctx.catalogue.boards.values()].filter((b) => b.bus === bus.id).map((b) => recordLink(ctx.catalogue, "board", b.id));
  const cards = [...ctx.catalogue.cards.values()].filter((c) => c.bus === bus.id).length;
  const answer = `${countText(boards.length, "board").replace(/^./, (c) => c.toUpperCase())} and ${countText(cards, "card")} here use it.`;
  const name = (id: string) => bus.edges.find((e) => e.id === id)?.name ?? id;
  return {
    ...recordHead(ctx, "bus", bus.id, bus.name, bus.summary ?? answer, "boards"),
    name: bus.name,
    answer: [bus.summary, answer].filter(Boolean).join(" "),
    facts: [
      { name: "Memory address lines", value: value(bus.memory_address_bits) },
      ...(bus.spaces ?? []).map((s) => ({ name: `Address space ${s.id}`, value: value(`${s.name} (${s.bits} lines)`) })),
      { name: "Port address lines", value: value(bus.io_address_bits) },
      ...(bus.overlay_lines ?? []).map((l) => ({ name: `Overlay line ${l.id}`, value: value(l.says) })),
      ...(bus.clock_MHz === undefined ? [] : [{ name: "Clock asked for", value: value(bus.clock_MHz, "MHz") }]),
    ],
    edges: bus.edges.map((e) => ({
      name: e.name,
      fits: `goes into slots of these kinds: ${listText(bus.edges.filter((s) => e.fits.includes(s.id)).map((s) => name(s.id)))}`,
      contacts: e.contacts === undefined ? "" : String(e.contacts),
      lines: [e.interrupts ? `interrupts ${listText(e.interrupts)}` : "", e.dma ? `DMA ${listText(e.dma)}` : ""].filter(Boolean).join("; "),
    })),
    interrupts: bus.interrupts.map((i) => ({
      id: i.id,
      also: (i.also ?? []).join(", "),
      trigger: value(i.trigger),
      share: value(i.share, "", (v) => shares[String(v)] ?? String(v)),
    })),
    rails: bus.rails.map((r) => ({ id: r.id, volts: withUnit(String(r.volts).replace("-", "\u2212"), "V") })),
    dma: (bus.dma ?? []).map((d) => ({ id: d.id, width: d.width === undefined ? "" : `${d.width} bits` })),
    chain: bus.chains
      ? `From slot to slot runs ${listText(bus.chains.map(({ name, most }) => `the ${name}${most === undefined ? "" : ` (for at most ${most} cards)`}`))}.`
      : undefined,
    boards,
    cards,
    notes: bus.notes,
    sources: sourcesView(bus.sources),
    search: { kind: "bus", answer, boards: boards.map((b) => b.text), names: [bus.id], symptoms: [] },
  };
}
