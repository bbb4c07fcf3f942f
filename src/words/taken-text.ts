// What an answer takes a card as of which the build says that it does not matter whether it is on.
import { listText } from "./text.js";

interface Taken {
  readonly mode: string;
  readonly card: string;
  readonly on: boolean;
}

/** "Where it does not matter: Tallow bus tracer is taken as off in Work." Undefined where nothing was left open. */
export function takenText(
  taken: readonly Taken[],
  cardName: (as: string) => string,
  modeName: (mode: string) => string,
): string | undefined {
  if (taken.length === 0) return undefined;
  const one = ({ mode, card, on }: Taken) => `${cardName(card)} is taken as ${on ? "on" : "off"} in ${modeName(mode)}`;
  return `Where it does not matter: ${listText(taken.map(one))}.`;
}
