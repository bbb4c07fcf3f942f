// An independent reading of what a tested build proves, from its description alone: that machine as it was, in every mode it ran in. One that
// ran so is not held back by what nobody wrote down; one that also failed so is, and so is whatever differs in a single respect.
import type { Build } from "../../../src/records/index.js";
import type { Judgement, Machine, World } from "./checker/index.js";

const toBytes = (s: number | string): number => (typeof s === "number" ? s : Number(s.slice(0, -1)) * (s.endsWith("K") ? 1024 : 1048576));

/** The judgement of a machine with what benches say of it. */
export function withTests(world: World, build: Build, machine: Machine, judgement: Judgement, tested: readonly Build[]): Judgement {
  const same = tested.filter((t) => isThisMachine(world, build, machine, t));
  const outcomes = same.map((t) =>
    (t.modes ?? []).every((m) => (t.result!.modes?.find((x) => x.mode === m.id)?.outcome ?? t.result!.outcome) === "worked"),
  );
  return outcomes.includes(true) && !outcomes.includes(false) ? { ...judgement, open: [] } : judgement;
}

function isThisMachine(world: World, build: Build, machine: Machine, test: Build): boolean {
  if (test.board !== world.board.id || test.revision !== machine.revision || test.cards.length !== build.cards.length) return false;
  if (machine.memory > 0 && (test.memory === undefined || toBytes(test.memory) !== machine.memory)) return false;
  const modes = build.modes ?? [{ id: "always" }];
  if ((test.modes ?? []).length !== modes.length) return false;
  // Every way to say which tested card is which of the machine's, and which tested mode is which.
  return permutations(test.cards).some(
    (cards) =>
      cards.every((t, i) => {
        const { card: id } = build.cards[i]!;
        const card = world.cards.get(id)!;
        const placed = machine.cards[i]!;
        if (t.card !== id || t.slot !== world.board.slots[placed.slot]!.id) return false;
        if ((card.revisions?.length ?? 1) > 1 && t.revision !== placed.revision) return false;
        return (card.settings ?? []).every(
          (s) => (s.revisions && !s.revisions.includes(placed.revision)) || t.settings?.[s.id] === placed.settings[s.id],
        );
      }) &&
      permutations(test.modes!).some((order) =>
        order.every((t, m) => {
          if (t.firmware !== machine.firmware[m]) return false;
          const asked = modes[m]!;
          return cards.every(
            (c, i) => isOn(test, t.cards, c) === isOn(build, (asked as { cards?: readonly string[] }).cards, build.cards[i]!),
          );
        }),
      ),
  );
}

/** A name is first that of a copy; only where no copy bears it does a card's id mean every copy of the card. */
function isOn(build: Build, names: readonly string[] | undefined, card: Build["cards"][number]): boolean {
  if (!names) return true;
  const copies = build.cards.map((c) => c.as ?? c.card);
  return names.some((name) => (copies.includes(name) ? (card.as ?? card.card) === name : card.card === name));
}

function permutations<T>(items: readonly T[]): T[][] {
  return items.length === 0
    ? [[]]
    : items.flatMap((item, at) => permutations(items.filter((_, i) => i !== at)).map((rest) => [item, ...rest]));
}
