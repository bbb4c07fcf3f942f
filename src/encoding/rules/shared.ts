// Interrupt lines and DMA channels with two owners. One line under two names is one line.
import { type InterruptClaim, known, listed, unknown } from "../../records/index.js";
import { lineOf, type ResourceClaim, resourceClaims, together } from "../claims.js";
import { type ConstraintDraft, fact, ref, type TradeRule, unsettled } from "../draft.js";
import type { Frame } from "../frame.js";
import { pairs } from "./windows.js";

export const interrupts: TradeRule = {
  name: "interrupts",
  says: "An interrupt line has one owner, unless it is level-triggered, may be shared, and every owner lets go of it.",
  drafts: (frame) => [...pairs(frame, "interrupts", (a, b) => clash(frame, a, b)?.sure), ...undecided(frame)],
};

export const dma: TradeRule = {
  name: "dma",
  says: "A DMA channel has one owner, unless every owner lets go of it.",
  drafts: (frame) =>
    pairs(frame, "dma", (a, b) => {
      for (const x of listed(a.claims.dma))
        for (const y of listed(b.claims.dma))
          if (x.channel === y.channel && !(x.shareable && y.shareable)) return `both use DMA channel ${x.channel}`;
      return undefined;
    }),
};

function clash(
  frame: Frame,
  a: ResourceClaim,
  b: ResourceClaim,
): { readonly sure?: string; readonly open?: string; readonly line?: string } | undefined {
  const { bus } = frame.question;
  for (const x of listed(a.claims.interrupts))
    for (const y of listed(b.claims.interrupts)) {
      const line = lineOf(bus, x.line);
      if (!line || line.id !== lineOf(bus, y.line)?.id) continue;
      const names =
        x.line === y.line
          ? `both drive interrupt ${x.line}`
          : `${x.line} and ${y.line} are two names of one interrupt line, and both drive it`;
      const [trigger, share] = [known(line.trigger), known(line.share)];
      const willing = (c: InterruptClaim) => c.shareable === true && c.mode !== "edge";
      if (!willing(x) || !willing(y) || trigger === "edge" || share === "never")
        return { sure: trigger === "edge" ? `${names}; the line is edge-triggered and has one owner` : names };
      if (trigger === unknown || share === unknown) return { open: `${names}; whether the line may be shared is not known`, line: line.id };
    }
  return undefined;
}

function undecided(frame: Frame): ConstraintDraft[] {
  const { bus } = frame.question;
  const all = resourceClaims(frame).filter((t) => listed(t.claims.interrupts).length > 0);
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b): ConstraintDraft[] => {
      const met = a.card === b.card ? undefined : clash(frame, a, b);
      if (!met?.open) return [];
      return unsettled(
        frame,
        fact("interrupts", `${a.who} and ${b.who}: ${met.open}.`, a.ref, b.ref, ref("bus", bus.id, "/interrupts")),
        `Look up how ${bus.name} senses interrupt ${met.line}, or try both cards with both drivers loaded.`,
        ...together(frame, a, b, "interrupts").map((there) => [...a.when, ...b.when, ...there]),
      );
    }),
  );
}
