// Facets: in how many combinations each revision, amount of memory and firmware version takes part, counted exactly over all of them.
import type { Catalogue } from "../../../catalogue/index.js";
import { ask, compile } from "../../../planning/index.js";
import type { Build } from "../../../records/index.js";
import { type Budget, countPerValue } from "../../../solver/index.js";

export interface Facet {
  /** Id of the choice, as in an answer: "revision", "memory", "firmware:daily". */
  readonly choice: string;
  /** Decimal digits by value. */
  readonly counts: Readonly<Record<string, string>>;
}

/** Empty when the count did not come to an end: a part of a count would mislead. */
export function facetsOf(catalogue: Catalogue, build: Build, budget?: Budget): Facet[] {
  const asked = ask(catalogue, build);
  if (asked.kind !== "question") return [];
  const { question } = asked;
  const { certain, frame } = compile(question);
  const { counts, exact } = countPerValue(certain, budget);
  if (!exact) return [];
  const facet = (choice: string, variable: number, values: readonly string[]): Facet => ({
    choice,
    counts: Object.fromEntries(values.map((v, i) => [v, String(counts[variable]![i] ?? 0n)])),
  });
  return [
    facet("revision", frame.revision, question.revisions),
    facet("memory", frame.memory, question.memories.map(String)),
    ...question.modes.map((m, i) =>
      facet(
        `firmware:${m.id}`,
        frame.firmware[i]!,
        question.versions.map((v) => v.id),
      ),
    ),
  ];
}
