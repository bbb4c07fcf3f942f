// Linking: records become a catalogue, and the house rules are held against it.
import { type Failed, type Finding, kinds, type Loaded } from "../records/index.js";
import { type Catalogue, gather } from "./catalogue.js";
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
  readonly failed?: readonly Failed[];
}

export function link(loaded: readonly Loaded[], options: LinkOptions = {}): Linked {
  const unread = options.failed ?? [];
  const catalogue: Catalogue = unread.length > 0 ? { ...gather(loaded), unread } : gather(loaded);
  const lost = new Set(unread.map((f) => `${f.kind}/${f.id}`));
  const scene: Scene = { catalogue, today: options.today, failed: (kind, id) => lost.has(`${kind}/${id}`) };
  const told = rules.flatMap((rule) => [...rule.check(scene)].map((draft) => ({ rule: rule.name, draft })));
  const held = rules.map((rule) => rule.name);
  const findings = applyExceptions(catalogue, told, held, options.today);
  return { catalogue, findings: [...doubles(loaded, catalogue), ...findings] };
}

/** Two files with one id: the catalogue can only keep one, so no rule could see the other. */
function doubles(loaded: readonly Loaded[], catalogue: Catalogue): readonly Finding[] {
  const out: Finding[] = [];
  for (const { kind, record, file, text } of loaded) {
    const first = catalogue.files.get(`${kind}/${record.id}`)!;
    if (first === file) continue;
    const own: Catalogue = { ...catalogue, texts: new Map(text === undefined ? [] : [[file, text]]) };
    out.push({
      code: "rule-duplicate-id",
      level: "error",
      says: `The ${kind} id ${record.id} is used by two files; only the first is read.`,
      at: placeIn(own, file, "/id"),
      related: [{ says: "It is used here first.", at: placeIn(catalogue, first, "/id") }],
      hint: `Give one of them another id, the same as its file name in ${kinds[kind].folder}/.`,
    });
  }
  return out;
}
