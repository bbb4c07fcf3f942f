// The slow twin of the change-over by hand: every machine that some of the cards make, and every two of them that grant what is wanted.
import type { Build } from "../../../src/records/index.js";
import { judge, type World } from "./checker/index.js";
import { machines } from "./twin.js";
import { fixedOn, type Wanted } from "./ways-reference.js";

interface Place {
  readonly slot: number;
  readonly revision: string;
  readonly settings: Readonly<Record<string, string>>;
  readonly on: boolean;
}

/** A machine in one way; a card that is out has no place. */
export interface State {
  readonly revision: string;
  readonly memory: number;
  readonly firmware: string;
  readonly cards: readonly (Place | undefined)[];
  readonly level: number;
}

const nameOf = (build: Build, at: number) => build.cards[at]?.as ?? build.cards[at]?.card ?? "";

/** Every state the rules do not forbid; undefined when there are more than `most`. */
export function statesOf(world: World, build: Build, most: number): State[] | undefined {
  const out: State[] = [];
  for (let inside = 0; inside < 2 ** build.cards.length; inside++) {
    const places = build.cards.flatMap((_, at) => (inside & (1 << at) ? [at] : []));
    const { wishes: _, ...rest } = build;
    const part: Build = { ...rest, cards: places.map((at) => build.cards[at]!), modes: [{ id: "m" }] };
    for (const machine of machines(world, part)) {
      for (let on = 0; on < 2 ** places.length; on++) {
        const isOn = (i: number) => (on & (1 << i)) !== 0;
        if (places.some((at, i) => !isOn(i) && fixedOn(world.cards.get(build.cards[at]!.card)!, machine.cards[i]!.revision))) continue;
        const cards = places.flatMap((at, i) => (isOn(i) ? [nameOf(build, at)] : []));
        const j = judge(world, { ...part, modes: [{ id: "m", cards }] }, machine);
        if (j.bad.length > 0) continue;
        const placed = build.cards.map((_c, at) => {
          const i = places.indexOf(at);
          return i < 0 ? undefined : { ...machine.cards[i]!, on: isOn(i) };
        });
        const { revision, memory, firmware } = machine;
        out.push({ revision, memory, firmware: firmware[0]!, cards: placed, level: j.open.length > 0 ? 9 : j.level });
        if (out.length > most) return undefined;
      }
    }
  }
  return out;
}

const runs = (s: State, at: number) => s.cards[at]?.on === true;

/** No way has what it must not have, nor lacks what every way has. */
export function keeps(s: State, wanted: Wanted): boolean {
  if (!wanted.always.every((at) => runs(s, at))) return false;
  return wanted.alone.every(
    (at) => !runs(s, at) || s.cards.every((_, other) => other === at || wanted.always.includes(other) || !runs(s, other)),
  );
}

export function grantedBy(states: readonly State[], wanted: Wanted): boolean {
  return (
    wanted.cards.every((at) => states.some((s) => runs(s, at))) &&
    wanted.together.every((w) => states.some((s) => w.cards.every((at) => runs(s, at)) && (w.firmware ?? s.firmware) === s.firmware))
  );
}

/** The same board, memory and cards. */
export function sameThings(a: State, b: State): boolean {
  if (a.revision !== b.revision || a.memory !== b.memory) return false;
  return a.cards.every((c, at) => c === undefined || b.cards[at] === undefined || c.revision === b.cards[at].revision);
}

/** How many things are done between two states. */
export function between(a: State, b: State): number {
  return a.cards.reduce(
    (sum, c, at) => {
      const d = b.cards[at];
      if (!c || !d) return sum + (c === d ? 0 : 1);
      const settings = Object.keys(c.settings).filter((id) => c.settings[id] !== d.settings[id]).length;
      return sum + settings + (c.slot === d.slot ? 0 : 1) + (c.on === d.on ? 0 : 1);
    },
    a.firmware === b.firmware ? 0 : 1,
  );
}
