// A build with every hole filled as one way to fill it does: ready to be built, tested, written down, asked again.
import { copyName, modesOf } from "../catalogue/index.js";
import type { Build, BuildCard, Mode } from "../records/index.js";

/** One complete way to fill a build's holes; a planner's combination is one. */
export interface Filling {
  readonly revision: string;
  readonly memory?: number;
  readonly firmwareFamily: string;
  readonly cards: readonly {
    readonly as: string;
    readonly revision: string;
    readonly slot: string;
    readonly settings: Readonly<Record<string, string>>;
  }[];
  /** `enabled`: names of the copies that are on, by which it is filled in where the build has it that it does not matter. */
  readonly modes: readonly { readonly id: string; readonly firmware: string; readonly enabled?: readonly string[] }[];
}

/** Names, what is on in a mode, and the safest one stay as the build has them, but for what it has left open. */
export function fillBuild(build: Build, { revision, memory, firmwareFamily, cards, modes }: Filling): Build {
  const placed = new Map(cards.map((c) => [c.as, c]));
  const given = new Map(modesOf(build).map((m) => [m.id, m]));
  return {
    ...build,
    revision,
    ...(memory ? { memory } : {}),
    firmware: firmwareFamily,
    cards: build.cards.map((card): BuildCard => {
      const there = placed.get(copyName(card));
      if (!there) return card;
      const settings = Object.keys(there.settings).length > 0 ? { settings: { ...there.settings } } : {};
      return { ...card, ...(there.revision === "" ? {} : { revision: there.revision }), slot: there.slot, ...settings };
    }),
    modes: modes.map(({ id, firmware, enabled }): Mode => {
      const { on_or_off: open, ...mode } = given.get(id) ?? { id };
      return { ...mode, firmware, ...(open && enabled ? { cards: [...enabled] } : {}) };
    }),
  };
}
