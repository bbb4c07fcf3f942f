// Faults of the burn: halves, banks, lanes or bytes in the wrong place. The wiring is right in all of them.

import { nothingRuns } from "../simulate/model.js";
import type { Fault } from "../types.js";
import type { FaultCase, FaultInput } from "./fault-case.js";

export function burns({ built, banks, candidate }: FaultInput): FaultCase[] {
  const { good, model } = built;
  if (model.lanes === 0) return [];
  const content = good.content[0]!;
  const make = (id: string, kind: Fault["kind"], says: string, fix: string, to: readonly number[]): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: { ...good, content: good.content.map(() => to) },
    burn: true,
  });
  const cases: FaultCase[] = [];
  const used = [...new Set(content)];
  const label = (v: number) => model.versions[v]!;
  for (const v of used) {
    // A repeated image has two equal halves: exchanging them changes nothing.
    const repeats = banks.find((b) => b.version === label(v))?.repeats ?? 1;
    const spoilt = repeats >= 2 ? content : content.map((c) => (c === v ? nothingRuns : c));
    cases.push(
      make(
        `halves-swapped:${label(v)}`,
        "halves-swapped",
        `The halves of ${label(v)} are swapped in the burn`,
        `Burn ${label(v)} again by the recipe.`,
        spoilt,
      ),
    );
    if (repeats < 2) continue;
    cases.push(
      make(
        `image-not-repeated:${label(v)}`,
        "image-not-repeated",
        `${label(v)} lies once in its bank and the rest is blank`,
        `Burn ${label(v)} ${repeats} times over, by the recipe.`,
        content.map((c) => (c === v ? nothingRuns : c)),
      ),
    );
  }
  cases.push(
    make(
      "banks-reversed",
      "banks-reversed",
      "The banks were burned in the reverse order",
      "Burn again by the recipe, bank 0 first.",
      [...content].reverse(),
    ),
  );
  used.forEach((x, i) => {
    for (const y of used.slice(i + 1)) {
      const swapped = content.map((c) => (c === x ? y : c === y ? x : c));
      cases.push(
        make(
          `banks-exchanged:${label(x)}~${label(y)}`,
          "banks-exchanged",
          `${label(x)} and ${label(y)} were burned in one another's banks`,
          "Burn again by the recipe.",
          swapped,
        ),
      );
    }
  });
  const dead = content.map(() => nothingRuns);
  if (model.lanes === 2) {
    cases.push(
      make(
        "lanes-exchanged",
        "lanes-exchanged",
        "The devices for even and odd bytes stand in one another's socket",
        "Exchange the two devices.",
        dead,
      ),
    );
  }
  if (candidate.fit && candidate.fit.width === 16) {
    cases.push(
      make(
        "bytes-swapped",
        "bytes-swapped",
        "The bytes of every word are swapped in the burn",
        "Burn again with the bytes of each word the other way round.",
        dead,
      ),
    );
  }
  return cases;
}
