// Edits of a build: pin a choice, take it back, drop a mode, split a mode in two. Builds are values; each edit is a new one.

import { cardsOn, cardsOnOrOff, copyName, modesOf } from "../catalogue/index.js";
import type { Build, Mode } from "../records/index.js";
import { choiceOf } from "./choice-ref.js";
import { withoutCard } from "./copies.js";

type Pinned = { -readonly [K in keyof Build]: Build[K] };

/** Stands between revisions of which the owner cannot tell one. */
export const orElse = " or ";

/**
 * The build with one choice pinned to a value; undefined takes the pin back. Its id is choiceId's. The board's revision may
 * be one of several: "D1 or D2". Whether a card is on in a mode is a choice of its own, with the values "on", "on-or-off" where it does
 * not matter, or "off", which it is too when taken back.
 */
export function withChoice(build: Build, id: string, value: string | undefined): Build {
  const ref = choiceOf(id);
  const out: Pinned = { ...build };
  switch (ref?.kind) {
    case "revision":
      return put(out, "revision", value?.includes(orElse) ? value.split(orElse) : value);
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
