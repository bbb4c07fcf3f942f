// Linking: records become a catalogue, and the house rules are held against it.
import { type Finding, goesBy, kinds, type Loaded, type Unread, unreadOf } from "../records/index.js";
import { type Catalogue, type Flaws, gather, type RecordError } from "./catalogue.js";
import { knownConditions } from "./conditions.js";
import { applyExceptions } from "./exceptions.js";
import { placeIn } from "./ref.js";
import type { Scene } from "./rule.js";
import { rules } from "./rules/index.js";

export interface Linked {
  readonly catalogue: Catalogue;
  readonly findings: readonly Finding[];
}

export interface LinkOptions {
  /** Today, YYYY-MM-DD: lets rules speak about dates that lie ahead and exceptions that ran out. */
  readonly today?: string;
  /** Files whose record could not be read (from `readRecords`): references to them are not called dangling. */
  readonly failed?: readonly Unread[];
  /** What reading found, so that the catalogue knows every error of its records. */
  readonly findings?: readonly Finding[];
}

export function link(loaded: readonly Loaded[], { today, failed = [], findings: read = [] }: LinkOptions = {}): Linked {
  const gathered = gather(loaded);
  const scene: Scene = { catalogue: gathered, today, failed: (kind, id) => failed.some((unread) => goesBy(unread, kind, id)) };
  const told = rules.flatMap((rule) => [...rule.check(scene)].map((draft) => ({ rule: rule.name, draft })));
  const held = rules.map((rule) => rule.name);
  const twice = doubles(loaded, gathered);
  const findings = [...twice.map(({ finding }) => finding), ...applyExceptions(gathered, told, held, today)];
  // The second of two records with one id is in no look-up, so it counts as one that could not be read.
  const second = twice.map(({ loaded: { kind, record }, finding }) => unreadOf({ kind, id: record.id }, finding, record));
  const unread = [...failed, ...second];
  const known: Catalogue = { ...gathered, unread };
  const flaws: Flaws = {
    unread: [...unread.map((one) => withKnownConditions(known, one)), ...misnaming(known, findings)],
    errors: [...read, ...findings].filter((finding) => finding.level === "error").map(errorOf),
  };
  return { catalogue: { ...gathered, ...flaws }, findings };
}

/** A problem that could not be read, without the conditions that name what no record has. */
function withKnownConditions(catalogue: Catalogue, unread: Unread): Unread {
  const { conflict } = unread;
  return conflict ? { ...unread, conflict: { ...conflict, when: knownConditions(catalogue, conflict.when).when } } : unread;
}

/** Problems that were read and name what no record has: as they stand they would occur nowhere, and nobody knows where they do. */
function misnaming(catalogue: Catalogue, findings: readonly Finding[]): readonly Unread[] {
  return [...catalogue.conflicts.values()].flatMap((conflict) => {
    const { when, whole } = knownConditions(catalogue, conflict.when);
    if (whole || conflict.status === "disproved") return [];
    const file = catalogue.files.get(`conflict/${conflict.id}`);
    const wrong = findings.find(({ level, at }) => level === "error" && at.file === file && at.pointer.startsWith("/when"));
    return wrong ? [{ ...unreadOf({ kind: "conflict", id: conflict.id }, wrong, conflict), conflict: { when, disproved: false } }] : [];
  });
}

function errorOf({ at: { file, line, column }, says }: Finding): RecordError {
  return { file, line, column, says };
}

/** Two files with one id: the catalogue can only keep one, so no rule could see the other. */
function doubles(loaded: readonly Loaded[], catalogue: Catalogue): readonly { readonly loaded: Loaded; readonly finding: Finding }[] {
  return loaded.flatMap((one) => {
    const { kind, record, file, text } = one;
    const first = catalogue.files.get(`${kind}/${record.id}`);
    if (first === undefined || first === file) return [];
    const own: Catalogue = { ...catalogue, texts: new Map(text === undefined ? [] : [[file, text]]) };
    const finding: Finding = {
      code: "rule-duplicate-id",
      level: "error",
      says: `The ${kind} id ${record.id} is used by two files; only the first is read.`,
      at: placeIn(own, file, "/id"),
      related: [{ says: "It is used here first.", at: placeIn(catalogue, first, "/id") }],
      hint: `Give one of them another id, the same as its file name in ${kinds[kind].folder}/.`,
    };
    return [{ loaded: one, finding }];
  });
}
