// What somebody at the bench sees of a build: at every position the firmware shown and the cards that answer.

import { itemAt } from "../../records/index.js";
import type { Observation } from "../types.js";
import type { BuiltModel } from "./build-model.js";
import { nothingRuns, type RawState, shownText, stateAt, type Variant } from "./model.js";

const notReached = "the knob does not turn so far";

export function observe(built: BuiltModel, variant: Variant, positions: readonly number[]): Observation[] {
  const { model } = built;
  return positions.map((p) => {
    const position = itemAt(model.positions, p);
    if (variant.unreached?.has(p)) return { position, shows: notReached, answers: [], unsure: [] };
    return observation(built, stateAt(model, variant, p), position);
  });
}

/** What is seen in one state. */
export function observation(built: BuiltModel, raw: RawState, position: string): Observation {
  const { model } = built;
  const of = (state: string) => model.cards.flatMap((card, i) => (raw.cards[i] === state ? [card.card] : []));
  // A machine that does not start, or stands on a short, shows nothing of its cards.
  const dead = raw.short || raw.version === nothingRuns;
  // What a card does under firmware, or beside a card, that the records rule out, nobody has seen.
  const doubtful = new Set(dead ? [] : built.judge?.(raw)?.unsure);
  const shows = model.lanes === 0 && !raw.short ? "starts" : shownText(model, raw);
  return {
    position,
    shows,
    answers: dead ? [] : of("on").filter((card) => !doubtful.has(card)),
    unsure: dead ? [] : [...of("undefined"), ...doubtful],
  };
}

export function keyOf(seen: readonly Observation[]): string {
  return JSON.stringify(seen.map((o) => [o.shows, o.answers, o.unsure]));
}

export function observationText({ model }: BuiltModel, o: Observation): string {
  const named = (cards: readonly string[]) => cards.map((as) => model.cards.find((c) => c.card === as)?.name ?? as).join(", ");
  const parts = [o.shows];
  if (o.answers.length > 0) parts.push(`${named(o.answers)} answer${o.answers.length === 1 ? "s" : ""}`);
  else if (o.shows !== "does not start" && o.shows !== "supply shorted" && o.shows !== notReached) parts.push("no switched card answers");
  if (o.unsure.length > 0) parts.push(`${named(o.unsure)} uncertain`);
  return parts.join(", ");
}
