// What a choice of a build is about, as data; and as the one text that answers, moves and JSON name it by. Made and read here alone.

/**
 * One thing that can be chosen: of the machine as a whole, of a mode, of a copy of a card. `{kind: "setting", card: "tern", setting: "J1"}`
 * is "setting:tern:J1".
 */
export type ChoiceRef =
  | { readonly kind: "revision" | "memory" }
  /** The mode itself, or its firmware. */
  | { readonly kind: "mode" | "firmware"; readonly mode: string }
  /** Whether a copy is on in a mode. */
  | { readonly kind: "on"; readonly mode: string; readonly card: string }
  /** The copy itself, its slot, its revision. */
  | { readonly kind: "card" | "slot" | "card-revision"; readonly card: string }
  | { readonly kind: "setting"; readonly card: string; readonly setting: string };

/** The id of a choice; each choice has one, and no two share one. */
export function choiceId(ref: ChoiceRef): string {
  switch (ref.kind) {
    case "revision":
    case "memory":
      return ref.kind;
    case "mode":
    case "firmware":
      return `${ref.kind}:${ref.mode}`;
    case "on":
      return `on:${ref.mode}:${ref.card}`;
    case "setting":
      return `setting:${ref.card}:${ref.setting}`;
    default:
      return `${ref.kind}:${ref.card}`;
  }
}

/** What an id is about; undefined when it is the id of no choice. */
export function choiceOf(id: string): ChoiceRef | undefined {
  const [kind, of, more] = id.split(":");
  if (kind === "revision" || kind === "memory") return { kind };
  if (of === undefined) return undefined;
  if (kind === "mode" || kind === "firmware") return { kind, mode: of };
  if (kind === "card" || kind === "slot" || kind === "card-revision") return { kind, card: of };
  if (more === undefined) return undefined;
  if (kind === "on") return { kind, mode: of, card: more };
  return kind === "setting" ? { kind, card: of, setting: more } : undefined;
}

/** The copy that a choice is about, the card itself and its being on in a mode among them. */
export function copyOfChoice(id: string): string | undefined {
  const ref = choiceOf(id);
  return ref && "card" in ref ? ref.card : undefined;
}
