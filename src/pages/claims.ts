// What a card or board takes of the machine's resources, as lines of text: ports, memory, interrupts, DMA.
import { bytes, type Claims, hex, sizeText } from "../records/index.js";
import { spanText } from "./common.js";

export interface ClaimLine {
  readonly kind: "ports" | "memory" | "interrupt" | "DMA";
  readonly what: string;
  readonly note?: string;
}

const answers: Readonly<Record<string, string>> = { ram: "RAM", rom: "ROM", registers: "registers", "option-rom": "option ROM" };

export function claimLines(claims: Claims): readonly ClaimLine[] {
  return [
    ...(claims.io ?? []).map((w) => ({
      kind: "ports" as const,
      what: spanText(w.base, w.size),
      note:
        w.decoded_bits === undefined
          ? undefined
          : `looks at ${w.decoded_bits} address bits, so it answers again every ${hex(2 ** w.decoded_bits)}`,
    })),
    ...(claims.memory ?? []).map((w) => ({
      kind: "memory" as const,
      what: spanText(w.base, bytes(w.size)),
      note: [sizeText(bytes(w.size)), w.is ? answers[w.is] : "", w.shareable ? "may be shared" : ""].filter(Boolean).join(", "),
    })),
    ...(claims.interrupts ?? []).map((i) => ({
      kind: "interrupt" as const,
      what: i.line,
      note: [i.mode ? `${i.mode}-driven` : "", i.shareable ? "lets others share it" : ""].filter(Boolean).join(", ") || undefined,
    })),
    ...(claims.dma ?? []).map((d) => ({
      kind: "DMA" as const,
      what: d.channel,
      note: d.shareable ? "lets go of it when idle" : undefined,
    })),
  ];
}

/** All of it in one line: "ports 0x300–0x30F, interrupt 5" */
export function claimText(claims: Claims): string {
  return (
    claimLines(claims)
      .map((c) => `${c.kind} ${c.what}`)
      .join(", ") || "nothing"
  );
}
