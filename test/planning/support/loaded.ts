// A catalogue as the records it was gathered from, to be changed and gathered again.
import type { Catalogue } from "../../../src/catalogue/index.js";
import type { Kind, Loaded } from "../../../src/records/index.js";

export function loadedOf(catalogue: Catalogue): Loaded[] {
  const of = (kind: Kind, map: ReadonlyMap<string, unknown>) => [...map.values()].map((record) => ({ kind, record, file: "" }) as Loaded);
  return [
    ...of("bus", catalogue.buses),
    ...of("board", catalogue.boards),
    ...of("firmware", catalogue.firmware),
    ...of("card", catalogue.cards),
    ...of("conflict", catalogue.conflicts),
    ...of("build", catalogue.builds),
    ...of("part", catalogue.parts),
  ];
}
