// The machine as it stands, turned into a question: what was pinned becomes what stands, so that changes are counted, not forbidden.
import type { Build, BuildCard } from "../records/index.js";

/** The build with its pins taken as the standing machine and every choice open again. The revision of the board stays: it cannot be turned. */
export function asStanding(build: Build): Build {
  const firmware = build.stands?.firmware ?? build.modes?.[0]?.firmware;
  const revision = build.revision ?? build.stands?.revision;
  const memory = build.memory ?? build.stands?.memory;
  const standing = build.stands?.cards ?? build.cards;
  const { memory: _, modes, ...rest } = build;
  return {
    ...rest,
    ...(revision === undefined ? {} : { revision }),
    cards: build.cards.map(
      ({ card, as, revision: own }): BuildCard => ({
        card,
        ...(as === undefined ? {} : { as }),
        ...(own === undefined ? {} : { revision: own }),
      }),
    ),
    ...(modes ? { modes: modes.map(({ firmware: _, ...mode }) => mode) } : {}),
    stands: {
      ...(typeof revision === "string" ? { revision } : {}),
      ...(memory === undefined ? {} : { memory }),
      ...(firmware === undefined ? {} : { firmware }),
      ...(standing.length > 0 ? { cards: standing } : {}),
    },
  };
}
