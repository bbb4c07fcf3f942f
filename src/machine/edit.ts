// Edits of a build: pin a choice, take it back, drop a mode, split a mode in two. Builds are values; each edit is a new one.

import { cardsOn, cardsOnOrOff, copyName, modesOf } from "../catalogue/index.js";
import { type Build, type BuildCard, bytes, definedFields, type Mode } from "../records/index.js";
import { choiceId, choiceOf, copyOfChoice } from "./choice-ref.js";
import { withCard, withoutCard } from "./copies.js";

type Pinned = { -readonly [K in keyof Build]: Build[K] };

/** What a choice is pinned to. Of the board's revision it may be several, of which the owner cannot tell one. */
export type ChoiceValue = string | readonly string[];

/**
 * One change of a build, as data; a repair is a list of them. `{pin: "slot:gannet", value: "S2"}` puts a copy into S2, and without a value
 * takes that back; `{out: "gannet"}` takes it out; `{card: "gannet"}` puts one in; `{modes}` are the modes it runs in from now on.
 */
export type Edit =
  | { readonly pin: string; readonly value?: ChoiceValue }
  | { readonly out: string }
  | { readonly card: string; readonly as?: string }
  | { readonly modes: readonly Mode[] | undefined };

/** The build after the edits, made in their order. Putting in a copy that is there already changes nothing. */
export function applyEdits(build: Build, edits: readonly Edit[]): Build {
  return edits.reduce(applyEdit, build);
}

function applyEdit(build: Build, edit: Edit): Build {
  if ("pin" in edit) return withChoice(build, edit.pin, edit.value);
  if ("out" in edit) return withoutCard(build, edit.out);
  if ("card" in edit) return build.cards.some((c) => copyName(c) === copyName(edit)) ? build : withCard(build, edit.card, copyName(edit));
  const { modes: _, ...rest } = build;
  return edit.modes ? { ...rest, modes: [...edit.modes] } : rest;
}

/** The edit that gives up a choice: its pin, or the copy or mode itself. */
export function editGivingUp(id: string): Edit {
  const ref = choiceOf(id);
  return ref?.kind === "card" ? { out: ref.card } : { pin: id };
}

/** The edits after which a build runs in these modes: what is on in each, then each one's firmware as a pin that can be taken back. */
export function editsToModes(modes: readonly Mode[]): Edit[] {
  const pins = modes.flatMap(({ id, firmware }): Edit[] =>
    firmware === undefined ? [] : [{ pin: choiceId({ kind: "firmware", mode: id }), value: firmware }],
  );
  return [{ modes: modes.map(({ firmware: _, ...mode }) => mode) }, ...pins];
}

/** The edits that lead from one build to another of the same board. */
export function editsBetween(before: Build, after: Build): Edit[] {
  const same = (a: BuildCard, b: BuildCard) => copyName(a) === copyName(b) && a.card === b.card;
  const edits: Edit[] = [];
  for (const c of before.cards) if (!after.cards.some((a) => same(a, c))) edits.push({ out: copyName(c) });
  for (const c of after.cards) if (!before.cards.some((b) => same(b, c))) edits.push(definedFields({ card: c.card, as: c.as }));
  if (shape(before) !== shape(after)) edits.push({ modes: after.modes });
  const from = pinsOf(before);
  const to = pinsOf(after);
  for (const [pin, value] of to) if (String(from.get(pin)) !== String(value)) edits.push({ pin, value });
  for (const pin of from.keys()) {
    const gone = edits.some((e) => "out" in e && copyOfChoice(pin) === e.out);
    if (!to.has(pin) && !gone) edits.push({ pin });
  }
  return edits;
}

const shape = (build: Build) => JSON.stringify(build.modes?.map((m) => [m.id, m.name, m.cards, m.on_or_off, m.safest]));

/** Everything pinned, by the ids choices have in an answer. */
export function pinsOf(build: Build): ReadonlyMap<string, ChoiceValue> {
  const pins = new Map<string, ChoiceValue>();
  if (build.revision !== undefined) pins.set(choiceId({ kind: "revision" }), build.revision);
  if (build.memory !== undefined) pins.set(choiceId({ kind: "memory" }), String(bytes(build.memory)));
  for (const m of build.modes ?? []) if (m.firmware !== undefined) pins.set(choiceId({ kind: "firmware", mode: m.id }), m.firmware);
  for (const c of build.cards) {
    const as = copyName(c);
    if (c.slot !== undefined) pins.set(choiceId({ kind: "slot", card: as }), c.slot);
    if (c.revision !== undefined) pins.set(choiceId({ kind: "card-revision", card: as }), c.revision);
    for (const [id, value] of Object.entries(c.settings ?? {})) pins.set(choiceId({ kind: "setting", card: as, setting: id }), value);
  }
  return pins;
}

/**
 * The build with one choice pinned to a value; undefined takes the pin back. Its id is choiceId's. Only the board's revision may be one of
 * several; of any other choice the first counts. Whether a card is on in a mode is a choice of its own, with the values "on", "on-or-off"
 * where it does not matter, or "off", which it is too when taken back.
 */
export function withChoice(build: Build, id: string, pinned: ChoiceValue | undefined): Build {
  const ref = choiceOf(id);
  const out: Pinned = { ...build };
  const value = typeof pinned === "object" ? pinned[0] : pinned;
  switch (ref?.kind) {
    case "revision":
      return put(out, "revision", typeof pinned === "object" && pinned.length > 1 ? [...pinned] : value);
    case "memory":
      return put(out, "memory", value === undefined ? undefined : Number(value));
    case "firmware":
      out.modes = modesOf(build).map((m) => (m.id === ref.mode ? put({ ...m }, "firmware", value) : m));
      return out;
    case "on":
      out.modes = modesOf(build).map((m) => (m.id === ref.mode ? switched(build, m, ref.card, value ?? "off") : m));
      return out;
    case "slot":
    case "card-revision":
      out.cards = build.cards.map((c) => (copyName(c) === ref.card ? put({ ...c }, ref.kind === "slot" ? "slot" : "revision", value) : c));
      return out;
    case "setting":
      out.cards = build.cards.map((c) => {
        if (copyName(c) !== ref.card) return c;
        const settings = { ...c.settings };
        if (value === undefined) delete settings[ref.setting];
        else settings[ref.setting] = value;
        return put({ ...c }, "settings", Object.keys(settings).length > 0 ? settings : undefined);
      });
      return out;
    case "card":
      return value === undefined ? withoutCard(build, ref.card) : build;
    case "mode":
      return value === undefined ? withoutMode(build, ref.mode) : build;
    default:
      return build;
  }
}

function switched(build: Build, mode: Mode, as: string, value: string): Mode {
  const { on_or_off: _, ...rest } = mode;
  const on = cardsOn(build.cards, mode).map(copyName);
  const open = cardsOnOrOff(build.cards, mode).map(copyName);
  const now = (before: readonly string[], there: boolean) =>
    build.cards.map(copyName).filter((card) => (card === as ? there : before.includes(card)));
  const left = now(open, value === "on-or-off");
  return { ...rest, cards: now(on, value === "on"), ...(left.length > 0 ? { on_or_off: left } : {}) };
}

function put<T extends object, K extends keyof T>(object: T, key: K, value: T[K] | undefined): T {
  if (value === undefined) delete object[key];
  else object[key] = value;
  return object;
}

export function withoutMode(build: Build, mode: string): Build {
  return build.modes ? { ...build, modes: build.modes.filter((m) => m.id !== mode) } : build;
}

/** The build with one mode split in two: in the first `off` are switched off, in the second `others` are. Firmware becomes a hole in both. */
export function withSecondMode(build: Build, mode: string, off: readonly string[], others: readonly string[]): Build {
  const modes = modesOf(build);
  const ids = new Set(modes.map((m) => m.id));
  const id = ["second", "third", "fourth", "fifth"].find((word) => !ids.has(word)) ?? nextId(mode, ids);
  const split = modes.flatMap((m): Mode[] => {
    if (m.id !== mode) return [m];
    const on = cardsOn(build.cards, m).map(copyName);
    const { firmware: _, ...kept } = m;
    return [
      { ...kept, cards: on.filter((c) => !off.includes(c)) },
      { id, name: "Second mode", cards: on.filter((c) => !others.includes(c)), ...(m.on_or_off ? { on_or_off: [...m.on_or_off] } : {}) },
    ];
  });
  return { ...build, modes: split };
}

function nextId(mode: string, taken: ReadonlySet<string>): string {
  for (let n = 2; ; n += 1) if (!taken.has(`${mode}-${n}`)) return `${mode}-${n}`;
}
