// The slow, obvious twin of the contact search: every net on every terminal, judged by joining nets and nothing else. It shares no
// code with the planner. Two remarks keep it bearable, both plain from `state`:
// - a net that belongs to one card alone may touch nothing but that card's nets, so only nets of one owner are ever put on one
//   section of a switch: two of its terminals that no position joins leave the section without any effect;
// - in an ordinary switch the throws of one position are not those of another, so positions are searched one by one for each choice
//   of what the hubs carry.
import type { Card, Switch } from "../../../src/records/index.js";

type Enable = NonNullable<Card["enable"]>;

export interface BruteMode {
  readonly version: string;
  readonly on: readonly boolean[];
}

export interface BruteInput {
  readonly modes: readonly BruteMode[];
  readonly safestVersion: string;
  readonly enables: readonly Enable[];
  readonly lines: number;
}

/** Nets are numbers: 0 ground, then lines, then the points of the cards. */
interface Nets {
  readonly count: number;
  readonly lines: number;
  readonly cards: readonly CardNets[];
  /** Card that a net belongs to alone, or -1. */
  readonly owner: readonly number[];
}

interface CardNets {
  readonly kind: "change-over" | "pair" | "grounding";
  readonly closedIsOn: boolean;
  /** change-over: common, on, off; else the two ends, 0 being ground. */
  readonly at: readonly number[];
  readonly mine: number;
}

function netsOf({ enables, lines }: BruteInput): Nets {
  const owner: number[] = new Array(1 + lines).fill(-1);
  const cards = enables.map((enable, card): CardNets => {
    const has = (role: string) => enable.points!.some((p) => p.role === role);
    const kind = has("common") ? "change-over" : has("b") ? "pair" : "grounding";
    const add = () => owner.push(kind === "grounding" ? -1 : card) - 1;
    const at = kind === "change-over" ? [add(), add(), add()] : kind === "pair" ? [add(), add()] : [add(), 0];
    const mine = at.reduce((mask, net) => (net === 0 ? mask : mask | (1 << net)), 0);
    return { kind, closedIsOn: enable.sense === "closed-enables", at, mine };
  });
  return { count: owner.length, lines, cards, owner };
}

/** What the joined groups of nets do; levels has bit j set when line j is high. Undefined when some card is in between. */
function state(nets: Nets, groups: readonly number[]): { readonly levels: number; readonly on: number } | undefined {
  const of = (net: number) => {
    for (const g of groups) if ((g >> net) & 1) return g;
    return 1 << net;
  };
  const levels = ~(of(0) >> 1) & (2 ** nets.lines - 1);
  let on = 0;
  for (let card = 0; card < nets.cards.length; card += 1) {
    const { kind, closedIsOn, at, mine } = nets.cards[card]!;
    const group = of(at[0]!);
    const alone = (group & ~mine) === 0;
    const toFirst = (group >> at[1]!) & 1;
    if (kind === "grounding") {
      if (!toFirst && !alone) return undefined;
    } else if (!alone || (of(at[1]!) & ~mine) !== 0) return undefined;
    if (kind === "change-over") {
      const toOff = (group >> at[2]!) & 1;
      if (toFirst === toOff || (of(at[2]!) & ~mine) !== 0) return undefined;
      on |= toFirst << card;
    } else if ((toFirst === 1) === closedIsOn) on |= 1 << card;
  }
  return { levels, on };
}

function join(groups: readonly number[], mask: number): number[] {
  let all = mask;
  const rest: number[] = [];
  for (const g of groups) {
    if (g & mask) all |= g;
    else rest.push(g);
  }
  rest.push(all);
  return rest;
}

const onMask = (mode: BruteMode) => mode.on.reduce((mask, on, i) => (on ? mask | (1 << i) : mask), 0);

/** Whether some choice of versions for levels lets every mode take one of its levels; all lines high shows the safest version. */
function versionsExist(modes: readonly BruteMode[], choices: readonly ReadonlySet<number>[], safest: string, open: number): boolean {
  const held = new Map<number, string>([[open, safest]]);
  const step = (i: number): boolean => {
    const mode = modes[i];
    if (!mode) return true;
    for (const levels of choices[i]!) {
      const now = held.get(levels);
      if (now !== undefined && now !== mode.version) continue;
      if (now === undefined) held.set(levels, mode.version);
      if (step(i + 1)) return true;
      if (now === undefined) held.delete(levels);
    }
    return false;
  };
  return step(0);
}

function tooManyVersions(input: BruteInput): boolean {
  return new Set([input.safestVersion, ...input.modes.map((m) => m.version)]).size > 2 ** input.lines;
}

/** Whether `poles` poles of an ordinary switch can give the modes, whatever is wired to them. */
export function uniformWorks(input: BruteInput, poles: number): boolean {
  if (tooManyVersions(input)) return false;
  const nets = netsOf(input);
  const open = 2 ** input.lines - 1;
  const hubs: number[] = [];
  const tryHubs = (from: number): boolean => {
    if (hubs.length === poles) return worksWith(input, nets, hubs, open);
    for (let net = from; net < nets.count; net += 1) {
      hubs.push(net);
      if (tryHubs(net)) return true;
      hubs.pop();
    }
    return false;
  };
  return tryHubs(0);
}

function worksWith(input: BruteInput, nets: Nets, hubs: readonly number[], open: number): boolean {
  const choices = input.modes.map(() => new Set<number>());
  const wants = input.modes.map(onMask);
  const seen = new Set<string>();
  const step = (pole: number, groups: readonly number[]): void => {
    const hub = hubs[pole];
    if (hub === undefined) {
      const key = [...groups].sort((a, b) => a - b).join();
      if (seen.has(key)) return;
      seen.add(key);
      const s = state(nets, groups);
      if (s) wants.forEach((want, m) => void (want === s.on && choices[m]!.add(s.levels)));
      return;
    }
    step(pole + 1, groups);
    for (let net = 0; net < nets.count; net += 1) {
      if (net !== hub && nets.owner[net] === nets.owner[hub]) step(pole + 1, join(groups, (1 << hub) | (1 << net)));
    }
  };
  step(0, []);
  if (choices.some((c) => c.size === 0)) return false;
  return versionsExist(input.modes, choices, input.safestVersion, open);
}

/** Whether any net on any terminal of an unusual switch gives the modes; every position must be one. */
export function unusualWorks(input: BruteInput, part: Switch, poles = Number.POSITIVE_INFINITY): boolean {
  if (tooManyVersions(input)) return false;
  const nets = netsOf(input);
  const open = 2 ** input.lines - 1;
  const place = new Map(part.terminals.map((t, i) => [t, i]));
  const groupsOf = (pairs: readonly (readonly [string, string])[]) =>
    pairs.reduce<number[]>((groups, [a, b]) => join(groups, (1 << place.get(a)!) | (1 << place.get(b)!)), []);
  const positions = part.positions.map((p) => groupsOf(part.closes[p] ?? []));
  const sections = groupsOf(Object.values(part.closes).flat());
  const at: number[] = part.terminals.map(() => -1);
  const usedPoles = () => sections.filter((s) => at.filter((net, t) => net >= 0 && (s >> t) & 1).length > 1).length;
  const step = (terminal: number): boolean => {
    if (terminal === at.length) return usedPoles() <= poles && positionsWork(input, nets, positions, at, open);
    if (step(terminal + 1)) return true;
    const section = sections.find((g) => (g >> terminal) & 1) ?? 0;
    const other = at.find((net, t) => t < terminal && net >= 0 && (section >> t) & 1);
    for (let net = 0; net < nets.count; net += 1) {
      if (other !== undefined && nets.owner[other] !== nets.owner[net]) continue;
      at[terminal] = net;
      if (step(terminal + 1)) return true;
    }
    at[terminal] = -1;
    return false;
  };
  return step(0);
}

function positionsWork(
  input: BruteInput,
  nets: Nets,
  positions: readonly (readonly number[])[],
  at: readonly number[],
  open: number,
): boolean {
  const levels: number[] = [];
  const fits: number[][] = [];
  for (const terminals of positions) {
    let groups: number[] = [];
    for (const group of terminals) {
      const mask = at.reduce((m, net, t) => (net >= 0 && (group >> t) & 1 ? m | (1 << net) : m), 0);
      if (mask !== 0) groups = join(groups, mask);
    }
    const s = state(nets, groups);
    if (!s) return false;
    const modes = input.modes.flatMap((mode, m) => (onMask(mode) === s.on ? [m] : []));
    if (modes.length === 0) return false;
    levels.push(s.levels);
    fits.push(modes);
  }
  if (input.modes.some((_, m) => !fits.some((f) => f.includes(m)))) return false;
  return everyModeShown(input, levels, fits, open);
}

/**
 * Whether versions can be given to levels so that each position shows a mode and each mode has a position of its own. Levels are taken
 * one after the other, and all sets of modes that can have been shown so far are kept: nothing is left out and nothing is guessed.
 */
function everyModeShown(input: BruteInput, levels: readonly number[], fits: readonly (readonly number[])[], open: number): boolean {
  const versions = [...new Set([input.safestVersion, ...input.modes.map((m) => m.version)])];
  let shown = new Set([0]);
  for (const level of new Set(levels)) {
    const next = new Set<number>();
    for (const version of level === open ? [input.safestVersion] : versions) {
      let reached = shown;
      levels.forEach((at, p) => {
        if (at !== level) return;
        const modes = fits[p]!.filter((m) => input.modes[m]!.version === version);
        reached = new Set([...reached].flatMap((mask) => modes.map((m) => mask | (1 << m))));
      });
      for (const mask of reached) next.add(mask);
    }
    shown = next;
  }
  return shown.has(2 ** input.modes.length - 1);
}
