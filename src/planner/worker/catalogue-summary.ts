// Summary of the catalogue: what the page needs of the catalogue to offer boards, cards, versions and parts, and to name them. Small, and sent once.
import { type Catalogue, mainMemory } from "../../catalogue/index.js";
import { type Build, bytes, type Kind } from "../../records/index.js";

export interface RevisionSummary {
  readonly id: string;
  readonly tell: string;
}

export interface BoardSummary {
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  readonly revisions: readonly RevisionSummary[];
  /** Bytes of main memory it can be fitted with. */
  readonly memories: readonly number[];
  readonly slots: readonly string[];
  readonly families: readonly string[];
  readonly bus: string;
}

export interface SettingSummary {
  readonly id: string;
  readonly name: string;
  readonly by: string;
  readonly positions: readonly { readonly id: string; readonly how: string }[];
}

export interface CardSummary {
  readonly id: string;
  readonly name: string;
  readonly maker: string;
  readonly model: string;
  readonly does: readonly string[];
  readonly summary: string;
  readonly bus: string;
  readonly revisions: readonly RevisionSummary[];
  readonly settings: readonly SettingSummary[];
  /** Modes can switch it off. */
  readonly enable: boolean;
}

export interface FamilySummary {
  readonly id: string;
  readonly name: string;
  readonly versions: readonly string[];
}

export interface PartSummary {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
}

export interface CatalogueSummary {
  readonly boards: readonly BoardSummary[];
  readonly cards: readonly CardSummary[];
  readonly families: readonly FamilySummary[];
  readonly parts: readonly PartSummary[];
  /** Names of records by "kind/id", for the links of facts. */
  readonly names: Readonly<Record<string, string>>;
  /** Builds of the club that can be opened by name. */
  readonly builds: Readonly<Record<string, Build>>;
}

export function summarizeCatalogue(catalogue: Catalogue): CatalogueSummary {
  const names: Record<string, string> = {};
  const named = (kind: Kind, records: ReadonlyMap<string, { readonly name: string }>) => {
    for (const [id, record] of records) names[`${kind}/${id}`] = record.name;
  };
  named("bus", catalogue.buses);
  named("board", catalogue.boards);
  named("firmware", catalogue.firmware);
  named("card", catalogue.cards);
  named("conflict", catalogue.conflicts);
  named("build", catalogue.builds);
  named("part", catalogue.parts);
  return {
    boards: [...catalogue.boards.values()].map((b) => ({
      id: b.id,
      name: b.name,
      summary: b.summary ?? "",
      revisions: b.revisions.map((r) => ({ id: r.id, tell: r.tell })),
      memories: mainMemory(b)?.options.map(bytes) ?? [],
      slots: b.slots.map((s) => s.id),
      families: b.firmware,
      bus: b.bus,
    })),
    cards: [...catalogue.cards.values()].map((c) => ({
      id: c.id,
      name: c.name,
      maker: c.maker,
      model: c.model,
      does: c.does,
      summary: c.summary ?? "",
      bus: c.bus,
      revisions: (c.revisions ?? []).map((r) => ({ id: r.id, tell: r.tell })),
      settings: (c.settings ?? []).map((s) => ({
        id: s.id,
        name: s.name,
        by: s.by,
        positions: s.positions.map((p) => ({ id: p.id, how: p.how ?? "" })),
      })),
      enable: c.enable !== undefined,
    })),
    families: [...catalogue.firmware.values()].map((f) => ({ id: f.id, name: f.name, versions: f.versions.map((v) => v.id) })),
    parts: [...catalogue.parts.values()].map((p) => ({ id: p.id, name: p.name, kind: p.type })),
    names,
    builds: Object.fromEntries([...catalogue.builds].map(([id, { result: _, ...build }]) => [id, build])),
  };
}
