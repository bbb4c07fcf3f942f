// What each way out of a refused machine costs, side by side: leave something out, choose something else, change over by hand, one switch.
import type { Catalogue } from "../catalogue/index.js";
import type { Answer, Repair, Verdict } from "../planning/index.js";
import { itemAt } from "../records/index.js";
import { bestBuilt } from "./best-built.js";

export interface WayOutCost {
  readonly kind: "leave-out" | "choose-other" | "by-hand" | "switch";
  readonly says: string;
  readonly verdict: Verdict;
  /** Parts, cards and boards to get, as far as they are not known to be at hand; undefined where no switch can do it. */
  readonly toGet?: number;
  /** Of a switch. */
  readonly poles?: number;
  readonly wires?: number;
  /** Least and most things to do each time, by hand. */
  readonly each?: readonly [least: number, most: number];
  /** Cards and modes that are given up. */
  readonly without: readonly string[];
  /** Why no switch can do it. */
  readonly impossible?: string;
}

/** Of each kind the cheapest. What leaves nothing out comes first, then what takes fewest parts, then what is least work each time. */
export function waysOutCosts(catalogue: Catalogue, { repairs }: Pick<Answer, "repairs">): readonly WayOutCost[] {
  const costs = repairs.flatMap((r) => (r.kind === "second-mode" || r.kind === "ways" ? [] : [costOf(r)]));
  const switched = switchCost(
    catalogue,
    repairs.filter((r) => r.kind === "ways" || r.kind === "second-mode"),
  );
  const sorted = [...costs, ...(switched ? [switched] : [])].sort((a, b) => {
    const [one, other] = [rankOf(a), rankOf(b)];
    const at = one.findIndex((n, i) => n !== other[i]);
    return at < 0 ? 0 : itemAt(one, at) - itemAt(other, at);
  });
  return sorted.filter((cost, at) => sorted.findIndex((c) => c.kind === cost.kind) === at);
}

const verdicts: readonly Verdict[] = ["workable", "conditional", "unknown", "ruled-out"];

function rankOf({ verdict, without, toGet = Number.POSITIVE_INFINITY, each }: WayOutCost): readonly number[] {
  return [
    toGet === Number.POSITIVE_INFINITY ? 1 : 0,
    verdict === "unknown" ? 1 : 0,
    without.length,
    toGet,
    each?.[1] ?? 0,
    verdicts.indexOf(verdict),
  ];
}

/** What stands in the machine already is not got again; whether the other thing lies in a drawer is not known. */
const toGetFor: Readonly<Record<Repair["gives"][number]["kind"], number>> = {
  setting: 0,
  slot: 0,
  card: 0,
  mode: 0,
  firmware: 1,
  memory: 1,
  "card-revision": 1,
  revision: 1,
};

function costOf({ kind, gives, says, verdict, differs }: Repair): WayOutCost {
  const without = gives.filter((g) => g.kind === "card" || g.kind === "mode").map((g) => g.says);
  const told = { says, verdict, without };
  // By hand one device is exchanged for another: each version but the first takes one more.
  if (kind === "by-hand") return { kind, ...told, toGet: differs?.versions ?? 0, ...(differs?.each ? { each: differs.each } : {}) };
  const toGet = gives.reduce((sum, g) => sum + toGetFor[g.kind], 0);
  return { kind: kind === "drop" ? "leave-out" : "choose-other", ...told, toGet };
}

/** Of all divisions the one that is best to build, with what its wiring asks for. */
function switchCost(catalogue: Catalogue, repairs: readonly Repair[]): WayOutCost | undefined {
  const [first] = repairs;
  if (!first) return undefined;
  const best = bestBuilt(
    catalogue,
    repairs.flatMap(({ build }) => (build ? [{ build }] : [])),
    false,
  );
  if (best?.kind !== "best") {
    const { says, verdict, gives } = first;
    return { kind: "switch", says, verdict, without: gives.map((g) => g.says), ...(best ? { impossible: best.says } : {}) };
  }
  const { says, gives } = itemAt(repairs, best.of);
  const { toGet, poles, wires } = best.figures;
  const without = gives.filter((g) => g.kind === "card" || g.kind === "mode").map((g) => g.says);
  return { kind: "switch", says, verdict: best.combination.verdict, without, toGet, poles, wires };
}
