// What a way rests on, short enough to read and to send: twenty cards make two hundred links. Of each grade and link the first few stand as
// they are; the others are told as one, with every record that any of them names.

import type { Combination, EvidenceNote, Ref } from "../../planning/index.js";
import { itemAt } from "../../records/index.js";

/** So many notes are read through; more are told together. */
const most = 12;
const few = 3;

const linkWords = { card: "more cards on their own", pair: "more pairs running together", whole: "more" } as const;
const gradeWords = {
  bench: "each tested on the bench",
  documented: "each said in its papers",
  reported: "each said by somebody",
  inferred: "no record of any of them, and the rules find nothing against them",
} as const;

export function condensed(combination: Combination): Combination {
  const { rests } = combination;
  if (rests.length <= most) return combination;
  const groups = new Map<string, EvidenceNote[]>();
  for (const note of rests) {
    const key = `${note.grade} ${note.link}`;
    groups.set(key, [...(groups.get(key) ?? []), note]);
  }
  return { ...combination, rests: [...groups.values()].flatMap((notes) => (notes.length <= few + 1 ? notes : together(notes))) };
}

function together(notes: readonly EvidenceNote[]): EvidenceNote[] {
  const rest = notes.slice(few);
  const { grade, link } = itemAt(rest, 0);
  const refs = new Map<string, Ref>(rest.flatMap((n) => n.refs).map((r) => [`${r.kind}/${r.id}${r.pointer}`, r]));
  return [
    ...notes.slice(0, few),
    { grade, link, says: `${rest.length} ${linkWords[link]}: ${gradeWords[grade]}.`, refs: [...refs.values()] },
  ];
}
