// What a card does on a chain of its bus.
import type { Card } from "../records/index.js";

export type OnChain = "uses" | "passes" | "breaks";

/** Undefined where nobody has written it down. */
export function onChain({ chain }: Pick<Card, "chain">, id: string): OnChain | undefined {
  const word = typeof chain === "object" ? chain[id] : chain;
  return word === "unknown" ? undefined : word;
}

/** The chains a card speaks of by name. */
export function chainsNamed({ chain }: Pick<Card, "chain">): readonly string[] {
  return typeof chain === "object" ? Object.keys(chain) : [];
}
