// A card does not take one resource twice at once: one of the two addresses is a slip.
import { type Bus, hex, type IoWindow, listed, type MemoryWindow } from "../../records/index.js";
import { claimSites, meetRevisions, type Path } from "../claims.js";
import { lineId } from "../lines.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { meetIo, meetMemory } from "../windows.js";

export const claimsApart: Rule = {
  name: "claims-apart",
  says: "What a card takes at one time does not overlap itself.",
  why: "No card answers twice at one address; one of the two claims is a slip, and the planner would count both.",
  mend: "Correct the address, the setting's position or the revisions of one of the claims.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      // Fixed claims hold together; positions of one setting never do, so each stands for itself.
      const sites = claimSites(card);
      const fixed = listed(card.claims);
      const always = new Set(sites.filter((_, i) => i < fixed.length && !fixed[i]?.when));
      const taken: Taken[] = [];
      for (const site of sites) {
        const kept = taken.filter(
          (t) => t.site === site || (always.has(t.site) && always.has(site) && meetRevisions(t.site.revisions, site.revisions)),
        );
        for (const mine of takenBy(site)) {
          const other = kept.find((t) => meet(t, mine, bus));
          if (other) {
            yield {
              says: `The card takes ${mine.says} twice at once.`,
              at: ref("card", card.id, ...mine.path),
              related: [{ says: "It takes it here already.", at: ref("card", card.id, ...other.path) }],
              hint: "Correct one of them, or say which window asserts an overlay line that the other yields to.",
            };
          }
          kept.push(mine);
          taken.push(mine);
        }
      }
    }
  },
};

type Site = ReturnType<typeof claimSites>[number];
type Taken = { readonly site: Site; readonly path: Path; readonly says: string } & (
  | { readonly what: "io"; readonly is: IoWindow }
  | { readonly what: "memory"; readonly is: MemoryWindow }
  | { readonly what: "line" | "channel"; readonly is: string }
);

function takenBy(site: Site): readonly Taken[] {
  const { io, memory, interrupts, dma } = site.claims;
  const at = (field: string, i: number) => [...site.path, field, i];
  return [
    ...listed(io).map((is, i): Taken => ({ site, path: at("io", i), says: `ports at ${hex(is.base)}`, what: "io", is })),
    ...listed(memory).map((is, i): Taken => ({ site, path: at("memory", i), says: `memory at ${hex(is.base)}`, what: "memory", is })),
    ...listed(interrupts).map((is, i): Taken => ({ site, path: at("interrupts", i), says: `line ${is.line}`, what: "line", is: is.line })),
    ...listed(dma).map((is, i): Taken => ({ site, path: at("dma", i), says: `channel ${is.channel}`, what: "channel", is: is.channel })),
  ];
}

/** Windows of one card that follow the slot alike lie as far from each other in every slot; another's place hangs on the slot. */
function moveAlike(a: Taken, b: Taken): boolean {
  const step = (t: Taken) => (t.what === "io" || t.what === "memory" ? t.is.slot_step : undefined);
  return step(a) === step(b);
}

function meet(a: Taken, b: Taken, bus: Bus): boolean {
  if (!moveAlike(a, b)) return false;
  const line = (name: string) => lineId(bus, name) ?? name;
  if (a.what === "io" && b.what === "io") return meetIo(a.is, b.is, bus.io_address_bits);
  if (a.what === "memory" && b.what === "memory") return meetMemory(a.is, b.is, bus);
  if (a.what === "line" && b.what === "line") return line(a.is) === line(b.is);
  return a.what === "channel" && b.what === "channel" && a.is === b.is;
}
