// The connector of the loom and of card leads: which part, which contact carries what, and its faces as the eye sees them.
// A face seen from behind is the mirror image of the mating face; so is the mating face of the other half.
import type { Catalogue } from "../../catalogue/index.js";
import { type Cable, type Connector, itemAt, known } from "../../records/index.js";
import { compare } from "../../switching/index.js";
import type { ConnectorPlan, Face, FaceContact } from "../types.js";

export interface ConnectorPair {
  /** The half that stays with the machine: in the panel, or on the board. */
  readonly fixed: Connector;
  readonly loose?: Connector | undefined;
}

type Coordinates = readonly { readonly contact: string; readonly x_mm: number; readonly y_mm: number }[];

const soldering = "solder side: the view while soldering";

/** Left becomes right; a contact in the middle stays. */
export function mirrored<C extends { readonly x_mm: number }>(face: readonly C[]): C[] {
  return face.map((c) => ({ ...c, x_mm: c.x_mm === 0 ? 0 : -c.x_mm }));
}

export function facesOf(pair: ConnectorPair, netOf: ReadonlyMap<string, { readonly net: string; readonly label: string }>): Face[] {
  const { fixed, loose } = pair;
  const other = fixed.half === "plug" ? "socket" : "plug";
  const mating: Coordinates = fixed.face;
  const looseMating: Coordinates = loose?.face ?? mirrored(mating);
  const named = (face: Coordinates): FaceContact[] =>
    face.map(({ contact, x_mm, y_mm }) => ({ contact, x_mm, y_mm, ...netOf.get(contact) }));
  const here = `${fixed.half} ${fixed.panel ? "in the panel" : "on the board"}`;
  const there = `${other} on the cable`;
  const face = (half: Face["half"], view: Face["view"], seen: string, contacts: Coordinates): Face => ({
    half,
    shape: half === "panel" ? fixed.half : other,
    view,
    seen,
    says: `${half === "panel" ? here : there}, ${seen}`,
    contacts: named(contacts),
  });
  return [
    face("panel", "mating", "seen from outside, where the other half goes in", mating),
    face("panel", "rear", "seen from behind", mirrored(mating)),
    face("panel", "solder", soldering, mirrored(mating)),
    face("cable", "mating", "seen from the front", looseMating),
    face("cable", "rear", "seen along the cable", mirrored(looseMating)),
    face("cable", "solder", soldering, mirrored(looseMating)),
  ];
}

/** The two faces of a part by itself, wired to nothing: as its other half meets it, and as one solders it. */
export function partFaces(part: Connector): Face[] {
  const of = { half: part.panel ? "panel" : "cable", shape: part.half } as const;
  const plain = (face: Coordinates): FaceContact[] => face.map(({ contact, x_mm, y_mm }) => ({ contact, x_mm, y_mm }));
  return [
    { ...of, view: "mating", seen: "mating face", says: "mating face, where the other half goes in", contacts: plain(part.face) },
    { ...of, view: "solder", seen: soldering, says: soldering, contacts: plain(mirrored(part.face)) },
  ];
}

/** For each contact the one at its mirror place, across the upright axis ("x") or the level one ("y"). */
export function mirrorMap(part: Connector, axis: "x" | "y"): ReadonlyMap<string, string> {
  const near = (a: number, b: number) => Math.abs(a - b) < 0.05;
  const map = new Map<string, string>();
  for (const c of part.face) {
    const x = axis === "x" ? -c.x_mm : c.x_mm;
    const y = axis === "y" ? -c.y_mm : c.y_mm;
    const twin = part.face.find((d) => near(d.x_mm, x) && near(d.y_mm, y));
    if (twin) map.set(c.contact, twin.contact);
  }
  return map;
}

/** Pairs of contacts that a blob of solder can join: each with those nearest to it, and across the corner with those little further. */
export function neighbours(part: Connector): readonly (readonly [string, string])[] {
  const pairs: [string, string][] = [];
  const distance = (a: Coordinates[number], b: Coordinates[number]) => Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
  const face: Coordinates = part.face;
  for (let i = 0; i < face.length; i += 1) {
    for (let j = i + 1; j < face.length; j += 1) {
      const d = distance(itemAt(face, i), itemAt(face, j));
      const nearest = (k: number) => Math.min(...face.flatMap((c, n) => (n === k ? [] : [distance(itemAt(face, k), c)])));
      if (d <= Math.max(nearest(i), nearest(j)) * 1.5) pairs.push([itemAt(face, i).contact, itemAt(face, j).contact]);
    }
  }
  return pairs;
}

export type Pick<T> =
  | { readonly kind: "picked"; readonly value: T }
  | { readonly kind: "none"; readonly says: string; readonly instead?: string | undefined };

export interface PickOptions {
  readonly atHand: ReadonlySet<string>;
  readonly named?: string | undefined;
  /** Where the fixed half sits; undefined: inside when there is one, else in the panel. */
  readonly panel?: boolean | undefined;
  readonly amps?: number;
}

export function pickConnector(catalogue: Catalogue, contacts: number, options: PickOptions): Pick<ConnectorPair> {
  const all = [...catalogue.parts.values()].filter((p): p is Connector => p.type === "connector");
  const mate = (part: Connector) => all.find((p) => p.id === part.mates);
  const canBeFixed = (part: Connector) => part.panel || (part.half === "plug" && mate(part)?.panel === false);
  const holds = (part: Connector) => part.contacts >= contacts && carries(part, options.amps ?? 0);
  const rank = (part: Connector) =>
    [options.atHand.has(part.id) ? 0 : 1, part.panel === (options.panel ?? false) ? 0 : 1, part.contacts] as const;
  const fitting = all
    .filter((p) => canBeFixed(p) && holds(p) && (options.panel === undefined || p.panel === options.panel))
    .sort((a, b) => compare(rank(a), rank(b)) || (a.half === b.half ? 0 : a.half === "socket" ? -1 : 1) || a.id.localeCompare(b.id));
  if (options.named !== undefined) {
    const given = all.find((p) => p.id === options.named);
    if (!given) return { kind: "none", says: `The parts records hold no connector ${options.named}.`, instead: fitting[0]?.id };
    const partner = mate(given);
    const fixed = canBeFixed(given) || !partner ? given : canBeFixed(partner) ? partner : given;
    if (!holds(fixed)) {
      const why =
        fixed.contacts < contacts ? `has ${fixed.contacts} contacts, ${contacts} are needed` : `is not rated for ${options.amps} A`;
      return { kind: "none", says: `${given.name} ${why}.`, instead: fitting[0]?.id };
    }
    return { kind: "picked", value: { fixed, loose: mate(fixed) ?? (fixed === given ? partner : given) } };
  }
  const best = fitting[0];
  if (!best) return { kind: "none", says: `No connector in the parts records has ${contacts} contacts.` };
  return { kind: "picked", value: { fixed: best, loose: mate(best) } };
}

/** A rating nobody knows does not rule a part out; the plan lists it as a check left open. */
function carries(part: Connector, amps: number): boolean {
  const rating = known(part.rating_A);
  return rating === "unknown" || rating >= amps;
}

export interface CableOptions {
  readonly atHand: ReadonlySet<string>;
  readonly named?: string | undefined;
  /** Contacts that cut through insulation take a ribbon and nothing else; a lead to the outside takes anything but a ribbon. */
  readonly ribbon: boolean;
}

export function pickCable(catalogue: Catalogue, conductors: number, options: CableOptions): Pick<Cable> {
  const all = [...catalogue.parts.values()].filter((p): p is Cable => p.type === "cable");
  const rank = (c: Cable) => [options.atHand.has(c.id) ? 0 : 1, c.conductors] as const;
  const fitting = all
    .filter((c) => c.conductors >= conductors && (c.ribbon ?? false) === options.ribbon)
    .sort((a, b) => compare(rank(a), rank(b)) || a.id.localeCompare(b.id));
  if (options.named !== undefined) {
    const given = all.find((c) => c.id === options.named);
    if (!given) return { kind: "none", says: `The parts records hold no cable ${options.named}.`, instead: fitting[0]?.id };
    if (given.conductors < conductors) {
      return { kind: "none", says: `${given.name} has ${given.conductors} conductors, ${conductors} are needed.`, instead: fitting[0]?.id };
    }
    return { kind: "picked", value: given };
  }
  const best = fitting[0];
  const kind = options.ribbon ? "ribbon" : "cable";
  return best ? { kind: "picked", value: best } : { kind: "none", says: `No ${kind} in the parts records has ${conductors} conductors.` };
}

/** Contacts in the order of their numbers. */
export function contactOrder(part: Connector): string[] {
  return part.face.map((f) => f.contact).sort((a, b) => Number(a) - Number(b) || a.localeCompare(b));
}

export function connectorPlan(
  id: string,
  purpose: "switch" | "lead",
  pair: ConnectorPair,
  netOf: ReadonlyMap<string, { readonly net: string; readonly label: string }>,
  atHand: ReadonlySet<string>,
): ConnectorPlan {
  const order = contactOrder(pair.fixed);
  return {
    id,
    purpose,
    part: pair.fixed.id,
    name: pair.fixed.name,
    panel: pair.fixed.panel,
    half: pair.fixed.half,
    ...(pair.loose ? { mates: pair.loose.id } : {}),
    contacts: order.map((contact) => ({ contact, label: "spare", ...netOf.get(contact) })),
    spare: order.filter((contact) => !netOf.has(contact)),
    faces: facesOf(pair, netOf),
    ...(pair.fixed.key ? { key: pair.fixed.key } : {}),
    rating_A: known(pair.fixed.rating_A),
    atHand: atHand.has(pair.fixed.id),
  };
}
