// Conditions of a known problem that name what no record has: a card, a revision, a slot, a version. Read as they stand they hold
// nowhere, and the problem would be gone without a word; without them it may occur in more machines, never in fewer.
import { type Conflict, goesBy, type Kind } from "../records/index.js";
import { allOf, type Catalogue } from "./catalogue.js";
import { versionIndex } from "./versions.js";

type When = Conflict["when"];
type CardCondition = NonNullable<When["cards"]>[number];

/** The conditions that name what the records have; `whole` false when one had to be left out. */
export function knownConditions(catalogue: Catalogue, when: When): { readonly when: When; readonly whole: boolean } {
  const { boards, firmware, cards, adjacent, ...plain } = when;
  const knownBoards = boards && everyOne(boards, (b) => isKnown(catalogue, "board", b.board));
  const told = knownBoards?.map(({ revisions, ...board }) => {
    const of = catalogue.boards.get(board.board)?.revisions.map((r) => r.id);
    const known = revisions && everyOne(revisions, (id) => !of || of.includes(id));
    return { ...board, ...(known ? { revisions: known } : {}) };
  });
  const spans = firmware && everyOne(firmware, (span) => isKnownSpan(catalogue, span));
  const present = cards?.filter((c) => isKnown(catalogue, "card", c.card)).map((c) => knownCard(catalogue, c));
  const allCards = present?.length === cards?.length;
  const known: When = {
    ...plain,
    ...(told ? { boards: told } : {}),
    ...(spans ? { firmware: spans } : {}),
    ...(present && present.length > 0 ? { cards: present } : {}),
    ...(adjacent && allCards ? { adjacent } : {}),
  };
  return { when: known, whole: JSON.stringify(sorted(known)) === JSON.stringify(sorted(when)) };
}

/** "Any one of these": one that nobody knows may be meant for any, so that the list says nothing. */
function everyOne<T>(list: T[], known: (entry: T) => boolean): T[] | undefined {
  return list.every(known) ? list : undefined;
}

/** An unread record has its id all the same. */
function isKnown(catalogue: Catalogue, kind: Kind, id: string): boolean {
  return allOf(catalogue, kind).has(id) || catalogue.unread.some((unread) => goesBy(unread, kind, id));
}

function isKnownSpan(catalogue: Catalogue, span: NonNullable<When["firmware"]>[number]): boolean {
  const family = catalogue.firmware.get(span.family);
  if (!family) return isKnown(catalogue, "firmware", span.family);
  const named = [span.from, span.upTo, span.before, ...(span.only ?? []), ...(span.except ?? [])];
  return named.every((version) => version === undefined || versionIndex(family, version) >= 0);
}

function knownCard(catalogue: Catalogue, condition: CardCondition): CardCondition {
  const { revisions, slots, edge, settings, ...plain } = condition;
  const card = catalogue.cards.get(condition.card);
  const boards = [...catalogue.boards.values()];
  const ofRevisions = revisions && everyOne(revisions, (id) => !card || (card.revisions ?? []).some((r) => r.id === id));
  const ofSlots = slots && everyOne(slots, (id) => boards.some((b) => b.slots.some((s) => s.id === id)));
  const ofEdge = edge !== undefined && [...catalogue.buses.values()].some((bus) => bus.edges.some((e) => e.id === edge)) ? edge : undefined;
  const set = Object.entries(settings ?? {}).filter(([id, at]) => {
    const positions = card?.settings?.find((s) => s.id === id)?.positions.map((p) => p.id);
    return !card || [at].flat().every((position) => positions?.includes(position));
  });
  return {
    ...plain,
    ...(ofRevisions ? { revisions: ofRevisions } : {}),
    ...(ofSlots ? { slots: ofSlots } : {}),
    ...(ofEdge === undefined ? {} : { edge: ofEdge }),
    ...(set.length > 0 ? { settings: Object.fromEntries(set) } : {}),
  };
}

/** The same whatever order its fields were written in. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => [key, sorted(inner)]),
  );
}
