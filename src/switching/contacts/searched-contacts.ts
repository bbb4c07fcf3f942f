// Contact plans of a switch whose throws close in several positions or in none: every assignment of nets to terminals is tried, and
// for each every choice of versions that gives each position a mode and each mode a position.
import type { Switch } from "../../records/index.js";
import { compare } from "../compare.js";
import type { Demands } from "../demand/demands.js";
import { type ContactPlan, type ContactSearch, finish, hasStop, isOwn, type SectionUse, type TerminalUse } from "./contact-plan.js";
import { isSimple, type Section } from "./sections.js";
import { chooseVersions, modesAt } from "./version-choice.js";

/** Positions worked out, over all assignments, before an unusual switch is given up as too large: a second or two. */
const mostWork = 400_000;
/** What an assignment costs that is put aside at once, in positions. */
const workOfOne = 8;
/** Lines an unusual switch is tried with. */
const mostLines = 4;
/** Cards an unusual switch is tried with: their nets and the lines are bits of one number. */
const mostCards = 6;

export function searchedPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
  if (demands.cards.length > mostCards) {
    return { plans: [], complete: false, looked: 0, says: `${part.name} was not tried with more than ${mostCards} switched cards` };
  }
  const best = new Map<number, ContactPlan>();
  const positions = part.positions.map((p) => reached(part.closes[p] ?? []));
  const ownCards = demands.cards.filter(isOwn).length;
  // Each terminal takes one net, and each of these nets needs a terminal.
  const room = sections.reduce((sum, section) => sum + 1 + section.throws.length, 0);
  const roomFrom = sections.map((_, s) => sections.slice(s).reduce((sum, section) => sum + 1 + section.throws.length, 0));
  const least = Math.ceil(Math.log2(demands.versions.length));
  const most = Math.min(linesAvailable, room - 1);
  const fitting = modesByCards(demands);
  const work = { left: mostWork };
  let looked = 0;
  let complete = most <= mostLines;
  for (let lines = least; lines <= Math.min(most, mostLines); lines += 1) {
    const shared = sharedUses(demands, lines);
    const uses: (SectionUse | undefined)[] = [];
    const walk = (s: number, own: ReadonlySet<number>, placed: ReadonlySet<TerminalUse>): void => {
      // Each card with points of its own needs a section still to come, each line and each grounding enable a terminal.
      if (ownCards - own.size > sections.length - s) return;
      if (shared.length - placed.size > (roomFrom[s] ?? 0)) return;
      if (work.left <= 0) {
        complete = false;
        return;
      }
      const section = sections[s];
      if (!section) {
        looked += 1;
        const plan = judge({ part, positions, sections, uses, lines, demands, fitting, work });
        if (plan === "stopped") complete = false;
        else if (plan) keepBetter(best, plan);
        return;
      }
      const put = (use: SectionUse | undefined, taken: ReadonlySet<number>) => {
        uses.push(use);
        walk(s + 1, taken, use ? new Set([...placed, ...use.values()]) : placed);
        uses.pop();
      };
      put(undefined, own);
      const later = shared.length - placed.size - (roomFrom[s + 1] ?? 0);
      assign(section, shared, { placed, least: later }, (use) => put(use, own));
      for (const [i, card] of demands.cards.entries()) {
        if (!isOwn(card) || own.has(i)) continue;
        const sides = card.kind === "pair" ? (["common", "closed"] as const) : (["common", "on", "off"] as const);
        const nets = sides.map((side): TerminalUse => ({ kind: "card", card: i, side }));
        assign(section, nets, { placed: new Set(), least: nets.length }, (use) => put(use, new Set([...own, i])));
      }
    };
    walk(0, new Set(), new Set());
  }
  const plans = [...best.values()].sort((a, b) => a.poles - b.poles || a.lines - b.lines);
  const front = plans.filter((p, i) => plans.slice(0, i).every((q) => p.lines < q.lines));
  const says = complete
    ? `no wiring of ${part.name} gives the modes at its positions`
    : `${part.name} has too many contacts to try them all`;
  return { plans: front, complete, looked, says: front.length > 0 ? undefined : says };
}

/** Of plans with as many lines the best by the order below, of equals the one found first. */
function keepBetter(best: Map<number, ContactPlan>, plan: ContactPlan): void {
  const before = best.get(plan.lines);
  if (!before || compare(orderOf(plan), orderOf(before)) < 0) best.set(plan.lines, plan);
}

/** Fewest poles, fewest wired terminals, ground on as many commons as can be, every mode within the fewest positions. */
function orderOf({ poles, contacts, sections, uses, modeAt }: ContactPlan): readonly number[] {
  const grounded = sections.filter((section, s) => uses[s]?.get(section.hub)?.kind === "ground").length;
  const lastFirst = Math.max(...modeAt.map((mode, p) => (mode === undefined || modeAt.indexOf(mode) < p ? 0 : p)));
  return [poles, contacts, -grounded, lastFirst];
}

/** Ground, the lines and the grounding enables: they may share a section. Ground stands first; it is left out where nothing needs it. */
function sharedUses(demands: Demands, lines: number): readonly TerminalUse[] {
  const nets = [
    ...Array.from({ length: lines }, (_, line): TerminalUse => ({ kind: "line", line })),
    ...demands.cards.flatMap((card, i): TerminalUse[] => (isOwn(card) ? [] : [{ kind: "card", card: i, side: "closed" }])),
  ];
  return nets.length === 0 ? [] : [{ kind: "ground" }, ...nets];
}

/** Nets placed in earlier sections, and how many more of them this section must take so that the others can take the rest. */
interface Toward {
  readonly placed: ReadonlySet<TerminalUse>;
  readonly least: number;
}

/**
 * Every way to put some of the nets on the terminals of a section, two at least and the first net among them. Where each contact joins
 * the hub and one throw the first net goes to the hub: any wiring of such a section that does something can be turned round so. Lines
 * are alike, so one is placed for the first time only after all before it.
 */
function assign(section: Section, nets: readonly TerminalUse[], toward: Toward, take: (use: SectionUse) => void): void {
  const [first] = nets;
  if (!first) return;
  const simple = isSimple(section);
  const terminals = simple ? section.throws.map((t) => t.terminal) : [section.hub, ...section.throws.map((t) => t.terminal)];
  const use = new Map<string, TerminalUse>(simple ? [[section.hub, first]] : []);
  const offered = simple ? nets.slice(1) : nets;
  const has = (net: TerminalUse) => toward.placed.has(net) || [...use.values()].includes(net);
  const step = (i: number): void => {
    const added = new Set([...use.values()].filter((net) => !toward.placed.has(net))).size;
    if (added + terminals.length - i < toward.least) return;
    const terminal = terminals[i];
    if (terminal === undefined) {
      if (use.size >= 2 && [...use.values()].includes(first)) take(new Map(use));
      return;
    }
    step(i + 1);
    for (const net of offered) {
      if (
        net.kind === "line" &&
        net.line > 0 &&
        !offered.some((other) => other.kind === "line" && other.line === net.line - 1 && has(other))
      )
        continue;
      use.set(terminal, net);
      step(i + 1);
      use.delete(terminal);
    }
  };
  step(0);
}

interface Assignment {
  readonly part: Switch;
  /** Terminals that each position joins. */
  readonly positions: readonly (readonly (readonly string[])[])[];
  readonly sections: readonly Section[];
  readonly uses: readonly (SectionUse | undefined)[];
  readonly lines: number;
  readonly demands: Demands;
  readonly fitting: ReturnType<typeof modesByCards>;
  /** Counted down by every position that is worked out. */
  readonly work: { left: number };
}

/** The modes in which just these cards are on; one list for each set of cards. */
function modesByCards(demands: Demands): (on: readonly (boolean | undefined)[]) => readonly number[] {
  const lists = new Map<string, readonly number[]>();
  return (on) => {
    const key = on.join();
    const known = lists.get(key);
    if (known) return known;
    const fits = demands.modes.flatMap((mode, m) => (mode.on.every((want, i) => want === on[i]) ? [m] : []));
    lists.set(key, fits);
    return fits;
  };
}

/** The plan an assignment makes, when each position gives a mode and each mode has a position. */
function judge({ part, positions, sections, uses, lines, demands, fitting, work }: Assignment): ContactPlan | "stopped" | undefined {
  work.left -= workOfOne;
  const place = new Map<string, TerminalUse>(uses.flatMap((use) => (use ? [...use] : [])));
  const wired = new Set([...place.values()].flatMap((u) => (u.kind === "card" ? [u.card] : [])));
  if (demands.cards.some((_, i) => !wired.has(i)) || !everyLine(place, lines)) return undefined;
  const nets = netNumbers(lines);
  const stop = hasStop(part);
  const levelsAt: number[] = [];
  const wants: (readonly number[])[] = [];
  for (const terminals of positions) {
    work.left -= 1;
    const groups = joined(terminals, place, nets);
    const of = (use: TerminalUse) => {
      const bit = 1 << nets(use);
      return groups.find((g) => g & bit) ?? bit;
    };
    const ground = of({ kind: "ground" });
    const levels = Array.from({ length: lines }, (_, line) => ((ground >> nets({ kind: "line", line })) & 1 ? 0 : 1 << line));
    const on = demands.cards.map((card, i) => {
      const to = (side: "common" | "closed" | "on" | "off") =>
        (of({ kind: "card", card: i, side: "common" }) >> nets({ kind: "card", card: i, side })) & 1;
      if (card.kind === "ground")
        return ((ground >> nets({ kind: "card", card: i, side: "closed" })) & 1) === (card.closedIs === "on" ? 1 : 0);
      if (card.kind === "pair") return (to("closed") === 1) === (card.closedIs === "on");
      return to("on") === to("off") ? undefined : to("on") === 1;
    });
    const fits = fitting(on);
    if (fits.length === 0 && !stop) return undefined;
    levelsAt.push(levels.reduce((sum, bit) => sum | bit, 0));
    wants.push(fits);
  }
  // A stop ring shuts off the last positions, never one between two others.
  let stopped = false;
  for (let reach = stop ? demands.modes.length : positions.length; reach <= positions.length; reach += 1) {
    const reachable = { levelsAt: levelsAt.slice(0, reach), wants: wants.slice(0, reach) };
    if (reachable.wants.some((fits) => fits.length === 0)) break;
    const request = { ...reachable, open: 2 ** lines - 1, demands };
    work.left -= reach;
    const versionAt = chooseVersions(request);
    if (versionAt === "stopped") stopped = true;
    if (typeof versionAt === "string") continue;
    const shown = modesAt(request, versionAt);
    const modeAt = positions.map((_, p) => shown[p]);
    return finish({ part, sections, uses: [...uses], lines, modeAt, levelsAt, versionAt });
  }
  return stopped ? "stopped" : undefined;
}

/** A number for each net: ground, lines, then four for each card. */
function netNumbers(lines: number): (use: TerminalUse) => number {
  const sides = ["common", "closed", "on", "off"];
  return (use) => (use.kind === "ground" ? 0 : use.kind === "line" ? 1 + use.line : 1 + lines + 4 * use.card + sides.indexOf(use.side));
}

/** An assignment that leaves a line out is one of those with fewer lines. */
function everyLine(place: ReadonlyMap<string, TerminalUse>, lines: number): boolean {
  return new Set([...place.values()].flatMap((use) => (use.kind === "line" ? [use.line] : []))).size === lines;
}

/** Terminals that the closed contacts of a position join. */
function reached(pairs: readonly (readonly [string, string])[]): string[][] {
  let groups: Set<string>[] = [];
  for (const [a, b] of pairs) {
    const touching = groups.filter((g) => g.has(a) || g.has(b));
    groups = [...groups.filter((g) => !touching.includes(g)), new Set([a, b, ...touching.flatMap((g) => [...g])])];
  }
  return groups.map((g) => [...g]);
}

/** Sets of nets that a position joins, as bits. A net on two groups of terminals joins them. */
function joined(
  terminals: readonly (readonly string[])[],
  place: ReadonlyMap<string, TerminalUse>,
  nets: (use: TerminalUse) => number,
): number[] {
  let groups: number[] = [];
  for (const group of terminals) {
    let mask = 0;
    for (const terminal of group) {
      const use = place.get(terminal);
      if (use) mask |= 1 << nets(use);
    }
    if (mask === 0) continue;
    const apart: number[] = [];
    for (const other of groups) {
      if (other & mask) mask |= other;
      else apart.push(other);
    }
    groups = [...apart, mask];
  }
  return groups;
}
