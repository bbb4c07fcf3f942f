// The ROM of a card, held against the card's record: where that names a window of an option ROM, the header must be one the scan finds,
// and what it declares must fit the window. The code in it is nobody's business here.
import { claimSites } from "../catalogue/index.js";
import { bytes as bytesOf, type Card, listed, must, sizeText } from "../records/index.js";
import { type OptionRom, optionRom } from "./option-rom.js";

export interface CardRom {
  readonly card: string;
  readonly header: OptionRom;
  readonly holds: boolean;
  readonly says: string;
}

/** Undefined when the record names no option ROM: then there is no header to ask for. */
export function cardRom(card: Card, rom: Uint8Array): CardRom | undefined {
  const sizes = claimSites(card)
    .flatMap(({ claims }) => listed(claims.memory))
    .filter((w) => w.is === "option-rom")
    .map((w) => bytesOf(w.size));
  if (sizes.length === 0) return undefined;
  const window = Math.max(...sizes);
  const header = optionRom(rom);
  const bad = (says: string): CardRom => ({ card: card.id, header, holds: false, says: `bad option ROM for ${card.name}. ${says}` });
  if (!header.valid) return bad(`${header.says} The machine would not run it; read the device again before it is burned.`);
  const declared = must(header.declared, "the length that a valid header declares");
  if (declared > window)
    return bad(
      `It declares ${sizeText(declared)}, and the card's window shows ${sizeText(window)}: the scan would sum what it cannot see.`,
    );
  const rest = rom.length > declared ? `, the first of ${sizeText(rom.length)}` : "";
  return {
    card: card.id,
    header,
    holds: true,
    says: `option ROM for ${card.name}: signature, length (${sizeText(declared)}${rest}) and sum are right. What it does was not checked.`,
  };
}
