// The priority chain through the slots: a card that uses it must be reached from its head.
import { slotsOf } from "./facts.js";
import { keeps } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

export function chainObjections(c: Case, mode: ModeOfUse): Objection[] {
  // "Left out: not known, where the bus has a chain."
  const silent = (f: Fitted) => f.card.chain === undefined && c.world.bus.chain !== undefined;
  const onChain = (f: Fitted) => (f.card.chain === "uses" || silent(f)) && keeps(f, mode, "chain");
  return c.fitted.filter(onChain).flatMap((f) => {
    const { cut, perhaps } = reached(c, mode, f);
    if (cut) return [silent(f) ? unknown(cut) : no(cut)];
    return perhaps ? [unknown(perhaps)] : [];
  });
}

/** What surely cuts the card off, or may do so; a card in the way that does not say what it does on the chain may break it. */
function reached(c: Case, mode: ModeOfUse, f: Fitted): { readonly cut?: string; readonly perhaps?: string } {
  const { board, bus } = c.world;
  const here = slotsOf(c).map((s) => s.id);
  const chain = board.chain?.filter((id) => here.includes(id));
  const at = chain?.indexOf(f.slot.id) ?? -1;
  if (!chain || at < 0) return { cut: `${f.slot.id} is not on the chain that ${f.as} uses` };
  let perhaps: string | undefined;
  for (const before of chain.slice(0, at)) {
    const in_it = c.fitted.find((o) => o.slot.id === before);
    if (!in_it && bus.chain?.broken_by_empty) return { cut: `empty ${before} cuts ${f.as} off the chain` };
    if (!in_it || !keeps(in_it, mode, "chain")) continue;
    if (in_it.card.chain === "breaks") return { cut: `${in_it.as} cuts ${f.as} off the chain` };
    if (in_it.card.chain === undefined) perhaps = `${in_it.as} may cut ${f.as} off the chain`;
  }
  return perhaps === undefined ? {} : { perhaps };
}
