// The slow, obvious twin of the search for ways: every machine the build leaves open, every set of cards that may be on and every version in
// it judged by the checker, and every choice of so many of them looked through. It shares no code with what it checks.
import type { Build, Card } from "../../../src/records/index.js";
import { judge, type World } from "./checker/index.js";
import { machines } from "./twin.js";

/** What is wanted, by places of cards in the build. */
export interface Wanted {
  /** Cards that some way has on. */
  readonly cards: readonly number[];
  readonly together: readonly { readonly cards: readonly number[]; readonly firmware?: string }[];
  readonly always: readonly number[];
  readonly alone: readonly number[];
}

/** One way a machine may run: what is on, as bits by place, and how sure it is (0 nothing against it, 1 only looks odd, 2 or 3 with a condition, 9 not known). */
interface Run {
  readonly on: number;
  readonly version: string;
  readonly level: number;
  /** What nothing switches off in this machine, its revisions being what they are, as bits by place. */
  readonly fixed: number;
}

const bit = (at: number) => 1 << at;
const nameOf = (build: Build, at: number) => build.cards[at]?.as ?? build.cards[at]?.card ?? "";

/** Nothing in the record, or nothing on this revision of it, that a switch could turn off. */
export function fixedOn(card: Card, revision: string): boolean {
  const { enable } = card;
  if (!enable || (enable.revisions && !enable.revisions.includes(revision))) return true;
  return enable.by === "setting" && card.settings?.find((s) => s.id === enable.setting)?.by !== "software";
}

/** Different lists of what a machine can run, over all machines; `count` is the number of ways it is to have. */
export function runsOf(world: World, build: Build, count: number): Run[][] {
  const bySlots = new Map<string, Run[]>();
  const single: Build = { ...build, modes: [{ id: "always" }] };
  for (const machine of machines(world, single)) {
    const { firmware, ...rest } = machine;
    const key = JSON.stringify(rest);
    const runs = bySlots.get(key) ?? [];
    bySlots.set(key, runs);
    const fixed = build.cards.reduce(
      (bits, c, at) => (fixedOn(world.cards.get(c.card)!, machine.cards[at]!.revision) ? bits | bit(at) : bits),
      0,
    );
    for (let on = 0; on < bit(build.cards.length); on++) {
      if ((on & fixed) !== fixed) continue;
      const cards = build.cards.flatMap((_, at) => (on & bit(at) ? [nameOf(build, at)] : []));
      const modes = Array.from({ length: count }, (_, m) => ({ id: `m${m}`, cards }));
      const j = judge(world, { ...build, modes }, { ...machine, firmware: modes.map(() => firmware[0]!) });
      if (j.bad.length === 0) runs.push({ on, version: firmware[0]!, level: j.open.length > 0 ? 9 : j.level, fixed });
    }
  }
  const distinct = new Map([...bySlots.values()].map((runs) => [JSON.stringify(runs), runs]));
  return [...distinct.values()].filter((runs) => runs.length > 0);
}

/** The sets that are on in the ways of a machine, each list in order, with the best level of a machine that runs so. */
export function dividedBy(build: Build, wanted: Wanted, lists: readonly Run[][], count: number): Map<string, number> {
  const all = build.cards.map((_, at) => at);
  const out = new Map<string, number>();
  for (const runs of lists) {
    const fit = runs.filter(({ on, fixed }) => {
      if (!wanted.always.every((at) => on & bit(at))) return false;
      // By itself: no other on that could be off. In a revision that nothing switches off, a card is taken as it is.
      return wanted.alone.every((at) => {
        if (!(on & bit(at))) return true;
        const others = all.filter((other) => other !== at && !wanted.always.includes(other) && on & bit(other) && !(fixed & bit(other)));
        return others.length === 0;
      });
    });
    choose(fit, count, 0, [], (ways) => {
      const granted =
        wanted.together.every((w) => ways.some((r) => w.cards.every((at) => r.on & bit(at)) && (w.firmware ?? r.version) === r.version)) &&
        wanted.cards.every((at) => ways.some((r) => r.on & bit(at)));
      if (!granted) return;
      const key = ways
        .map((r) => r.on)
        .sort((a, b) => a - b)
        .join(",");
      out.set(key, Math.min(out.get(key) ?? 99, Math.max(...ways.map((r) => r.level))));
    });
  }
  return out;
}

function choose(runs: readonly Run[], count: number, from: number, chosen: readonly Run[], found: (ways: readonly Run[]) => void): void {
  if (chosen.length === count) {
    found(chosen);
    return;
  }
  for (let at = from; at < runs.length; at++) choose(runs, count, at, [...chosen, runs[at]!], found);
}

/** Those that are no part of another, whatever the order of the ways. */
export function fullest(keys: readonly string[]): string[] {
  const rows = keys.map((key) => key.split(",").map(Number));
  return keys.filter((_, i) => !rows.some((other, j) => i !== j && within(rows[i]!, other)));
}

function within(one: readonly number[], other: readonly number[]): boolean {
  if (one.length === 0) return true;
  const [first = 0, ...rest] = one;
  return other.some(
    (set, at) =>
      (first & set) === first &&
      within(
        rest,
        other.filter((_, i) => i !== at),
      ),
  );
}
