// The smallest changes that help: every minimal set of the owner's choices to give up, and a second mode with a switch.
// Each is verified by solving the changed build again; what that gives is told with it, and how far was looked.

import type { Compiled } from "../../encoding/index.js";
import { applyEdits, editGivingUp } from "../../machine/index.js";
import { type Budget, type ChoiceSets, possible } from "../../solver/index.js";
import { listText } from "../../words/index.js";
import type { OwnersChoice, Repair, RepairsComplete } from "./answer.js";
import { attempt } from "./attempt.js";
import { valuesOf } from "./possible.js";
import { secondModes } from "./second-modes.js";
import { waysOut } from "./ways-out.js";

const costRank: Readonly<Record<OwnersChoice["kind"], number>> = {
  setting: 1,
  slot: 2,
  firmware: 3,
  memory: 4,
  "card-revision": 5,
  card: 6,
  mode: 7,
  revision: 8,
};

/**
 * Most sets put to the rules again, the cheapest first. Each costs a whole search; a machine refused in more ways than this is told that
 * more exist.
 */
const most = 100;

/** Several ways to run it are dearer than another revision of a card and cheaper than leaving one out. */
const costRankOfWays = { "second-mode": 5.5, ways: 5.5, "by-hand": 5.6, drop: 0, change: 0 } as const;

/** Of an answer that nothing stands against, and of one nobody looked for help with. */
export const nothingToHelp: RepairsComplete = { givingUp: "no-help", twoModes: "no-help", moreModes: "no-help", ways: "no-help" };
export const nothingTried: RepairsComplete = { givingUp: "none", twoModes: "none", moreModes: "none", ways: "none" };

/**
 * Cheapest first: settings, slots, firmware, memory, revisions of cards, a second mode, dropping cards or modes, another board. `keep` names
 * the choices the question is about: a way out that gives one of them up is none, nor is one that leaves every card out, or every mode.
 */
export function repairsOf(
  compiled: Compiled,
  sets: ChoiceSets,
  keep: readonly string[],
  budget?: Budget,
): { readonly repairs: readonly Repair[]; readonly complete: RepairsComplete } {
  const kept = keptWith(compiled, keep);
  const dear = (gives: readonly OwnersChoice[]) => gives.reduce((sum, g) => sum + costRank[g.kind], 0);
  const cheapestFirst = sets.sets
    .map((set) => compiled.choices.filter((c) => set.includes(c.id)).map((c) => c.told))
    .filter((gives) => !gives.some((g) => kept.has(g.id)) && leavesSomething(compiled, gives))
    .map((gives) => ({ gives, price: dear(gives) }))
    .sort((a, b) => a.price - b.price);
  const given = cheapestFirst.slice(0, most).map(({ gives }) => repairOf(compiled, gives, budget));
  const found = given.flatMap((r) => r ?? []);
  const several = compiled.question.modes.length === 1 ? waysOut(compiled, sets, kept, budget) : secondModes(compiled, sets, kept, budget);
  const price = (r: Repair) => costRankOfWays[r.kind] + dear(r.gives);
  const all = sets.complete && cheapestFirst.length <= most && found.length === given.length;
  return {
    repairs: [...found, ...several.repairs].sort((a, b) => price(a) - price(b)),
    complete: { givingUp: all ? "all" : "some", ...several.complete },
  };
}

/** The choices named, and the cards and modes they are choices of: without its card a slot is no answer to anything. */
function keptWith(compiled: Compiled, keep: readonly string[]): ReadonlySet<string> {
  const named = compiled.choices.map((c) => c.told).filter((c) => keep.includes(c.id));
  const owners = compiled.choices
    .map((c) => c.told)
    .filter((c) => named.some((n) => (c.kind === "card" && c.card === n.card) || (c.kind === "mode" && c.mode === n.mode)));
  return new Set([...named, ...owners].map((c) => c.id));
}

/** A machine that was asked about with cards is not helped by having none of them, nor by never running. */
function leavesSomething(compiled: Compiled, gives: readonly OwnersChoice[]): boolean {
  const all = (kind: OwnersChoice["kind"]) => {
    const chosen = compiled.choices.filter((c) => c.told.kind === kind);
    return chosen.length > 0 && chosen.every((c) => gives.some((g) => g.id === c.id));
  };
  return !all("card") && !all("mode");
}

/** Undefined when the changed build could not be proven to work. */
function repairOf(compiled: Compiled, gives: readonly OwnersChoice[], budget?: Budget): Repair | undefined {
  const edits = gives.map((g) => editGivingUp(g.id));
  const build = applyEdits(compiled.question.build, edits);
  const tried = attempt(compiled, build, budget);
  if (tried === "ruled-out" || tried === "stopped") return undefined;
  const pins = gives.filter((g) => g.kind !== "card" && g.kind !== "mode");
  const open =
    pins.length > 0 ? possible(tried.verdict === "unknown" ? tried.compiled.possible : tried.compiled.certain, budget) : undefined;
  const instead = pins.map((g) => ({ choice: g.id, values: open ? valuesOf(tried.compiled.frame, g.id, open) : [] }));
  const words = gives.map((g) => {
    const other = instead.find((i) => i.choice === g.id)?.values;
    if (g.kind === "card") return `leave out ${g.says}`;
    if (g.kind === "mode") return `give up ${g.says}`;
    return `instead of ${g.says}, choose ${listed(other ?? [])}`;
  });
  const says = words.join(", and ");
  return {
    kind: pins.length > 0 ? "change" : "drop",
    gives,
    says: `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,
    verdict: tried.verdict,
    count: tried.count,
    exact: tried.exact,
    instead,
    edits,
    build,
  };
}

function listed(values: readonly string[]): string {
  if (values.length === 0) return "something else";
  return values.length > 5 ? `${values.slice(0, 5).join(", ")}, …` : listText(values, "or");
}
