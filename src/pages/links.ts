// Where each thing lives in the built site. Addresses are kept from the top ("cards/x.html");
// a page puts its own `root` ("../") before them, so that the folder also reads from a disk.
import type { Ref } from "../planning/index.js";
import type { Kind } from "../records/index.js";

const folders: Readonly<Record<Kind, string>> = {
  club: "data",
  bus: "buses",
  board: "boards",
  firmware: "firmware",
  card: "cards",
  conflict: "conflicts",
  build: "builds",
  part: "parts",
};

/**
 * A mark as part of an address, another for every mark: "R5.1" -> "r5.1". What is not plain capitals and digits ("a", "A 1")
 * gets its letters as numbers behind it, so that it meets neither "A" nor "A-1".
 */
export function slug(text: string): string {
  const plain = text.toLowerCase().replaceAll(/[^a-z0-9._-]+/g, "-");
  if (/^[A-Z0-9._-]+$/.test(text)) return plain;
  return `${plain}~${Array.from({ length: text.length }, (_, at) => text.charCodeAt(at).toString(16).padStart(4, "0")).join("")}`;
}

/** Where pages of other things stand in the folder of a kind: its list, and the build sheets. */
const isTaken = (id: string) => id === "index" || id.endsWith("-sheet");

export function pageOf(kind: Kind, id: string): string {
  if (kind === "club") return "data/index.html";
  // No id has "~" in it.
  return `${folders[kind]}/${id}${isTaken(id) ? "~" : ""}.html`;
}

export function folderOf(kind: Kind): string {
  return folders[kind];
}

export function matrixOf(board: string, revision: string): string {
  return `matrix/${board}--${slug(revision)}.html`;
}

/** Where a card may be asked about: one board revision and one version of a firmware family. */
export interface CellPlace {
  readonly board: string;
  readonly revision: string;
  readonly family: string;
  readonly version: string;
}

/** Anchor on a card's page of one board revision and firmware version. No id or slug has ":" in it. */
export function cellAnchor({ board, revision, family, version }: CellPlace): string {
  return `on:${board}:${slug(revision)}:${family}:${slug(version)}`;
}

/** The anchor as it was before it named the family: addresses that people kept still lead to their answer. */
export function formerAnchor({ board, revision, version }: CellPlace): string {
  return `on-${board}--${slug(revision)}--${slug(version)}`;
}

export function sourcePage(file: string): string {
  return `source/${file.replace(/\.ya?ml$/, "")}.html`;
}

/** The way from a page up to the top: "" or "../" or "../../". */
export function rootOf(href: string): string {
  return "../".repeat(href.split("/").length - 1);
}

/** The part of a record's page that a fact stands in. */
export function sectionOf(ref: Ref): string {
  const first = ref.pointer.split("/")[1] ?? "";
  const sections: Readonly<Record<string, string>> = {
    needs: "needs",
    settings: "settings",
    claims: "claims",
    power: "claims",
    room: "claims",
    enable: "enable",
    panel: "enable",
    slots: "slots",
    chain: "slots",
    fixed: "addresses",
    rails: "rails",
    total_W: "rails",
    firmware_sockets: "firmware",
    firmware: "firmware",
    revisions: "revisions",
    versions: "versions",
    when: "when",
    remedies: "remedies",
    evidence: "evidence",
    result: "result",
  };
  const section = sections[first];
  return section && ["board", "card", "firmware", "conflict", "build"].includes(ref.kind) ? `#${section}` : "";
}

export const plannerPage = "planner.html";

export function plannerWith(query: string): string {
  return `${plannerPage}${query}`;
}
