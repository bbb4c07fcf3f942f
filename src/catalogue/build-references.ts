// The references of a build, written out: the planner's first script looks names up without loading the schemas of all records.
// A test holds this list against the fields the schema marks as ids.
import type { Build, Reference } from "../records/index.js";

/** Every id of another record in a build. */
export function referencesOfBuild(build: Build): readonly Reference[] {
  const { stands, at_hand: hand, switch: parts, result } = build;
  const roles = ["device", "switch", "connector", "cable"] as const;
  return [
    { kind: "board", id: build.board, path: ["board"] },
    ...(build.firmware === undefined ? [] : [{ kind: "firmware", id: build.firmware, path: ["firmware"] } as const]),
    ...build.cards.map(({ card }, i): Reference => ({ kind: "card", id: card, path: ["cards", i, "card"] })),
    ...(hand?.cards ?? []).map((entry, i): Reference => {
      const path = ["at_hand", "cards", i];
      return typeof entry === "string" ? { kind: "card", id: entry, path } : { kind: "card", id: entry.card, path: [...path, "card"] };
    }),
    ...(hand?.parts ?? []).map((id, i): Reference => ({ kind: "part", id, path: ["at_hand", "parts", i] })),
    ...(stands?.cards ?? []).map(({ card }, i): Reference => ({ kind: "card", id: card, path: ["stands", "cards", i, "card"] })),
    ...roles.flatMap((role): Reference[] => {
      const id = parts?.[role];
      return id === undefined ? [] : [{ kind: "part", id, path: ["switch", role] }];
    }),
    ...(result?.conflicts ?? []).map((id, i): Reference => ({ kind: "conflict", id, path: ["result", "conflicts", i] })),
  ];
}
