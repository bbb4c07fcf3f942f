// An independent grader: how well one fully chosen machine is proven, from the meaning of evidence alone and sharing no code with src/planning.
// The weakest of: each card running in a mode, each pair running together, the whole when it is more than two. A link is on the bench when
// a build that worked had it so; a single card may also rest on its own papers.
import type { Build, BuildCard, Card } from "../../../src/records/index.js";
import type { Machine, World } from "./checker/index.js";

export type Grade = "bench" | "documented" | "reported" | "inferred";
const best: readonly Grade[] = ["bench", "documented", "reported", "inferred"];
const toBytes = (s: number | string): number => (typeof s === "number" ? s : Number(s.slice(0, -1)) * (s.endsWith("K") ? 1024 : 1048576));

interface Placed {
  readonly as: string;
  readonly card: string;
  readonly slot: string;
  readonly revision: string;
  readonly settings: Record<string, string>;
}

export function gradeOf(world: World, build: Build, machine: Machine, tested: readonly Build[]): Grade {
  const found: Grade[] = [];
  const all = build.cards.map(
    (b, i): Placed => ({
      as: b.as ?? b.card,
      card: b.card,
      slot: world.board.slots[machine.cards[i]!.slot]!.id,
      revision: machine.cards[i]!.revision,
      settings: machine.cards[i]!.settings,
    }),
  );
  for (const [m, mode] of (build.modes ?? [{ id: "always", cards: undefined }]).entries()) {
    const on = all.filter((c) => isOn(c, all, mode.cards));
    const version = machine.firmware[m]!;
    const runs = tested.flatMap((t) => (t.board === world.board.id && t.revision === machine.revision ? runsOf(t, version) : []));
    const had = (run: { readonly on: readonly BuildCard[] }, c: Placed) => run.on.some((t) => same(t, c, world.cards.get(c.card)!));
    for (const c of on) found.push(runs.some((r) => had(r, c)) ? "bench" : paper(world, c.card, machine.revision, version));
    for (let i = 0; i < on.length; i++)
      for (let j = i + 1; j < on.length; j++) found.push(runs.some((r) => had(r, on[i]!) && had(r, on[j]!)) ? "bench" : "inferred");
    const memory = (t: Build) => machine.memory === 0 || (t.memory !== undefined && toBytes(t.memory) === machine.memory);
    if (on.length > 2) found.push(runs.some((r) => memory(r.build) && on.every((c) => had(r, c))) ? "bench" : "inferred");
  }
  return found.length === 0 ? "inferred" : best[Math.max(...found.map((g) => best.indexOf(g)))]!;
}

/** The modes of a tested build that worked with this version, and the cards that were on. */
function runsOf(build: Build, version: string): { readonly build: Build; readonly on: readonly BuildCard[] }[] {
  return (build.modes ?? []).flatMap((mode) => {
    const outcome = build.result!.modes?.find((m) => m.mode === mode.id)?.outcome ?? build.result!.outcome;
    if (outcome !== "worked" || mode.firmware !== version) return [];
    return [{ build, on: build.cards.filter((c) => isOn(c, build.cards, mode.cards)) }];
  });
}

/** A name in a list is a copy's; only a card's id that is no copy's name means all copies of the card. No list: all are on. */
function isOn(copy: BuildCard, copies: readonly BuildCard[], listed: readonly string[] | undefined): boolean {
  if (!listed) return true;
  const nameOf = (c: BuildCard) => c.as ?? c.card;
  return listed.some((name) => (copies.some((c) => nameOf(c) === name) ? nameOf(copy) === name : copy.card === name));
}

function same(t: BuildCard, c: Placed, card: Card): boolean {
  if (t.card !== c.card || t.slot !== c.slot) return false;
  if ((card.revisions ?? []).length > 1 && t.revision !== c.revision) return false;
  return (card.settings ?? []).every((s) => t.settings?.[s.id] === c.settings[s.id]);
}

function paper(world: World, id: string, revision: string, version: string): Grade {
  const { needs, sources = [] } = world.cards.get(id)!;
  const order = world.family.versions.map((v) => v.id);
  const at = order.indexOf(version);
  const named = (needs?.firmware ?? []).some((n) => {
    const bounded = n.from !== undefined || n.upTo !== undefined || n.before !== undefined || n.only !== undefined;
    return (
      bounded &&
      n.family === world.family.id &&
      (n.only === undefined || n.only.includes(version)) &&
      !n.except?.includes(version) &&
      (n.from === undefined || at >= order.indexOf(n.from)) &&
      (n.upTo === undefined || at <= order.indexOf(n.upTo)) &&
      (n.before === undefined || at < order.indexOf(n.before))
    );
  });
  const onBoard = (needs?.boards ?? []).some((b) => b.board === world.board.id && (!b.revisions || b.revisions.includes(revision)));
  if ((!named && !onBoard) || sources.length === 0) return "inferred";
  return sources.some((s) => ["manual", "schematic", "data-sheet", "standard"].includes(s.kind)) ? "documented" : "reported";
}
