// Before you buy: would this card work in that machine, with which firmware, what would have to change, what else would you
// have to get, and what remains at risk. Every line comes from the planner's own answers.
import { type Catalogue, defaultMode, modesOf } from "../../catalogue/index.js";
import { ref } from "../../encoding/index.js";
import {
  asStanding,
  choiceId,
  countAtHand,
  findFaults,
  findRecordFault,
  type InvalidBuild,
  withCard,
  withChoice,
} from "../../machine/index.js";
import type { Build, Card } from "../../records/index.js";
import type {
  Answer,
  Combination,
  Evidence,
  Reason,
  Ref,
  Repair,
  RepairsComplete,
  ToGet,
  UnreadRecord,
  Verdict,
} from "../answer/answer.js";
import { nameToGet, needsBeside } from "../answer/combination.js";
import { plan } from "../answer/plan.js";

export interface VersionVerdict {
  readonly version: string;
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly says: string;
}

export interface Wanted {
  /** The record of what to get; left out where a card's record or a remedy names it in words alone. */
  readonly get?: ToGet;
  readonly what: string;
  readonly why: string;
  readonly refs: readonly Ref[];
}

export interface Purchase {
  readonly kind: "purchase";
  readonly card: string;
  readonly verdict: Verdict;
  readonly says: string;
  /** Every firmware version, oldest first, with all else of the machine free to change. */
  readonly versions: readonly VersionVerdict[];
  /** The best way found. */
  readonly best?: Combination | undefined;
  /** What must change in the machine as it stands, least trouble first. */
  readonly changes: readonly string[];
  readonly shopping: readonly Wanted[];
  readonly risks: readonly string[];
  readonly reasons: readonly Reason[];
  readonly reasonsComplete: boolean;
  /** None of them leaves the card itself out. */
  readonly repairs: readonly Repair[];
  readonly repairsComplete: RepairsComplete;
  /** Every record that could not be read, those that bear on this answer first. */
  readonly unread: readonly UnreadRecord[];
}

/** `build` is the machine as it is (board, perhaps revision, memory, firmware, cards); the card is the one you think of buying. */
export function beforeYouBuy(catalogue: Catalogue, build: Build, card: string): Purchase | InvalidBuild {
  const unknown = findRecordFault(catalogue, "card", card);
  const faults = [...findFaults(catalogue, build), ...(unknown ? [unknown] : [])];
  if (faults.length > 0) return { kind: "misasked", faults };
  const wish = withCard(asStanding(build), card);
  const wanted = wish.cards.at(-1)?.as ?? card;
  const answer = plan(catalogue, wish, { most: 3, keep: [choiceId({ kind: "card", card: wanted })] });
  if (answer.kind === "misasked") return answer;
  const record = catalogue.cards.get(card);
  const best = answer.combinations[0];
  return {
    kind: "purchase",
    card,
    verdict: answer.verdict,
    says: answer.says,
    versions: versionsOf(catalogue, wish),
    best,
    changes: best?.changes ?? [],
    shopping: record ? shoppingOf(catalogue, build, record, wanted, answer) : [],
    risks: risksOf(answer),
    reasons: answer.reasons,
    reasonsComplete: answer.reasonsComplete,
    repairs: answer.repairs,
    repairsComplete: answer.repairsComplete,
    unread: answer.unread,
  };
}

function versionsOf(catalogue: Catalogue, wish: Build): VersionVerdict[] {
  const board = catalogue.boards.get(wish.board);
  const family = catalogue.firmware.get(wish.firmware ?? board?.firmware[0] ?? "");
  const mode = (modesOf(wish)[0] ?? defaultMode).id;
  return (family?.versions ?? []).flatMap((v) => {
    const a = plan(catalogue, withChoice(wish, choiceId({ kind: "firmware", mode }), v.id), { brief: true, most: 1 });
    return a.kind === "misasked"
      ? []
      : [{ version: v.id, verdict: a.verdict, evidence: a.combinations[0]?.evidence ?? "inferred", says: a.says }];
  });
}

/** The card, what its record says it needs besides, what is not at hand, and what the remedies take; each thing once. */
function shoppingOf(catalogue: Catalogue, build: Build, card: Card, wanted: string, answer: Answer): Wanted[] {
  const conditions = answer.combinations[0]?.conditions ?? [];
  const own: ToGet = { kind: "card", id: card.id };
  const things: Wanted[] = [
    ...(countAtHand(build, card.id) > 0 ? [] : [{ get: own, what: card.name, why: "the card itself", refs: [ref("card", card.id)] }]),
    ...needsBeside(card, wanted).map(({ says, refs }) => ({ what: says, why: `${card.name} needs it`, refs })),
    ...conditions.flatMap(({ kind, get, ways, says, refs }): Wanted[] => {
      if (kind === "to-get" && get) return [{ get, what: nameToGet(catalogue, get), why: "you do not have it yet", refs }];
      const way = ways[0];
      if (kind !== "remedy" || !way) return [];
      if (way.part === undefined) return [{ what: way.says, why: says, refs }];
      const part: ToGet = { kind: "part", id: way.part };
      return [{ get: part, what: nameToGet(catalogue, part), why: says, refs }];
    }),
  ];
  return things.filter(({ get }, at) => !get || things.findIndex((other) => other.get && sameThing(other.get, get)) === at);
}

function sameThing(a: ToGet, b: ToGet): boolean {
  return a.kind === b.kind && a.id === b.id && a.version === b.version;
}

function risksOf(answer: Answer): string[] {
  const best = answer.combinations[0];
  if (!best) return [];
  const weak = best.rests.filter((r) => r.grade === best.evidence).slice(0, 2);
  return [
    ...best.unknowns.map((u) => `${u.says} To find out: ${u.how}`),
    ...best.conditions.filter((c) => c.kind === "loss" || c.kind === "cosmetic").map((c) => c.says),
    ...(best.evidence === "bench" ? [] : weak.map((r) => r.says)),
    ...best.nearMatches.slice(0, 1).map((n) => `The nearest tested build (${n.build}) differs: ${n.differs}.`),
  ];
}
