// A random world as the text files a club would keep, read back and linked; and the slips of a keyboard.
import { type Catalogue, link } from "../../../src/catalogue/index.js";
import { type Kind, kinds, readRecords, writeRecord } from "../../../src/records/index.js";
import type { Random } from "../../support/solver/random.js";
import type { Setup } from "./world.js";

export interface TextFile {
  readonly file: string;
  readonly content: string;
}

export function filesOf({ catalogue }: Setup): TextFile[] {
  const of = (kind: Kind, map: ReadonlyMap<string, { readonly id: string }>) =>
    [...map.values()].map((record) => ({
      file: `${kinds[kind].folder}/${record.id}.yaml`,
      content: writeRecord(kind, record as Parameters<typeof writeRecord>[1]),
    }));
  return [
    ...of("bus", catalogue.buses),
    ...of("board", catalogue.boards),
    ...of("firmware", catalogue.firmware),
    ...of("card", catalogue.cards),
    ...of("conflict", catalogue.conflicts),
  ];
}

export function catalogueOf(files: readonly TextFile[]): Catalogue {
  const { records, failed, findings } = readRecords(files);
  return link(records, { failed, findings }).catalogue;
}

/** A slip of the keyboard: a letter too many or too few somewhere after the first line, a line gone, or a bracket left open. */
export function spoil(text: string, random: Random): string {
  const from = text.indexOf("\n") + 1;
  const at = random.int(from, text.length - 1);
  const lines = text.split("\n");
  return random.pick([
    () => `${text.slice(0, at)}x${text.slice(at)}`,
    () => text.slice(0, at) + text.slice(at + 1),
    () => lines.toSpliced(random.int(1, lines.length - 1), 1).join("\n"),
    () => `${text}more: [\n`,
    () => text.replace(/^(effect|status): .*$/m, "$1: perhaps"),
  ])();
}
