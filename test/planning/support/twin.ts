// The brute-force twin of the planner: fills the holes of a build in every way there is and judges each machine with the checker.
import type { Combination } from "../../../src/planning/index.js";
import type { Build } from "../../../src/records/index.js";
import { type Judgement, judge, type Machine, type World } from "./checker/index.js";

export interface Verdicts {
  readonly certain: number;
  readonly open: number;
  readonly verdict: "workable" | "conditional" | "ruled-out" | "unknown";
  /** "hole=value" of every certain machine, and of every open one. */
  readonly certainValues: ReadonlySet<string>;
  readonly openValues: ReadonlySet<string>;
}

const toBytes = (s: number | string): number => (typeof s === "number" ? s : Number(s.slice(0, -1)) * (s.endsWith("K") ? 1024 : 1048576));

/** Every complete machine the build leaves open, pins kept. */
export function* machines(world: World, build: Build): Generator<Machine> {
  const revisions = build.revision === undefined ? world.board.revisions.map((r) => r.id) : [build.revision].flat();
  const memories =
    typeof world.board.memory === "object"
      ? world.board.memory.options.map(toBytes).filter((m) => build.memory === undefined || m === toBytes(build.memory))
      : [build.memory === undefined ? 0 : toBytes(build.memory)];
  const modes = build.modes ?? [{ id: "always" }];
  const firmware = product(modes.map((m) => (m.firmware ? [m.firmware] : world.family.versions.map((v) => v.id))));
  const cards = build.cards.map((b) => {
    const card = world.cards.get(b.card)!;
    const revs = b.revision !== undefined ? [b.revision] : (card.revisions?.map((x) => x.id) ?? [""]);
    const slots = world.board.slots.flatMap((s, i) => (b.slot === undefined || b.slot === s.id ? [i] : []));
    const settings = product(
      (card.settings ?? []).map((s) =>
        s.positions.filter((p) => b.settings?.[s.id] === undefined || b.settings[s.id] === p.id).map((p) => [s.id, p.id] as const),
      ),
    );
    return slots.flatMap((slot) => revs.flatMap((revision) => settings.map((s) => ({ slot, revision, settings: Object.fromEntries(s) }))));
  });
  for (const revision of revisions)
    for (const memory of memories)
      for (const f of firmware) for (const c of product(cards)) yield { revision, memory, firmware: f, cards: c };
}

export function size(world: World, build: Build): number {
  let n = build.revision === undefined ? world.board.revisions.length : 1;
  n *=
    (typeof world.board.memory === "object" ? world.board.memory.options.length : 1) *
    world.family.versions.length ** (build.modes ?? [1]).length;
  for (const b of build.cards) {
    const card = world.cards.get(b.card)!;
    n *= (card.revisions?.length ?? 1) * world.board.slots.length;
    for (const s of card.settings ?? []) n *= s.positions.length;
  }
  return n;
}

export function twin(world: World, build: Build): Verdicts {
  let [certain, open, best] = [0, 0, 9];
  const certainValues = new Set<string>();
  const openValues = new Set<string>();
  for (const machine of machines(world, build)) {
    const j: Judgement = judge(world, build, machine);
    if (j.bad.length > 0) continue;
    const values = valuesOf(world, build, machine);
    for (const v of values) openValues.add(v);
    if (j.open.length > 0) open++;
    else {
      certain++;
      best = Math.min(best, j.level);
      for (const v of values) certainValues.add(v);
    }
  }
  const verdict = certain > 0 ? (best < 2 ? "workable" : "conditional") : open > 0 ? "unknown" : "ruled-out";
  return { certain, open, verdict, certainValues, openValues };
}

function valuesOf(world: World, build: Build, m: Machine): string[] {
  return [
    `revision=${m.revision}`,
    `memory=${m.memory}`,
    ...m.firmware.map((f, i) => `firmware:${(build.modes ?? [{ id: "always" }])[i]!.id}=${f}`),
    ...m.cards.flatMap((c, i) => {
      const as = build.cards[i]!.as ?? build.cards[i]!.card;
      return [
        `slot:${as}=${world.board.slots[c.slot]!.id}`,
        `card-revision:${as}=${c.revision}`,
        ...Object.entries(c.settings).map(([s, p]) => `setting:${as}:${s}=${p}`),
      ];
    }),
  ];
}

/** A combination the planner offers, as the checker takes it. */
export function machineOf(world: World, build: Build, c: Combination): Machine {
  return {
    revision: c.revision,
    memory: c.memory ?? 0,
    firmware: c.modes.map((m) => m.firmware),
    cards: build.cards.map((b) => {
      const p = c.cards.find((x) => x.as === (b.as ?? b.card))!;
      return { slot: world.board.slots.findIndex((s) => s.id === p.slot), revision: p.revision, settings: p.settings };
    }),
  };
}

/** The build with every hole filled as in the machine. */
export function pinnedTo(world: World, build: Build, m: Machine): Build {
  return {
    ...build,
    revision: m.revision,
    ...(m.memory > 0 ? { memory: m.memory } : {}),
    modes: (build.modes ?? [{ id: "always" }]).map((mode, i) => ({ ...mode, firmware: m.firmware[i]! })),
    cards: build.cards.map((c, i) => {
      const { slot, revision, settings } = m.cards[i]!;
      return { ...c, slot: world.board.slots[slot]!.id, ...(revision ? { revision } : {}), settings };
    }),
  };
}

export function verdictFor(j: Judgement): Verdicts["verdict"] {
  if (j.bad.length > 0) return "ruled-out";
  return j.open.length > 0 ? "unknown" : j.level >= 2 ? "conditional" : "workable";
}

function product<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, next) => all.flatMap((head) => next.map((x) => [...head, x])), [[]]);
}
