// The header of an option ROM: two signature bytes, the length in blocks of 512 bytes, and a sum over that length that is 0.
// Says what the scan of the time would find in these bytes; where the ROM lies is the records' business.
import { itemAt } from "../records/index.js";

export interface OptionRom {
  readonly signature: boolean;
  /** Bytes it says it has; undefined without a signature. */
  readonly declared?: number;
  /** The file has all the bytes it declares. */
  readonly longEnough: boolean;
  /** Sum of the declared bytes modulo 256; undefined when they are not all there. */
  readonly sum?: number;
  readonly valid: boolean;
  /** What is wrong and what to do, in a sentence; empty when valid. */
  readonly says: string;
}

const block = 512;

export function optionRom(bytes: Uint8Array): OptionRom {
  const [first, second, blocks] = bytes;
  if (first !== 0x55 || second !== 0xaa) {
    const swapped = first === 0xaa && second === 0x55;
    return {
      signature: false,
      longEnough: false,
      valid: false,
      says: swapped
        ? "The signature bytes 55 AA stand the wrong way round: the file is byte-swapped, or odd and even halves are exchanged."
        : "It does not begin with 55 AA, so the scan passes over it.",
    };
  }
  if (blocks === undefined || blocks === 0)
    return { signature: true, longEnough: false, valid: false, says: "It declares no length: byte 2 counts blocks of 512 bytes." };
  const declared = blocks * block;
  if (bytes.length < declared)
    return {
      signature: true,
      declared,
      longEnough: false,
      valid: false,
      says: `It declares ${declared} bytes, and the file has ${bytes.length}: the dump is cut short, or the length byte is wrong.`,
    };
  let sum = 0;
  for (let i = 0; i < declared; i++) sum = (sum + itemAt(bytes, i)) & 0xff;
  const wrong = `Its ${declared} bytes add up to ${sum} modulo 256 and not to 0: a bit is wrong, or the check byte was never set.`;
  return { signature: true, declared, longEnough: true, sum, valid: sum === 0, says: sum === 0 ? "" : wrong };
}
