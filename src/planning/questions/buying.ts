// Before you buy: would this card work in that machine, with which firmware, what would have to change, what else would you
// have to get, and what remains at risk. Every line comes from the planner's own answers.
import type { Catalogue } from "../../catalogue/index.js";
import type { Misasked } from "../../machine/index.js";
import { asStanding, withCard, withChoice } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import type { Answer, Combination, Evidence, Reason, Ref, Repair, Verdict } from "../answer/answer.js";
import { plan } from "../answer/plan.js";
import { ref } from "../encode/draft.js";

export interface VersionVerdict {
  readonly version: string;
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly says: string;
}

export interface Wanted {
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
  readonly best?: Combination;
  /** What must change in the machine as it stands, least trouble first. */
  readonly changes: readonly string[];
  readonly shopping: readonly Wanted[];
  readonly risks: readonly string[];
  readonly reasons: readonly Reason[];
  readonly repairs: readonly Repair[];
}

/** `build` is the machine as it is (board, perhaps revision, memory, firmware, cards); the card is the one you think of buying. */
export function beforeYouBuy(catalogue: Catalogue, build: Build, card: string): Purchase | Misasked {
  const wish = withCard(asStanding(build), card);
  const answer = plan(catalogue, wish, { most: 3 });
  if (answer.kind === "misasked") return answer;
  const best = answer.combinations[0];
  return {
    kind: "purchase",
    card,
    verdict: answer.verdict,
    says: answer.says,
    versions: versionsOf(catalogue, wish),
    best,
    changes: best?.changes ?? [],
    shopping: shoppingOf(catalogue, build, card, answer),
    risks: risksOf(answer),
    reasons: answer.reasons,
    repairs: answer.repairs,
  };
}

function versionsOf(catalogue: Catalogue, wish: Build): VersionVerdict[] {
  const board = catalogue.boards.get(wish.board);
  const family = catalogue.firmware.get(wish.firmware ?? board?.firmware[0] ?? "");
  const mode = wish.modes?.[0]?.id ?? "always";
  return (family?.versions ?? []).flatMap((v) => {
    const a = plan(catalogue, withChoice(wish, `firmware:${mode}`, v.id), { brief: true, most: 1 });
    return a.kind === "misasked"
      ? []
      : [{ version: v.id, verdict: a.verdict, evidence: a.combinations[0]?.evidence ?? "inferred", says: a.says }];
  });
}

function shoppingOf(catalogue: Catalogue, build: Build, card: string, answer: Answer): Wanted[] {
  const out: Wanted[] = [];
  const record = catalogue.cards.get(card);
  if (record && !build.at_hand?.cards?.includes(card)) out.push({ what: record.name, why: "the card itself", refs: [ref("card", card)] });
  for (const [i, what] of (record?.needs?.other ?? []).entries())
    out.push({ what, why: `${record!.name} needs it`, refs: [ref("card", card, `/needs/other/${i}`)] });
  for (const c of answer.combinations[0]?.conditions ?? []) {
    if (c.kind === "to-get" && !out.some((o) => c.says.includes(o.what)))
      out.push({ what: c.says.replace(/^Get (.*)\.$/, "$1"), why: "you do not have it yet", refs: c.refs });
    const way = c.ways[0];
    if (c.kind === "remedy" && way)
      out.push({ what: way.part ? (catalogue.parts.get(way.part)?.name ?? way.part) : way.says, why: c.says, refs: c.refs });
  }
  return out;
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
