// Contact plans of a uniform switch, by counting. Lines and grounding enables share poles: the hub carries ground and each throw at
// most one net. A contact between two points of a card, or a change-over, takes a section of its own. At one position a ground pole
// pulls one net low, so g ground poles are enough exactly when no mode needs more than g nets low at once.
import { entryOf, itemAt, must, type Switch } from "../../records/index.js";
import { closedIn, type Demands } from "../demand/demands.js";
import {
  type ContactPlan,
  type ContactSearch,
  finish,
  hasStop,
  isOwn,
  lowCards,
  type SectionUse,
  type TerminalUse,
} from "./contact-plan.js";
import type { Section } from "./sections.js";

/** Ways to have 1 to `zeros` of `lines` lines low. */
export function codesWithin(lines: number, zeros: number): number {
  let total = 0;
  let choose = 1;
  for (let z = 1; z <= Math.min(lines, zeros); z += 1) {
    choose = (choose * (lines - z + 1)) / z;
    total += choose;
  }
  return total;
}

/** Contacts each version can spare for lines with `ground` poles; the safest version needs none and is left out. */
export function slackOf(demands: Demands, ground: number): readonly { readonly version: number; readonly slack: number }[] {
  return demands.versions
    .map((version, v) => ({
      version: v,
      slack: Math.min(...demands.modes.flatMap((mode, m) => (mode.firmware === version ? [ground - lowCards(demands, m).length] : []))),
    }))
    .sort((a, b) => a.slack - b.slack || a.version - b.version);
}

/** Fewest lines that tell all versions apart with this many ground poles, or undefined. */
export function fewestLines(demands: Demands, ground: number, linesAvailable: number): number | undefined {
  const all = slackOf(demands, ground);
  if (all.some((s) => s.slack < 0)) return undefined;
  const others = all.filter((s) => s.version !== 0);
  for (let lines = 0; lines <= linesAvailable; lines += 1) {
    if (others.every((s, i) => codesWithin(lines, s.slack) >= i + 1)) return lines;
  }
  return undefined;
}

export function uniformPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
  const own = demands.cards.filter(isOwn).length;
  const plans: ContactPlan[] = [];
  for (let ground = 0; ground + own <= sections.length; ground += 1) {
    const lines = fewestLines(demands, ground, linesAvailable);
    if (lines === undefined || plans.some((p) => p.lines <= lines)) continue;
    plans.push(uniformPlan(part, sections, demands, ground, lines));
  }
  if (plans.length > 0) return { plans, complete: true, looked: plans.length };
  const needs = own + demands.cards.filter((c) => !isOwn(c)).length;
  return {
    plans,
    complete: true,
    looked: 0,
    says:
      `${part.name} has ${sections.length} pole${sections.length === 1 ? "" : "s"}; ${own} go to enables with points of their own` +
      `, and the rest cannot pull ${demands.versions.length} images and ${needs - own} grounding enables as the modes ask`,
  };
}

function uniformPlan(part: Switch, sections: readonly Section[], demands: Demands, ground: number, lines: number): ContactPlan {
  const codes = codesByContacts(lines);
  const versionAt = new Map<number, number>([[2 ** lines - 1, 0]]);
  const codeOf = new Map<number, number>([[0, 2 ** lines - 1]]);
  let next = 1;
  // Tightest first: the codes with the fewest lows go to the versions that can spare the fewest contacts.
  for (const { version } of slackOf(demands, ground)) {
    if (version === 0) continue;
    const code = itemAt(codes, next++);
    versionAt.set(code, version);
    codeOf.set(version, code);
  }
  const modeAt = part.positions.map((_, p) => (p < demands.modes.length ? p : hasStop(part) ? undefined : demands.safest));
  const throwsOf = sections.map(() => new Map<string, TerminalUse>());
  const levelsAt: number[] = [];
  const home = new Map<string, number>();
  const own = new Map(demands.cards.flatMap((card, i) => (isOwn(card) ? [i] : [])).map((card, i) => [card, ground + i]));
  modeAt.forEach((mode, position) => {
    if (mode === undefined) {
      levelsAt.push(2 ** lines - 1);
      return;
    }
    const code = entryOf(codeOf, demands.versions.indexOf(itemAt(demands.modes, mode).firmware));
    levelsAt.push(code);
    const low: TerminalUse[] = [
      ...Array.from({ length: lines }, (_, line) => line).flatMap((line): TerminalUse[] =>
        (code >> line) & 1 ? [] : [{ kind: "line", line }],
      ),
      ...lowCards(demands, mode).map((card): TerminalUse => ({ kind: "card", card, side: "closed" })),
    ];
    place(low, position, sections.slice(0, ground), throwsOf, home);
    for (const [card, section] of own) {
      const record = itemAt(demands.cards, card);
      const closed = closedIn(record, itemAt(itemAt(demands.modes, mode).on, card));
      const side = record.kind === "change-over" ? (closed ? "on" : "off") : "closed";
      if (record.kind === "pair" && !closed) continue;
      itemAt(throwsOf, section).set(throwAt(itemAt(sections, section), position), { kind: "card", card, side });
    }
  });
  const ownAt = new Map([...own].map(([card, section]) => [section, card]));
  const uses = sections.map((section, s): SectionUse | undefined => {
    const throws = itemAt(throwsOf, s);
    const card = ownAt.get(s);
    if (card === undefined && throws.size === 0) return undefined;
    return new Map([[section.hub, card === undefined ? { kind: "ground" } : { kind: "card", card, side: "common" }], ...throws]);
  });
  return finish({ part, sections, uses, lines, modeAt, levelsAt, versionAt });
}

/** Puts the nets of one position on free poles; a net stays on the pole it had before where it can. */
function place(
  low: readonly TerminalUse[],
  position: number,
  sections: readonly Section[],
  throwsOf: readonly Map<string, TerminalUse>[],
  home: Map<string, number>,
): void {
  const taken = new Set<number>();
  const name = (use: TerminalUse) => (use.kind === "card" ? `card ${use.card}` : use.kind === "line" ? `line ${use.line}` : "ground");
  const put = (use: TerminalUse, section: number) => {
    taken.add(section);
    if (!home.has(name(use))) home.set(name(use), section);
    itemAt(throwsOf, section).set(throwAt(itemAt(sections, section), position), use);
  };
  const later: TerminalUse[] = [];
  for (const use of low) {
    const at = home.get(name(use));
    if (at !== undefined && !taken.has(at)) put(use, at);
    else later.push(use);
  }
  for (const use of later) {
    const free = sections.findIndex((_, s) => !taken.has(s));
    if (free >= 0) put(use, free);
  }
}

function throwAt(section: Section, position: number): string {
  return must(
    section.throws.find((t) => t.closed.has(position)),
    `a throw that is closed in position ${position}`,
  ).terminal;
}

/** All levels of the lines, fewest lows first; the first is all high. */
function codesByContacts(lines: number): number[] {
  const lows = (code: number) => lines - [...code.toString(2)].filter((b) => b === "1").length;
  return Array.from({ length: 2 ** lines }, (_, code) => code).sort((a, b) => lows(a) - lows(b) || b - a);
}
