// Exports: the same records and answers as the pages, as JSON with its schema, CSV for spreadsheets, and a feed.

import type { Catalogue, PlannerRecords } from "../../catalogue/index.js";
import { type Pages, pageOf } from "../../pages/index.js";
import { itemAt } from "../../records/index.js";
import { noticeText } from "../../words/index.js";
import { feed } from "./atom.js";
import { csv } from "./csv.js";

export interface ExportFile {
  readonly name: string;
  readonly content: string;
}

export interface ExportOptions {
  readonly catalogue: Catalogue;
  readonly pages: Pages;
  readonly schemas: Readonly<Record<string, unknown>>;
  readonly address: string;
}

/** Version of the shape of the JSON exports: the first figure changes when a reader would have to change. */
export const exportVersion = "1.2";

/** What the data page offers, with a sentence on each. */
export const downloads: readonly { readonly name: string; readonly says: string }[] = [
  { name: "data/records.json", says: "Every record, as JSON." },
  { name: "data/verdicts.json", says: "Every cell of every matrix: card, board, revision, firmware, verdict, evidence." },
  { name: "data/verdicts.csv", says: "The same for a spreadsheet." },
  { name: "data/cards.csv", says: "Cards, one a line." },
  { name: "data/problems.csv", says: "Known problems, one a line." },
  { name: "data/tested.csv", says: "Tested builds, one a line." },
  { name: "data/results.atom", says: "A feed of bench results, newest first." },
  { name: "data/schema/export.json", says: "The schema of the JSON exports." },
];

const json = (value: unknown) => `${JSON.stringify(value, null, 1)}\n`;

/** By the alphabet; the page has them by purpose. */
function rowsOf({ sides }: Pages["matrices"][number]) {
  const rows = sides.flatMap((groups) => groups.flatMap((g) => g.rows));
  return rows.sort((a, b) => a.card.text.localeCompare(b.card.text));
}

export function exportsOf({ catalogue, pages, schemas, address }: ExportOptions): readonly ExportFile[] {
  const kinds = ["buses", "boards", "firmware", "cards", "conflicts", "builds", "parts"] as const;
  const records = Object.fromEntries(kinds.map((k) => [k, [...catalogue[k].values()]]));
  const verdicts = pages.matrices.flatMap((m) =>
    rowsOf(m).flatMap((row) =>
      row.cells.map((c) => ({
        board: m.id,
        revision: m.revision,
        family: c.family,
        firmware: c.version,
        card: row.id,
        verdict: c.mark.verdict,
        evidence: c.mark.verdict === "ruled-out" ? null : c.mark.evidence,
      })),
    ),
  );
  const title = catalogue.club?.name ?? "Slotwright";
  const about = {
    $schema: "schema/export.json",
    version: exportVersion,
    club: catalogue.club?.name ?? null,
    licence: catalogue.club?.licence ?? null,
    errors: catalogue.errors.map(({ file, line, column, says }) => ({ file, line, column, says })),
    unread: catalogue.unread.map(({ kind, id, file, line, column, says }) => ({ kind: kind ?? null, id, file, line, column, says })),
  };
  const notice = noticeText(catalogue);
  const answers = new Map(pages.cards.map((p) => [p.href, p.answer]));
  return [
    { name: "data/records.json", content: json({ ...about, club_record: catalogue.club ?? null, ...records }) },
    { name: "data/verdicts.json", content: json({ ...about, verdicts }) },
    { name: "data/schema/export.json", content: json(exportSchema(schemas)) },
    ...Object.entries(schemas).map(([kind, schema]) => ({ name: `data/schema/${kind}.json`, content: json(schema) })),
    {
      name: "data/verdicts.csv",
      content: csv(
        ["board", "revision", "firmware", "card", "verdict", "evidence", "family"],
        verdicts.map((v) => [v.board, v.revision, v.firmware, v.card, v.verdict, v.evidence, v.family]),
        notice,
      ),
    },
    {
      name: "data/cards.csv",
      content: csv(
        ["id", "name", "maker", "marked", "for", "answer"],
        [...catalogue.cards.values()].map((card) => [
          card.id,
          card.name,
          card.maker,
          card.model,
          card.does.join(" "),
          answers.get(pageOf("card", card.id)) ?? "",
        ]),
        notice,
      ),
    },
    {
      name: "data/problems.csv",
      content: csv(
        ["id", "name", "status", "effect", "symptoms", "answer", "cause"],
        [...catalogue.conflicts.values()].map((c, i) => [
          c.id,
          c.name,
          c.status,
          c.effect,
          c.symptoms.join(" | "),
          itemAt(pages.conflicts, i).answer,
          c.cause,
        ]),
        notice,
      ),
    },
    {
      name: "data/tested.csv",
      content: csv(
        ["page", "name", "date", "by", "outcome", "board", "revision", "what came of it"],
        pages.builds.filter((b) => b.tested).map((b) => [b.href, b.name, b.date, b.by, b.mark.word, b.board.text, b.revision, b.answer]),
        notice,
      ),
    },
    { name: "data/results.atom", content: feed(pages.builds, { title, address, notice }) },
  ];
}

/** The records as the planner's workers read them: each with its kind and file, nothing spread out. */
export function plannerRecords(catalogue: Catalogue): string {
  const kinds = {
    bus: "buses",
    board: "boards",
    firmware: "firmware",
    card: "cards",
    conflict: "conflicts",
    build: "builds",
    part: "parts",
  } as const;
  const listed = (Object.keys(kinds) as (keyof typeof kinds)[]).flatMap((kind) =>
    [...catalogue[kinds[kind]].values()].map((record) => ({ kind, record, file: catalogue.files.get(`${kind}/${record.id}`) ?? "" })),
  );
  const { unread, errors } = catalogue;
  return JSON.stringify({ records: listed, unread, errors } satisfies Record<keyof PlannerRecords, unknown>);
}

/** A list of what is wrong, each with its place; `more` names the record. */
function flaws(description: string, more: Readonly<Record<string, unknown>> = {}): unknown {
  const properties = {
    ...more,
    file: { type: "string" },
    line: { type: "integer", minimum: 1 },
    column: { type: "integer", minimum: 1 },
    says: { type: "string" },
  };
  return {
    description,
    type: "array",
    items: { type: "object", required: Object.keys(properties), additionalProperties: false, properties },
  };
}

function exportSchema(schemas: Readonly<Record<string, unknown>>): unknown {
  const text = { type: "string" };
  const list = (kind: string) => ({ type: "array", items: schemas[kind] ? { $ref: `${kind}.json` } : {} });
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: "Slotwright exports",
    description: `records.json and verdicts.json, version ${exportVersion}.`,
    type: "object",
    required: ["version"],
    properties: {
      $schema: text,
      version: { const: exportVersion },
      club: { type: ["string", "null"] },
      licence: { type: ["string", "null"] },
      club_record: { anyOf: [{ $ref: "club.json" }, { type: "null" }] },
      buses: list("bus"),
      boards: list("board"),
      firmware: list("firmware"),
      cards: list("card"),
      conflicts: list("conflict"),
      builds: list("build"),
      parts: list("part"),
      unread: flaws("Records that could not be read when this was made; what they could bear on is not known.", {
        kind: { type: ["string", "null"] },
        id: text,
      }),
      errors: flaws("Errors the records had when this was made, those of records that could not be read among them."),
      verdicts: {
        type: "array",
        items: {
          type: "object",
          required: ["board", "revision", "family", "firmware", "card", "verdict", "evidence"],
          additionalProperties: false,
          properties: {
            board: text,
            revision: text,
            family: text,
            firmware: text,
            card: text,
            verdict: { enum: ["workable", "conditional", "ruled-out", "unknown"] },
            evidence: { enum: ["bench", "documented", "reported", "inferred", null] },
          },
        },
      },
    },
    additionalProperties: false,
  };
}
