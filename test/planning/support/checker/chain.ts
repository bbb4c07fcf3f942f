// The priority chain through the slots: a card that uses it must be reached from its head.
import { slotsOf } from "./facts.js";
import { keeps } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection } from "./world.js";

export function chainObjections(c: Case, mode: ModeOfUse): Objection[] {
  return c.fitted.filter((f) => f.card.chain === "uses" && keeps(f, mode, "chain")).flatMap((f) => reached(c, mode, f));
}

function reached(c: Case, mode: ModeOfUse, f: Fitted): Objection[] {
  const { board, bus } = c.world;
  const here = slotsOf(c).map((s) => s.id);
  const chain = board.chain?.filter((id) => here.includes(id));
  const at = chain?.indexOf(f.slot.id) ?? -1;
  if (!chain || at < 0) return [no(`${f.slot.id} is not on the chain that ${f.as} uses`)];
  for (const before of chain.slice(0, at)) {
    const in_it = c.fitted.find((o) => o.slot.id === before);
    if (!in_it && bus.chain?.broken_by_empty) return [no(`empty ${before} cuts ${f.as} off the chain`)];
    if (in_it?.card.chain === "breaks" && keeps(in_it, mode, "chain")) return [no(`${in_it.as} cuts ${f.as} off the chain`)];
  }
  return [];
}
