// A club opened for a command: its records read and linked, every finding gathered, places looked up for people here.
import { type Catalogue, link, placeOf } from "../../catalogue/index.js";
import type { Ref } from "../../planning/index.js";
import {
  type Finding,
  formatFinding,
  type Loaded,
  type Place,
  readRecords,
  type SourceFile,
  type Unread,
  where,
} from "../../records/index.js";
import { styled, type Terminal } from "../printing/terminal.js";
import { type DataFolder, findData, readData } from "./folders.js";

export interface Club {
  readonly data: DataFolder;
  readonly catalogue: Catalogue;
  readonly records: readonly Loaded[];
  readonly failed: readonly Unread[];
  /** Of reading and linking, in the order of the files; each file named as a person here would type it. */
  readonly findings: readonly Finding[];
}

/** Opens the club's folder; `guests` are files from elsewhere, read as if they lay in it under the name given. */
export function openClub(asked: string | undefined, terminal: Terminal, guests: readonly SourceFile[] = []): Club {
  const data = findData(asked, terminal.folder);
  terminal.progress("reading records");
  const own = readData(data.path).map(({ file, bytes }): SourceFile => ({ file, content: bytes }));
  const places = new Set(guests.map((guest) => guest.file));
  const files = [...own.filter(({ file }) => !places.has(file)), ...guests];
  const reading = readRecords(files, (done, of) => terminal.progress(`reading records: ${done} of ${of}`));
  terminal.progress(`linking ${reading.records.length} records`);
  const linked = link(reading.records, { failed: reading.failed, findings: reading.findings, today: today() });
  terminal.progress("");
  const findings = inOrder([...reading.findings, ...linked.findings].map((finding) => fromHere(finding, data)));
  return { data, catalogue: linked.catalogue, records: reading.records, failed: reading.failed, findings };
}

/** Today by the calendar on the wall here, YYYY-MM-DD. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Files in findings are named from the data folder; a person wants to open them from where they stand. */
export function fromHere(finding: Finding, data: DataFolder): Finding {
  const move = (at: Place): Place => ({ ...at, file: fileFromHere(at.file, data) });
  return {
    ...finding,
    at: move(finding.at),
    ...(finding.related ? { related: finding.related.map((other) => ({ ...other, at: move(other.at) })) } : {}),
  };
}

/** A file of the data folder as a person here would type it. */
export function fileFromHere(file: string, data: DataFolder): string {
  return `${data.demo && data.shown !== "data" ? "(demo) " : `${data.shown}/`}${file}`;
}

/** file:line:column of a fact, or undefined when its record is in no file. */
export function placeText(club: Club, ref: Ref): string | undefined {
  if (!club.catalogue.files.has(`${ref.kind}/${ref.id}`)) return undefined;
  const at = placeOf(club.catalogue, ref);
  return where({ ...at, file: fileFromHere(at.file, club.data) });
}

/** By file and line, each told once. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  const key = ({ at, code, says }: Finding) =>
    `${at.file}\n${String(at.line).padStart(8, "0")}${String(at.column).padStart(8, "0")}\n${code}\n${says}`;
  const byKey = new Map(findings.map((finding) => [key(finding), finding]));
  return [...byKey.keys()].sort().map((k) => byKey.get(k) as Finding);
}

/** A finding for a terminal: the level in colour, when colour may be used. */
export function findingText(finding: Finding, terminal: Pick<Terminal, "colour">): string {
  const text = formatFinding(finding);
  if (!terminal.colour) return text;
  const head = where(finding.at);
  return (
    styled(terminal, "bold", head) +
    text.slice(head.length).replace(finding.level, styled(terminal, finding.level === "note" ? "cool" : "warm", finding.level))
  );
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
