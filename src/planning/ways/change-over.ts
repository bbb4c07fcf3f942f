// The change-over by hand: the fewest ways in which a machine can be run when it is opened between them, and for each two of them what the
// hand does, in the order in which it is safe to do it. Steps are data; words and cautions come later.

import { compile, eachCard, holds } from "../../encoding/index.js";
import { type ResolvedBuild, resolveBuild } from "../../machine/index.js";
import { type Build, type BuildCard, type Card, itemAt } from "../../records/index.js";
import { type Budget, cheapest, decide, type Solution } from "../../solver/index.js";
import type { Verdict } from "../answer/answer.js";
import { verdictOf } from "../answer/verdict.js";
import { type ByHand, byHand, handProblem, type Sureness } from "./by-hand.js";
import { isGranted, type Wish, wishesOf } from "./wishes.js";

/** One thing to do. `card` is the name of the copy. */
export type HandStep =
  | { readonly kind: "power-off" }
  | { readonly kind: "take-out"; readonly card: string; readonly slot: string }
  | { readonly kind: "move"; readonly card: string; readonly from: string; readonly to: string }
  /** `from` is left out where it depends on what the machine ran before. */
  | { readonly kind: "set"; readonly card: string; readonly setting: string; readonly from?: string; readonly to: string }
  | { readonly kind: "put-in"; readonly card: string; readonly slot: string }
  /** The points of the card's contact and what becomes of it; software switches a card that has none. */
  | {
      readonly kind: "switch-off" | "switch-on";
      readonly card: string;
      readonly contact?: { readonly points: readonly string[]; readonly made: "open" | "closed" | "to-on" | "to-off" };
    }
  | { readonly kind: "exchange-firmware"; readonly from: string; readonly to: string }
  | { readonly kind: "power-on"; readonly firmware: string };

export interface HandWay {
  readonly id: string;
  readonly firmware: string;
  /** Copies in the machine and on. */
  readonly on: readonly string[];
  /** Copies in the machine and off. */
  readonly off: readonly string[];
  /** Copies that are taken out. */
  readonly out: readonly string[];
  readonly verdict: Exclude<Verdict, "ruled-out">;
  /** The machine as it stands in this way, to be asked like any other. */
  readonly build: Build;
}

export interface ChangeOver {
  readonly kind: "change-over";
  readonly ways: readonly HandWay[];
  /** No fewer ways could do, whatever the missing facts turn out to be. */
  readonly fewestProven: boolean;
  /** From each way to each other. */
  readonly changes: readonly { readonly from: string; readonly to: string; readonly steps: readonly HandStep[] }[];
  /** No other machines in so many ways need fewer things done over all changes; power and start not counted. */
  readonly stepsProven: boolean;
}

export type ChangeOverResult = ChangeOver | { readonly kind: "none" } | { readonly kind: "stopped" };

/** Steps each search may take when the caller names no budget. */
const defaultBudget: Budget = { steps: 200_000 };

/** Steps the search for the fewest things to do may take at most: on large machines four times as many find nothing better and prove no more. */
const mostForThings = 50_000;

/** More ways than `most` are not tried; where they might be needed, the result is that it stopped. */
export function changeOver(question: ResolvedBuild, budget: Budget = defaultBudget, most = 6): ChangeOverResult {
  const wishes = wishesOf(question, true);
  const found = fewestByHand(question, wishes, budget, most);
  if (found.kind !== "found") return found;
  const { hand, sure } = found;
  const { solutions, proven } = cheapest(
    handProblem(hand, sure),
    hand.costs,
    { k: 1 },
    {
      ...budget,
      steps: Math.min(budget.steps ?? mostForThings, mostForThings),
    },
  );
  const solution = solutions[0]?.solution ?? found.solution;
  const machines = Array.from({ length: hand.ways }, (_, way) => machineOf(hand, solution, way));
  const ways = machines.flatMap((machine, way) => wayOf(question, machine, `way-${way + 1}`, budget) ?? []);
  // Each way is put to the rules by itself; one that they do not allow is not told.
  if (ways.length < machines.length) return { kind: "stopped" };
  const changes = ways.flatMap((from, i) =>
    ways.flatMap((to, j) =>
      i === j ? [] : [{ from: from.id, to: to.id, steps: stepsBetween(question, itemAt(machines, i), itemAt(machines, j), machines) }],
    ),
  );
  // The search counts a thing that differs once for each two ways; where the steps told are more, another plan might need fewer.
  const counted = 2 * (solutions[0]?.cost[0] ?? 0);
  const told = changes.reduce((sum, { steps }) => sum + steps.length - 2, 0);
  const stepsProven = proven && solutions.length > 0 && told === counted;
  return { kind: "change-over", ways, fewestProven: found.fewestProven, changes, stepsProven };
}

type Fewest =
  | { readonly kind: "found"; readonly hand: ByHand; readonly sure: Sureness; readonly solution: Solution; readonly fewestProven: boolean }
  | { readonly kind: "none" }
  | { readonly kind: "stopped" };

/** Tries one way, two, three; as many as there are wishes to grant are enough if any number is. */
function fewestByHand(question: ResolvedBuild, wishes: readonly Wish[], budget: Budget, most: number): Fewest {
  const granted = wishes.filter(isGranted);
  const enough = Math.max(1, granted.length);
  // A wish that no way could grant by itself is granted by no number of them.
  const alone = (wish: Wish) => byHand(question, [...wishes.filter((w) => !isGranted(w)), wish], 1);
  if (granted.some((wish) => decide(handProblem(alone(wish), "unknown"), budget).kind === "none")) return { kind: "none" };
  let fewestProven = true;
  let perhaps: Fewest | undefined;
  let stopped = false;
  for (let count = 1; count <= Math.min(enough, most); count += 1) {
    const hand = byHand(question, wishes, count);
    const open = decide(handProblem(hand, "unknown"), budget);
    if (open.kind === "none") continue;
    for (const sure of ["workable", "conditional"] as const) {
      const certain = decide(handProblem(hand, sure), budget);
      if (certain.kind === "found") return { kind: "found", hand, sure, solution: certain.solution, fewestProven };
      stopped ||= certain.kind === "stopped";
    }
    if (open.kind === "found") perhaps ??= { kind: "found", hand, sure: "unknown", solution: open.solution, fewestProven };
    stopped ||= open.kind === "stopped";
    fewestProven = false;
  }
  return perhaps ?? { kind: stopped || enough > most ? "stopped" : "none" };
}

interface Standing {
  readonly revision: string;
  readonly slot: string;
  readonly settings: Readonly<Record<string, string>>;
  readonly on: boolean;
}

interface Machine {
  readonly revision: string;
  readonly memory: number;
  readonly firmware: string;
  /** Copies that are in; the others are out. */
  readonly cards: ReadonlyMap<string, Standing>;
}

function machineOf({ compiled, size }: ByHand, solution: Solution, way: number): Machine {
  const { frame, question } = compiled;
  const own = solution.slice(way * size, (way + 1) * size);
  const cards = eachCard(frame).flatMap(({ at, asked }): [string, Standing][] => {
    const v = itemAt(frame.cards, at);
    const slot = question.slots[itemAt(own, v.slot)];
    if (!slot) return [];
    const on = frame.on[0]?.[at];
    const settings = Object.fromEntries(asked.settings.map((s, i) => [s.id, itemAt(s.positions, itemAt(own, itemAt(v.settings, i))).id]));
    const isOn = on === undefined || holds({ variable: on, values: [1] }, own);
    return [[asked.as, { revision: itemAt(asked.revisions, itemAt(own, v.revision)), slot: slot.id, settings, on: isOn }]];
  });
  return {
    revision: itemAt(question.revisions, itemAt(own, frame.revision)),
    memory: itemAt(question.memories, itemAt(own, frame.memory)),
    firmware: itemAt(question.versions, itemAt(own, itemAt(frame.firmware, 0))).id,
    cards: new Map(cards),
  };
}

function wayOf(question: ResolvedBuild, machine: Machine, id: string, budget: Budget): HandWay | undefined {
  const { wishes: _w, modes: _m, ...rest } = question.build;
  const cards = question.build.cards.flatMap((card): BuildCard[] => {
    const standing = machine.cards.get(card.as ?? card.card);
    if (!standing) return [];
    const { revision, slot, settings } = standing;
    return [{ ...card, ...(revision === "" ? {} : { revision }), slot, ...(Object.keys(settings).length > 0 ? { settings } : {}) }];
  });
  const on = question.cards.filter((c) => machine.cards.get(c.as)?.on).map((c) => c.as);
  const build: Build = {
    ...rest,
    revision: machine.revision,
    ...(machine.memory > 0 ? { memory: machine.memory } : {}),
    cards,
    modes: [{ id, name: id, firmware: machine.firmware, cards: on }],
  };
  const request = resolveBuild(question.catalogue, build);
  const verdict = request.kind === "question" ? verdictOf(compile(request.question), budget) : "ruled-out";
  if (verdict === "ruled-out" || verdict === "stopped") return undefined;
  return {
    id,
    firmware: machine.firmware,
    on,
    off: question.cards.filter((c) => machine.cards.get(c.as)?.on === false).map((c) => c.as),
    out: question.cards.filter((c) => !machine.cards.has(c.as)).map((c) => c.as),
    verdict,
    build,
  };
}

/**
 * What the hand does to get from one machine to the other: power off, out, set, in, firmware, power on; what software does comes last. `all`
 * are the machines of every way: how a card lies in the drawer depends on which of them ran before.
 */
function stepsBetween(question: ResolvedBuild, from: Machine, to: Machine, all: readonly Machine[]): readonly HandStep[] {
  const set: HandStep[] = [];
  const bySoftware: HandStep[] = [];
  for (const { as, card, settings } of question.cards) {
    const [before, after] = [from.cards.get(as), to.cards.get(as)];
    if (!after) continue;
    const stood = before ? [before] : all.flatMap((m) => m.cards.get(as) ?? []);
    for (const { id, by } of settings) {
      const [was, is] = [before?.settings[id], after.settings[id]];
      if (is === undefined || stood.every((s) => s.settings[id] === is)) continue;
      const step: HandStep = { kind: "set", card: as, setting: id, ...(was === undefined ? {} : { from: was }), to: is };
      (by === "software" ? bySoftware : set).push(step);
    }
    if (stood.every((s) => s.on === after.on)) continue;
    const contact = contactOf(card, after.on);
    (contact ? set : bySoftware).push({ kind: after.on ? "switch-on" : "switch-off", card: as, ...(contact ? { contact } : {}) });
  }
  const firmware: HandStep[] = from.firmware === to.firmware ? [] : [{ kind: "exchange-firmware", from: from.firmware, to: to.firmware }];
  return [
    { kind: "power-off" },
    ...placing(question, from, to, set),
    ...firmware,
    { kind: "power-on", firmware: to.firmware },
    ...bySoftware,
  ];
}

/** What is done at the points of a card's contact to turn it on or off; undefined when software does it. */
function contactOf({ enable }: Card, on: boolean) {
  if (enable?.by !== "contacts") return undefined;
  const points = (enable.points ?? []).filter((p) => p.role !== "ground").map((p) => p.id);
  if (enable.sense === "change-over") return { points, made: on ? "to-on" : "to-off" } as const;
  return { points, made: on === (enable.sense !== "open-enables") ? "closed" : "open" } as const;
}

/** Cards taken out, what is set meanwhile, cards moved and put in: none into a slot that another still holds. */
function placing(question: ResolvedBuild, from: Machine, to: Machine, set: readonly HandStep[]): readonly HandStep[] {
  const out: HandStep[] = [];
  const moved: HandStep[] = [];
  const put: HandStep[] = [];
  const held = new Map([...from.cards].map(([as, { slot }]) => [slot, as]));
  const waiting: { readonly card: string; readonly from: string; readonly to: string }[] = [];
  for (const { as } of question.cards) {
    const [before, after] = [from.cards.get(as)?.slot, to.cards.get(as)?.slot];
    if (before !== undefined && after === undefined) {
      out.push({ kind: "take-out", card: as, slot: before });
      held.delete(before);
    } else if (before === undefined && after !== undefined) put.push({ kind: "put-in", card: as, slot: after });
    else if (before !== undefined && after !== undefined && before !== after) waiting.push({ card: as, from: before, to: after });
  }
  while (waiting.length > 0) {
    const at = waiting.findIndex((move) => !held.has(move.to));
    const [move] = waiting.splice(Math.max(0, at), 1);
    if (!move) break;
    held.delete(move.from);
    // Two that change places: one must lie on the bench meanwhile.
    if (at < 0) {
      out.push({ kind: "take-out", card: move.card, slot: move.from });
      put.push({ kind: "put-in", card: move.card, slot: move.to });
      continue;
    }
    moved.push({ kind: "move", ...move });
    held.set(move.to, move.card);
  }
  return [...out, ...set, ...moved, ...put];
}
