// The build as the simulation sees it: nodes for every end, joins for wires and plug, contacts by position, what each bank holds.
// A variant is the same build with something wrong; faults.ts makes them.

import { itemAt } from "../../records/index.js";
import type { CardState, Level, MachineState } from "../types.js";
import { isHeld, type Join, levelOf, type Netlist, type Solved, solve, together } from "./netlist.js";

export interface ModelLine {
  readonly line: string;
  readonly bit: number;
  /** Node of the device pin, one a lane. */
  readonly nodes: readonly number[];
}

export interface ModelCard {
  readonly card: string;
  /** What it is called at the bench. */
  readonly name: string;
  readonly kind: "ground" | "pair" | "change-over";
  readonly closedIs: "on" | "off";
  /** ground: [point]; pair: [a, b]; change-over: [common, on, off]. */
  readonly nodes: readonly number[];
  /** What the nodes are called on the card. */
  readonly points: readonly string[];
}

export interface ModelMode {
  readonly id: string;
  readonly version: number;
  readonly on: readonly boolean[];
}

/** What is there and stays there whatever is wired wrongly. */
export interface Model {
  readonly nodes: readonly string[];
  readonly lines: readonly ModelLine[];
  /** Devices; row after row where sockets in a row share the window. */
  readonly lanes: number;
  readonly rows: number;
  /** Part of the bank number that lines without a node give. */
  readonly fixedBits: number;
  readonly cards: readonly ModelCard[];
  readonly versions: readonly string[];
  readonly modes: readonly ModelMode[];
  readonly positions: readonly string[];
  /** Mode at each position; undefined beyond the stop. */
  readonly modeAt: readonly (number | undefined)[];
}

/** Content of a bank that does not run. */
export const nothingRuns = -1;

/** What can be wrong: everything a soldering iron or a burner touches. */
export interface Variant {
  readonly joins: readonly Join[];
  readonly pullUps: readonly number[];
  readonly strong: Netlist["strong"];
  /** Contacts made at each position of the knob. */
  readonly closed: readonly (readonly Join[])[];
  /** Version in each bank, lane by lane; undefined: nobody can say what is read there. */
  readonly content: readonly (readonly (number | undefined)[])[];
  /** Positions that the knob, set wrongly, does not turn to; the switch then stands at the last one it does. */
  readonly unreached?: ReadonlySet<number>;
}

/** A state in numbers, as the fault table compares it. */
export interface RawState {
  readonly levels: readonly Level[];
  /** Bank of each lane; undefined while a line floats. */
  readonly banks: readonly (number | undefined)[];
  /** Place in `versions`, nothingRuns, or undefined when no level decides. */
  readonly version: number | undefined;
  readonly cards: readonly CardState[];
  readonly short: boolean;
}

const solvedBefore = new WeakMap<Variant, Solved[]>();

/** The variant at a position of the knob; worked out once, since table, measurements and suggestion all ask. */
export function solvedAt(model: Model, variant: Variant, position: number): Solved {
  const known = solvedBefore.get(variant) ?? [];
  solvedBefore.set(variant, known);
  known[position] ??= solveVariant(model, variant, itemAt(variant.closed, position));
  return known[position];
}

function solveVariant(model: Model, variant: Variant, closed: readonly Join[]): Solved {
  return solve({ nodes: model.nodes, joins: variant.joins, pullUps: variant.pullUps, strong: variant.strong }, closed);
}

export function stateAt(model: Model, variant: Variant, position: number): RawState {
  return readState(model, variant, solvedAt(model, variant, position));
}

export function rawState(model: Model, variant: Variant, closed: readonly Join[]): RawState {
  return readState(model, variant, solveVariant(model, variant, closed));
}

function readState(model: Model, variant: Variant, solved: Solved): RawState {
  const laneBanks = Array.from({ length: model.lanes }, (_, lane) => {
    let bank = model.fixedBits;
    for (const line of model.lines) {
      const level = levelOf(solved, itemAt(line.nodes, lane));
      if (level === "high") bank |= 1 << line.bit;
      else if (level !== "low") return undefined;
    }
    return bank;
  });
  const shown = laneBanks.map((bank, lane) => (bank === undefined ? undefined : itemAt(variant.content, lane)[bank]));
  const version = shownBy(model, shown);
  const levels = model.lines.map((line) => {
    const all = line.nodes.map((node) => levelOf(solved, node));
    return all.find((l) => l === "short" || l === "floating") ?? (all.every((l) => l === all[0]) ? itemAt(all, 0) : "floating");
  });
  return {
    levels,
    banks: laneBanks,
    version: model.lanes === 0 ? 0 : version,
    cards: model.cards.map((card, i) => cardState(model, solved, card, i)),
    short: solved.short,
  };
}

/**
 * The version of all devices. Lanes of two versions give bytes of neither, which do not run; rows of two run as far as nobody can say.
 */
function shownBy({ lanes, rows }: Model, shown: readonly (number | undefined)[]): number | undefined {
  if (shown.some((s) => s === undefined)) return undefined;
  const perRow = lanes / rows;
  if (shown.some((s, i) => s === nothingRuns || s !== shown[i - (i % perRow)])) return nothingRuns;
  return shown.every((s) => s === shown[0]) ? shown[0] : undefined;
}

function cardState(model: Model, solved: Solved, card: ModelCard, index: number): CardState {
  const [a, b, c] = card.nodes as [number, number, number];
  const opposite = card.closedIs === "on" ? "off" : "on";
  switch (card.kind) {
    case "ground": {
      if (levelOf(solved, a) === "low") return card.closedIs;
      // Held by the supply, or driven by a line of the board: nobody can say what the card makes of it.
      return isHeld(solved, a) ? "undefined" : opposite;
    }
    case "pair": {
      if (together(solved, a, b)) return card.closedIs;
      // A point that belongs to the card alone and touches anything else: nobody can say what the card makes of it.
      return touches(model, solved, a, index) || touches(model, solved, b, index) ? "undefined" : opposite;
    }
    case "change-over": {
      const on = together(solved, a, b);
      const off = together(solved, a, c);
      return on === off ? "undefined" : on ? "on" : "off";
    }
  }
}

function touches(model: Model, solved: Solved, node: number, own: number): boolean {
  if (itemAt(solved.held, itemAt(solved.group, node)) !== 0) return true;
  return model.cards.some((card, i) => i !== own && card.nodes.some((other) => together(solved, node, other)));
}

export function modeOf(model: Model, state: RawState): number | undefined {
  if (state.short || state.version === undefined) return undefined;
  const found = model.modes.findIndex(
    (mode) => (model.lanes === 0 || mode.version === state.version) && mode.on.every((on, i) => state.cards[i] === (on ? "on" : "off")),
  );
  return found < 0 ? undefined : found;
}

/** True when the state is the mode, whatever other mode it may be as well. */
export function isMode(model: Model, state: RawState, mode: number): boolean {
  const want = itemAt(model.modes, mode);
  return (
    !state.short &&
    !state.levels.some((l) => l === "floating" || l === "short") &&
    (model.lanes === 0 || state.version === want.version) &&
    want.on.every((on, i) => state.cards[i] === (on ? "on" : "off"))
  );
}

/** The state in words, for tables and proofs. */
export function machineState(model: Model, raw: RawState): MachineState {
  const mode = modeOf(model, raw);
  const undefinedSomewhere = raw.version === undefined || raw.cards.includes("undefined") || raw.levels.includes("floating");
  const verdict = raw.short ? "short" : undefinedSomewhere ? "undefined" : mode === undefined ? "unplanned" : "planned";
  const version = raw.version === undefined || raw.version === nothingRuns ? undefined : model.versions[raw.version];
  const banks = new Set(raw.banks);
  const bank = banks.size === 1 ? raw.banks[0] : undefined;
  return {
    levels: model.lines.map((line, i) => ({ line: line.line, level: itemAt(raw.levels, i) })),
    ...(bank === undefined ? {} : { bank }),
    ...(version === undefined ? {} : { version }),
    cards: model.cards.map((card, i) => ({ card: card.card, state: itemAt(raw.cards, i) })),
    verdict,
    ...(verdict === "planned" && mode !== undefined ? { mode: itemAt(model.modes, mode).id } : {}),
    says: stateText(model, raw),
  };
}

export function shownText(model: Model, raw: RawState): string {
  if (raw.short) return "supply shorted";
  if (raw.version === undefined) return "not certain which firmware";
  return raw.version === nothingRuns ? "does not start" : (model.versions[raw.version] ?? "");
}

function stateText(model: Model, raw: RawState): string {
  const floating = model.lines.flatMap((line, i) => (raw.levels[i] === "floating" ? [line.line] : []));
  return runningText(model, raw, floating.length > 0 ? [`${floating.join(", ")} floating`] : []);
}

/** What runs and what is on. */
export function runningText(model: Model, raw: RawState, more: readonly string[] = []): string {
  const of = (state: CardState) => model.cards.flatMap((card, i) => (raw.cards[i] === state ? [card.name] : []));
  const parts = [shownText(model, raw), ...more];
  if (of("on").length > 0) parts.push(`${of("on").join(", ")} on`);
  if (of("off").length > 0) parts.push(`${of("off").join(", ")} off`);
  if (of("undefined").length > 0) parts.push(`${of("undefined").join(", ")} neither on nor off`);
  return parts.join("; ");
}
