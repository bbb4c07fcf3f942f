// What a record does not say of the resources a thing takes. Left out is not none: where nobody has written a kind down, it is not known, and
// a machine whose answer hangs on it is not called workable. The only home of that reading; the planner, the check and the pages ask here.
import {
  type Board,
  type Bus,
  type Card,
  type Claims,
  type ConditionalClaims,
  listed,
  must,
  type ResourceKind,
  resourceKinds,
} from "../records/index.js";

/** One gap, with the state of the thing in which it counts. All conditions hold together. */
export interface Unsaid {
  readonly kinds: readonly ResourceKind[];
  /** Where the record is silent, or says unknown. */
  readonly path: readonly (string | number)[];
  /** On these revisions of the record; left out: on all. */
  readonly revisions?: readonly string[];
  /** Setting id: positions in one of which it stands. */
  readonly settings: Readonly<Record<string, readonly string[]>>;
  /** How to find it out, when the record says so. */
  readonly find?: string;
}

/** Kinds of resource that the bus has at all. */
export function kindsOf(bus: Bus): readonly ResourceKind[] {
  return resourceKinds.filter((kind) => (kind === "dma" ? bus.dma !== undefined : true));
}

/** Gaps of a card. A kind that its edge does not carry need not be spoken of. */
export function unsaidOfCard(card: Card, bus: Bus): readonly Unsaid[] {
  const edge = bus.edges.find((e) => e.id === card.edge);
  const kinds = kindsOf(bus).filter((kind) => (kind === "interrupts" || kind === "dma" ? edge?.[kind]?.length !== 0 : true));
  const inSettings = kinds.flatMap((kind) => unsaidOfSettings(card, kind));
  return together([...unsaidFixed(card, kinds), ...inSettings]);
}

/** Gaps of one part of the board (`fixed`); conditions on the board are those of the entry. */
export function unsaidOfPart(part: Board["fixed"][number], bus: Bus): readonly ResourceKind[] {
  return kindsOf(bus).filter((kind) => silent(part, kind));
}

/** Main memory on the board, where its record tells of it; how much a build states is known all the same. */
export function mainMemory(board: Board): Exclude<Board["memory"], string> {
  return typeof board.memory === "object" ? board.memory : undefined;
}

/** Nobody has written down where main memory lies: it may lie under any window of a card. */
export function mainMemoryLiesAnywhere(board: Board): boolean {
  return board.memory !== "none" && mainMemory(board)?.base === undefined;
}

function silent(claims: Claims, kind: ResourceKind): boolean {
  return claims[kind] === undefined || claims[kind] === "unknown";
}

function unsaidFixed(card: Card, kinds: readonly ResourceKind[]): readonly Unsaid[] {
  const { claims } = card;
  if (claims === "none" || kinds.length === 0) return [];
  if (claims === undefined || claims === "unknown") return [{ kinds, path: claims ? ["claims"] : [], settings: {} }];
  return [...claims.flatMap((entry, i) => unsaidOfEntry(card, entry, i, kinds)), ...whereNoneHolds(card, kinds)];
}

function unsaidOfEntry(card: Card, entry: ConditionalClaims, at: number, kinds: readonly ResourceKind[]): readonly Unsaid[] {
  const state = { path: ["claims", at], settings: positionsOf(entry), ...(entry.find === undefined ? {} : { find: entry.find }) };
  const open = kinds.filter((kind) => silent(entry, kind));
  const bySettings = kinds.filter((kind) => entry[kind] === "settings");
  return [
    ...(open.length > 0 ? [{ ...state, kinds: open, ...revisionsOf(entry.revisions) }] : []),
    // "settings" promises that one speaks of the kind; on revisions where none does, nothing is known.
    ...bySettings.flatMap((kind) => {
      const revisions = allRevisions(card).filter(
        (r) => onRevision(entry, r) && !(card.settings ?? []).some((s) => onRevision(s, r) && speaks(s, kind)),
      );
      return revisions.length > 0 ? [{ ...state, kinds: [kind], revisions }] : [];
    }),
  ];
}

/** States in which no entry of the claims holds: then nothing was said at all. */
function whereNoneHolds(card: Card, kinds: readonly ResourceKind[]): readonly Unsaid[] {
  return allRevisions(card).flatMap((revision) => {
    const here = listed(card.claims).filter((entry) => onRevision(entry, revision));
    let states: readonly Readonly<Record<string, readonly string[]>>[] = [{}];
    for (const entry of here) states = states.flatMap((state) => failing(card, revision, entry, state));
    return states.map((settings) => ({ kinds, path: ["claims"], revisions: [revision], settings }));
  });
}

/** The ways in which an entry does not hold, within a state. An entry without conditions always holds. */
function failing(card: Card, revision: string, entry: ConditionalClaims, state: Readonly<Record<string, readonly string[]>>) {
  const conditions = Object.entries(positionsOf(entry));
  const lacks = conditions.some(([id]) => !card.settings?.some((s) => s.id === id && onRevision(s, revision)));
  // A setting that this revision lacks stands nowhere, so that nothing that names it holds.
  if (lacks) return [state];
  return conditions.flatMap(([id, positions]) => {
    const all =
      state[id] ??
      must(
        card.settings?.find((s) => s.id === id),
        `setting ${id} of ${card.id}`,
      ).positions.map((p) => p.id);
    const others = all.filter((p) => !positions.includes(p));
    return others.length > 0 ? [{ ...state, [id]: others }] : [];
  });
}

/** Where some position of a setting says something of a kind, every other position that is silent leaves it open. */
function unsaidOfSettings(card: Card, kind: ResourceKind): readonly Unsaid[] {
  return (card.settings ?? []).flatMap((setting, i): Unsaid[] => {
    if (!speaks(setting, kind)) return [];
    const open = setting.positions.flatMap((p, at) => (silent(p, kind) ? [{ p, at }] : []));
    return open.map(({ p, at }) => ({
      kinds: [kind],
      path: ["settings", i, "positions", at],
      settings: { [setting.id]: [p.id] },
      ...revisionsOf(setting.revisions),
    }));
  });
}

function speaks(setting: NonNullable<Card["settings"]>[number], kind: ResourceKind): boolean {
  return setting.positions.some((p) => p[kind] !== undefined);
}

function positionsOf(entry: ConditionalClaims): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(Object.entries(entry.when ?? {}).map(([id, p]) => [id, typeof p === "string" ? [p] : p]));
}

function allRevisions(card: Card): readonly string[] {
  return card.revisions?.map((r) => r.id) ?? [""];
}

function onRevision(thing: { readonly revisions?: readonly string[] }, revision: string): boolean {
  return thing.revisions === undefined || thing.revisions.includes(revision);
}

function revisionsOf(revisions: readonly string[] | undefined) {
  return revisions === undefined ? {} : { revisions };
}

/** Gaps of one place and one state, with all their kinds in one. */
function together(gaps: readonly Unsaid[]): readonly Unsaid[] {
  const byState = new Map<string, Unsaid>();
  for (const gap of gaps) {
    const key = JSON.stringify([gap.path, gap.revisions, gap.settings]);
    const before = byState.get(key);
    byState.set(key, before ? { ...before, kinds: [...before.kinds, ...gap.kinds] } : gap);
  }
  return [...byState.values()];
}
