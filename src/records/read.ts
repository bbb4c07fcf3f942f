// Reading: files in, records and findings out. Knows no disk; every file is judged whatever the others hold.

import { decode } from "./decode.js";
import type { Finding, FindingCode } from "./finding.js";
import { keptOr, type TextRead } from "./kept.js";
import { itemAt } from "./must.js";
import { nearest, truncateList } from "./nearest.js";
import { parse } from "./parse.js";
import { locator } from "./place.js";
import { type Kind, kinds, type RecordOf } from "./schema/index.js";
import type { Shape } from "./shape.js";
import { type Unread, unreadOf } from "./unread.js";
import { validate } from "./validate.js";

/** A schema-valid record, the file it came from and that file's text (kept for places). */
export interface Loaded<K extends Kind = Kind> {
  readonly kind: K;
  readonly record: RecordOf[K];
  /** Path as the club's folder names it: cards/tallow-bus-tracer.yaml */
  readonly file: string;
  readonly text?: string;
}

export interface Reading {
  readonly records: readonly Loaded[];
  /** Files whose record could not be read; house rules neither judge nor miss them, answers are told of them. */
  readonly failed: readonly Unread[];
  readonly findings: readonly Finding[];
}

export interface SourceFile {
  readonly file: string;
  readonly content: Uint8Array | string;
}

/** Most findings told of one file; a reader mends the first ones and asks again. */
const mostOfAFile = 20;

/** Reads every file; `progress` is told now and then how many are done, for large clubs. */
export function readRecords(files: readonly SourceFile[], progress?: (done: number, of: number) => void): Reading {
  const records: Loaded[] = [];
  const failed: Unread[] = [];
  const findings: Finding[] = [];
  const ordered = [...files].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
  for (const [i, { file: given, content }] of ordered.entries()) {
    if (i % 200 === 0 && i > 0) progress?.(i, ordered.length);
    const file = given.replaceAll("\\", "/");
    const home = homeOf(file);
    if ("finding" in home) {
      findings.push(home.finding);
      failed.push(misplaced(home, file, content));
      continue;
    }
    const read = readText(home.kind, content, file);
    findings.push(...read.findings);
    const wrong = read.findings.find((finding) => finding.level === "error");
    if (read.record) records.push({ kind: home.kind, record: read.record, file, text: read.text } as Loaded);
    else if (wrong) failed.push(unreadOf(home, wrong, read.value));
  }
  return { records, failed, findings };
}

/** Reads one record that is not in a file: pasted into a page, or piped in. */
export function readOne<K extends Kind>(
  kind: K,
  content: string | Uint8Array,
  file = `${kinds[kind].folder}/pasted.yaml`,
): { readonly record?: RecordOf[K] | undefined; readonly findings: readonly Finding[] } {
  const { record, findings } = readText(kind, content, file);
  // A pasted record has no editor to name its schema to.
  return { record: record as RecordOf[K] | undefined, findings: findings.filter((f) => f.code !== "file-schema-line") };
}

function readText(kind: Kind, content: string | Uint8Array, file: string): TextRead {
  const { text, findings: odd } = decode(file, content);
  if (text === undefined) return { findings: odd };
  // What is odd about the bytes is told beside the text, not in it: then it is read anew each time.
  if (odd.length > 0) return judgeText(kind, text, file, odd);
  return keptOr(`${kind} ${file}`, text, () => judgeText(kind, text, file, odd));
}

function judgeText(kind: Kind, text: string, file: string, odd: readonly Finding[]): TextRead {
  const parsed = parse(file, text);
  const seen = [...odd, ...parsed.findings];
  if (!("value" in parsed)) return { findings: seen };
  const misfits = validate(kinds[kind].schema as Shape, parsed.value, "", parsed.written);
  if (misfits.length === 0) return { record: parsed.value as RecordOf[Kind], text, findings: [...seen, ...schemaLine(kind, file, text)] };
  const at = locator(file, text);
  const told = misfits
    .slice(0, mostOfAFile)
    .map(({ pointer, on, ...rest }): Finding => ({ ...rest, level: "error", at: at(pointer, { on }) }));
  if (misfits.length > mostOfAFile) {
    const last = itemAt(told, mostOfAFile - 1);
    told[mostOfAFile - 1] = { ...last, hint: `${last.hint ?? ""} There are ${misfits.length - mostOfAFile} more in this file.`.trim() };
  }
  return { value: parsed.value, findings: [...seen, ...told] };
}

/** A file that is not where a record of its kind belongs. What fits the schema of one kind alone is of that kind. */
function misplaced({ kind, id, finding }: Misplaced, file: string, content: string | Uint8Array): Unread {
  const { text } = decode(file, content);
  const parsed = text === undefined ? undefined : parse(file, text);
  const value = parsed && "value" in parsed ? parsed.value : undefined;
  const fitting = (Object.keys(kinds) as Kind[]).filter(
    (k) => value !== undefined && validate(kinds[k].schema as Shape, value).length === 0,
  );
  const of = kind ?? (fitting.length === 1 ? fitting[0] : undefined);
  return unreadOf({ ...(of ? { kind: of } : {}), id }, finding, value);
}

/** The first line of a record file: it lets an editor check and complete while the keeper types. */
export function schemaLineOf(kind: Kind, depth = 1): string {
  return `# yaml-language-server: $schema=${"../".repeat(depth)}schema/${kind}.json`;
}

function schemaLine(kind: Kind, file: string, text: string): readonly Finding[] {
  const wanted = schemaLineOf(kind, depthBelow(kind, file));
  const first = text.slice(0, text.indexOf("\n")).trim();
  if (first === wanted) return [];
  const other = first.startsWith("# yaml-language-server:");
  const code: FindingCode = "file-schema-line";
  return [
    {
      code,
      level: "warning",
      says: other ? "Line 1 names the schema of another kind of record." : "Line 1 does not name the schema, so editors cannot help.",
      at: locator(file, text)("", { offset: [0, Math.max(1, first.length)] }),
      expected: wanted,
      actual: first === "" ? "nothing" : first.slice(0, 80),
      hint: other ? "Put the expected line in its place." : "Put the expected line above the first one.",
    },
  ];
}

/** How many folders lie between a record and the folder its kind's folder stands in: 1, or more inside a subfolder. */
function depthBelow(kind: Kind, file: string): number {
  const folders = file.split("/").slice(0, -1);
  return Math.max(1, folders.length - folders.lastIndexOf(kinds[kind].folder));
}

interface Misplaced {
  readonly kind?: Kind;
  readonly id: string;
  readonly finding: Finding;
}

/** The kind of record a file holds, by the nearest folder above it that is one of ours: parts/bought-in/x.yaml is a part. */
function homeOf(file: string): { readonly kind: Kind; readonly id: string } | Misplaced {
  const parts = file.split("/");
  const name = parts.at(-1) ?? "";
  const folder = parts.at(-2) ?? "";
  const at = { file, pointer: "", line: 1, column: 1 };
  const refuse = (says: string, hint: string, kind?: Kind): Misplaced => ({
    ...(kind ? { kind } : {}),
    id: name.replace(/\.[^.]*$/, ""),
    finding: { code: "file-place", level: "error", says, at, hint },
  });
  const folders = Object.values(kinds).map((k) => k.folder);
  const home = parts.slice(0, -1).findLast((f) => folders.some((known) => known === f));
  const kind = (Object.keys(kinds) as Kind[]).find((k) => kinds[k].folder === home);
  if (!kind) {
    const near = nearest(folder, folders);
    const says = folder === "" ? "The file lies in no folder, so its kind is not known." : `${folder} is not a folder of records.`;
    return refuse(says, near ? `Did you mean ${near}/${name}?` : `Folders of records: ${truncateList(folders)}.`);
  }
  const id = /^(.+)\.yaml$/.exec(name)?.[1];
  if (id === undefined)
    return refuse("A record is a file whose name ends in .yaml.", `Rename it to ${name.replace(/\.[^.]*$/, "") || "id"}.yaml.`, kind);
  return { kind, id };
}
