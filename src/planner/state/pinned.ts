// The build with every hole filled as one combination fills it: ready to be built, tested, and written down.
import type { Combination } from "../../planning/index.js";
import type { Build } from "../../records/index.js";

export function pinnedTo(build: Build, combination: Combination): Build {
  const { revision, memory, firmwareFamily, modes, cards } = combination;
  return {
    ...build,
    revision,
    ...(memory ? { memory } : {}),
    firmware: build.firmware ?? firmwareFamily,
    cards: cards.map((p) => ({
      card: p.card,
      ...(p.as === p.card ? {} : { as: p.as }),
      ...(p.revision ? { revision: p.revision } : {}),
      slot: p.slot,
      ...(Object.keys(p.settings).length > 0 ? { settings: p.settings } : {}),
    })),
    modes: modes.map((m) => {
      const asked = build.modes?.find((a) => a.id === m.id);
      return {
        id: m.id,
        ...(asked?.name ? { name: asked.name } : {}),
        firmware: m.firmware,
        ...(asked?.cards && asked.cards.length > 0 ? { cards: asked.cards } : {}),
        ...(asked?.safest ? { safest: true } : {}),
      };
    }),
  };
}
