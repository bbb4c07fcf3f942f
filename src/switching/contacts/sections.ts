// The parts of a switch that never touch one another: a hub and the terminals it reaches, position by position.
// For most switches a section is a pole; a coded switch is one section whose terminals close in several positions each.
import { itemAt, type Switch } from "../../records/index.js";

export interface Section {
  readonly pole: number;
  readonly hub: string;
  /** Every other terminal, with the places (in `positions` of the switch) where it is joined to the hub. */
  readonly throws: readonly { readonly terminal: string; readonly closed: ReadonlySet<number> }[];
}

/** Every way to choose hubs gives one list of sections; ordinary switches have just one way. */
export function sectionsOf(part: Switch): Section[] {
  const joined = part.positions.map((position) => part.closes[position] ?? []);
  const neighbours = new Map<string, Set<string>>(part.terminals.map((t) => [t, new Set<string>()]));
  for (const pairs of joined) {
    for (const [a, b] of pairs) {
      neighbours.get(a)?.add(b);
      neighbours.get(b)?.add(a);
    }
  }
  const left = new Set(part.terminals);
  const sections: Section[] = [];
  for (const start of part.terminals) {
    if (!left.has(start)) continue;
    const members = reach(start, (t) => neighbours.get(t) ?? []);
    for (const t of members) left.delete(t);
    if (members.length < 2) continue;
    // The hub is the terminal with the most partners; of two alike the one listed first.
    const hub = members.reduce((best, t) => ((neighbours.get(t)?.size ?? 0) > (neighbours.get(best)?.size ?? 0) ? t : best));
    const throws = members
      .filter((t) => t !== hub)
      .map((terminal) => ({
        terminal,
        closed: new Set(joined.flatMap((pairs, position) => (reach(hub, partners(pairs)).includes(terminal) ? [position] : []))),
      }));
    sections.push({ pole: sections.length + 1, hub, throws });
  }
  return sections;
}

function partners(pairs: readonly (readonly [string, string])[]) {
  return (t: string) => pairs.flatMap(([a, b]) => (a === t ? [b] : b === t ? [a] : []));
}

function reach(start: string, next: (t: string) => Iterable<string>): string[] {
  const seen = new Set([start]);
  for (const t of seen) for (const n of next(t)) seen.add(n);
  return [...seen];
}

/** True when in every position each hub reaches exactly one terminal of its own: rotaries, and toggles without a middle. */
export function isUniform(sections: readonly Section[], positions: number): boolean {
  return sections.every((s) => {
    const count = new Array<number>(positions).fill(0);
    for (const t of s.throws) {
      if (t.closed.size !== 1) return false;
      for (const p of t.closed) count[p] = itemAt(count, p) + 1;
    }
    return count.every((c) => c === 1);
  });
}

/** True when no two throws are ever joined: each contact stands between the hub and one throw. */
export function isSimple(section: Section): boolean {
  return section.throws.every((t, i) => section.throws.every((u, j) => i === j || [...t.closed].every((p) => !u.closed.has(p))));
}

/**
 * The switch with every contact written as one between the hub of its section and a throw, as drawings and fault tables speak of it:
 * the same terminals are joined in each position. Undefined, with the position, where terminals meet without their hub.
 */
export function throughHubs(part: Switch, sections: readonly Section[]): { readonly part: Switch } | { readonly position: string } {
  const hubOf = new Map(sections.flatMap((s) => [s.hub, ...s.throws.map((t) => t.terminal)].map((t) => [t, s] as const)));
  const closes: Record<string, [string, string][]> = {};
  for (const [p, position] of part.positions.entries()) {
    const meetsHub = (t: string) => hubOf.get(t)?.hub === t || hubOf.get(t)?.throws.some((u) => u.terminal === t && u.closed.has(p));
    if ((part.closes[position] ?? []).some((pair) => !pair.every(meetsHub))) return { position };
    closes[position] = sections.flatMap((s) => s.throws.flatMap((t): [string, string][] => (t.closed.has(p) ? [[s.hub, t.terminal]] : [])));
  }
  return { part: { ...part, closes } };
}
