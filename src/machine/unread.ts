// What a question names that is in a file and could not be read: nobody can say anything of it, so nothing can be said of the machine.
import { type Catalogue, namingsOfBuild } from "../catalogue/index.js";
import { type Build, goesBy, type Kind, type Unread } from "../records/index.js";

/** A question about records that could not be read. It is a good question; its answer is not known. */
export interface AskedUnread {
  readonly kind: "unread";
  /** Those it names, in the order of the question. */
  readonly unread: readonly Unread[];
}

/** The unread records a build names: board, its bus and firmware, cards, parts. */
export function findUnread(catalogue: Catalogue, build: Build): readonly Unread[] {
  if (catalogue.unread.length === 0) return [];
  const board = catalogue.boards.get(build.board);
  const family = build.firmware ?? board?.firmware[0];
  const named = [
    ...[...namingsOfBuild(build)].filter(({ kind }) => kind !== "conflict"),
    ...(board ? [{ kind: "bus" as Kind, id: board.bus }] : []),
    ...(family === undefined ? [] : [{ kind: "firmware" as Kind, id: family }]),
  ];
  return [...new Set(named.flatMap(({ kind, id }) => catalogue.unread.filter((unread) => goesBy(unread, kind, id))))];
}
