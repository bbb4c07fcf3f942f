// The smallest changes that help: every minimal set of the owner's choices to give up, and a second mode with a switch.
// Each is verified by solving the changed build again; what that gives is told with it.

import { ask, switchable, withChoice, withSecondMode } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import { type Budget, type ChoiceSets, count, possible } from "../../solver/index.js";
import { type Compiled, compile } from "../encode/compile.js";
import type { OwnersChoice, Reason, Repair, Verdict } from "./answer.js";
import { valuesOf } from "./possible.js";
import { verdictOf } from "./verdict.js";

const dearness: Readonly<Record<OwnersChoice["kind"], number>> = {
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
 * Most sets put to the rules again, the cheapest first, and most second modes tried. Each costs a whole search; a machine refused in
 * more ways than this is told that more exist.
 */
const most = 100;

/** Cheapest first: settings, slots, firmware, memory, revisions of cards, a second mode, dropping cards or modes, another board. */
export function repairsOf(
  compiled: Compiled,
  { sets, complete }: ChoiceSets,
  reasons: readonly Reason[],
  budget?: Budget,
): { readonly repairs: readonly Repair[]; readonly complete: boolean } {
  const dear = (gives: readonly OwnersChoice[]) => gives.reduce((sum, g) => sum + dearness[g.kind], 0);
  const told = sets.map((set) => compiled.choices.filter((c) => set.includes(c.id)).map((c) => c.told));
  const cheapestFirst = told.map((gives) => ({ gives, price: dear(gives) })).sort((a, b) => a.price - b.price);
  const given = cheapestFirst.slice(0, most).flatMap(({ gives }) => repairOf(compiled, gives, budget) ?? []);
  const { second, all } = secondModes(compiled, reasons, budget);
  const price = (r: Repair) => (r.kind === "second-mode" ? 5.5 : dear(r.gives));
  return {
    repairs: [...given, ...second].sort((a, b) => price(a) - price(b)),
    complete: complete && sets.length <= most && all,
  };
}

interface Tried {
  readonly verdict: Verdict;
  readonly count: string;
  readonly compiled: Compiled;
}

/** Puts a changed build to the rules again. */
function attempt(compiled: Compiled, build: Build, budget?: Budget): Tried | undefined {
  const asked = ask(compiled.question.catalogue, build);
  if (asked.kind !== "question") return undefined;
  const again = compile(asked.question);
  const verdict = verdictOf(again, budget);
  if (verdict === "ruled-out" || verdict === "stopped") return undefined;
  return {
    verdict,
    count: String(count(verdict === "unknown" ? again.possible : again.certain, undefined, budget).count),
    compiled: again,
  };
}

function repairOf(compiled: Compiled, gives: readonly OwnersChoice[], budget?: Budget): Repair | undefined {
  const build = gives.reduce((b, g) => withChoice(b, g.id, undefined), compiled.question.build);
  const tried = attempt(compiled, build, budget);
  if (!tried) return undefined;
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
    instead,
    build,
  };
}

function listed(values: readonly string[]): string {
  if (values.length === 0) return "something else";
  if (values.length === 1) return values[0]!;
  return `${values
    .slice(0, 5)
    .join(", ")
    .replace(/, ([^,]*)$/, values.length > 5 ? ", $1" : " or $1")}${values.length > 5 ? ", …" : ""}`;
}

/** For a reason between cards of one mode: the machine run in two modes, one card of the reason off in each. */
function secondModes(
  compiled: Compiled,
  reasons: readonly Reason[],
  budget?: Budget,
): { readonly second: readonly Repair[]; readonly all: boolean } {
  const { question } = compiled;
  const out: Repair[] = [];
  const seen = new Set<string>();
  for (const reason of reasons) {
    const cards = question.cards.filter((c) => reason.choices.some((r) => r.id === `card:${c.as}`));
    for (const mode of question.modes) {
      const on = cards.filter((c) => mode.enabled.has(c.as));
      for (const one of on.filter((c) => switchable(c.card))) {
        const others = on.filter((c) => c.as !== one.as);
        const key = `${mode.id}|${one.as}|${others.map((o) => o.as).join(",")}`;
        if (others.length === 0 || seen.has(key)) continue;
        if (seen.size >= most) return { second: out, all: false };
        seen.add(key);
        const build = withSecondMode(
          question.build,
          mode.id,
          [one.as],
          others.map((o) => o.as),
        );
        const tried = attempt(compiled, build, budget);
        if (!tried) continue;
        const says = `Run it in two modes with a switch: one with ${one.card.name} off, one with ${others.map((o) => o.card.name).join(" and ")} off.`;
        // Off and on the other way round is the same pair of modes.
        if (out.some((r) => sameModes(r.build as Build, build))) continue;
        out.push({ kind: "second-mode", gives: [], says, verdict: tried.verdict, count: tried.count, build });
      }
    }
  }
  return { second: out, all: true };
}

function sameModes(a: Build, b: Build): boolean {
  const key = (x: Build) =>
    (x.modes ?? [])
      .map((m) => [...(m.cards ?? [])].sort().join(","))
      .sort()
      .join("|");
  return key(a) === key(b);
}
