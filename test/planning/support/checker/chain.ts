// The chains through the slots: a card that uses one must be reached from its head, and the chain must serve as many as use it.
import { known, slotsOf } from "./facts.js";
import { keeps } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

interface Chain {
  readonly id: string;
  readonly most?: number | undefined;
}

export function chainObjections(c: Case, mode: ModeOfUse): Objection[] {
  return chainsOf(c).flatMap((chain) => [...usersOf(c, mode, chain).flatMap((f) => ofUser(c, mode, chain, f)), ...served(c, mode, chain)]);
}

/** Level 3 where a jumper or a plug must bridge an empty slot. */
export function chainLevel(c: Case, mode: ModeOfUse): number {
  const bridged = chainsOf(c).some((chain) =>
    usersOf(c, mode, chain).some((f) => before(c, chain, f).some((slot) => isEmpty(c, slot) && toFit(c, chain))),
  );
  return bridged ? 3 : 0;
}

/** The chains of the bus, and one a card uses that the bus lacks. */
function chainsOf(c: Case): readonly Chain[] {
  const own = c.world.bus.chains ?? [];
  const named = c.fitted.flatMap(({ card }) =>
    typeof card.chain === "object" ? Object.keys(card.chain) : card.chain === "uses" && own.length === 0 ? [""] : [],
  );
  return [...own, ...[...new Set(named)].filter((id) => !own.some((o) => o.id === id)).map((id) => ({ id }))];
}

/** "Left out, or a chain that is not named: not known." */
const wordOf = ({ card: { chain } }: Fitted, { id }: Chain) => (typeof chain === "string" ? chain : (chain?.[id] ?? "unknown"));

const onBus = (c: Case, { id }: Chain) => (c.world.bus.chains ?? []).some((chain) => chain.id === id);

/** What is not written down of a card may be any of the three. */
function usersOf(c: Case, mode: ModeOfUse, chain: Chain): Fitted[] {
  const may = (f: Fitted) => wordOf(f, chain) === "uses" || (wordOf(f, chain) === "unknown" && onBus(c, chain));
  return c.fitted.filter((f) => may(f) && keeps(f, mode, "chain"));
}

function ofUser(c: Case, mode: ModeOfUse, chain: Chain, f: Fitted): Objection[] {
  const { cut, perhaps } = reached(c, mode, chain, f);
  if (cut) return [wordOf(f, chain) === "unknown" ? unknown(cut) : no(cut)];
  return perhaps ? [unknown(perhaps)] : [];
}

const led = (c: Case, { id }: Chain) => c.world.board.chains?.find((chain) => chain.chain === id);
const toFit = (c: Case, chain: Chain) => ["jumper", "plug"].includes(known(led(c, chain)?.empty) ?? "");

/** Slots before the card on the chain; "one that a revision lacks is passed over". */
function before(c: Case, chain: Chain, f: Fitted): readonly string[] {
  const here = slotsOf(c).map((s) => s.id);
  const slots = led(c, chain)?.slots.filter((id) => here.includes(id)) ?? [];
  return slots.slice(0, Math.max(0, slots.indexOf(f.slot.id)));
}

const isEmpty = (c: Case, slot: string) => !c.fitted.some((o) => o.slot.id === slot);

/** "One that a wide card only covers is empty." */
function isCovered(c: Case, slot: string): boolean {
  const place = c.world.board.slots.find((s) => s.id === slot)!.position;
  return c.fitted.some((o) => o.slot.position < place && place < o.slot.position + (o.card.room.slots ?? 1));
}

/** What surely cuts the card off, or may do so; a card in the way that does not say what it does on the chain may break it. */
function reached(c: Case, mode: ModeOfUse, chain: Chain, f: Fitted): { readonly cut?: string; readonly perhaps?: string } {
  const way = led(c, chain);
  if (!way?.slots.includes(f.slot.id)) return { cut: `${f.slot.id} is not on the chain that ${f.as} uses` };
  const empty = known(way.empty);
  let perhaps: string | undefined;
  for (const slot of before(c, chain, f)) {
    const in_it = c.fitted.find((o) => o.slot.id === slot);
    if (!in_it) {
      if (empty === "breaks" || (empty === "plug" && isCovered(c, slot))) return { cut: `empty ${slot} cuts ${f.as} off the chain` };
      if (empty === undefined) perhaps = `empty ${slot} may cut ${f.as} off the chain`;
      continue;
    }
    if (!keeps(in_it, mode, "chain")) continue;
    if (wordOf(in_it, chain) === "breaks") return { cut: `${in_it.as} cuts ${f.as} off the chain` };
    if (wordOf(in_it, chain) === "unknown") perhaps = `${in_it.as} may cut ${f.as} off the chain`;
  }
  return perhaps === undefined ? {} : { perhaps };
}

/** "Most cards that can use it in one machine." */
function served(c: Case, mode: ModeOfUse, chain: Chain): Objection[] {
  if (chain.most === undefined) return [];
  const users = usersOf(c, mode, chain);
  if (users.filter((f) => wordOf(f, chain) === "uses").length > chain.most) return [no(`chain ${chain.id} serves fewer`)];
  return users.length > chain.most ? [unknown(`chain ${chain.id} may serve fewer`)] : [];
}
