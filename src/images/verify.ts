// Reading back: does the device hold what was laid out, and if not, which mistake fits what is there.
import { itemAt, sizeText } from "../records/index.js";
import type { BurnDevice } from "./lay-out.js";
import { hexAddress } from "./memory-file.js";
import { sameBytes, swapBytes, swapWords, timesHeld } from "./rearrange.js";

export interface BankVerdict {
  readonly bank: number;
  readonly version: string;
  readonly same: boolean;
}

export interface Verification {
  readonly socket: string;
  readonly same: boolean;
  readonly says: string;
  /** How many bytes differ, and the first of them. */
  readonly differ: number;
  readonly first?: { readonly at: number; readonly wanted: number; readonly read: number } | undefined;
  readonly banks: readonly BankVerdict[];
  /** What explains the difference, when something does. */
  readonly because: readonly string[];
}

function reversedBanks(device: BurnDevice, read: Uint8Array): boolean {
  const size = device.regions[0]?.size;
  if (size === undefined || device.bytes.length % size !== 0) return false;
  const count = device.bytes.length / size;
  if (count < 2) return false;
  return Array.from({ length: count }, (_, i) => i).every((i) =>
    sameBytes(read.subarray(i * size, (i + 1) * size), device.bytes.subarray((count - 1 - i) * size, (count - i) * size)),
  );
}

function explain(device: BurnDevice, read: Uint8Array, others: readonly BurnDevice[]): string[] {
  const wanted = device.bytes;
  if (read.length !== wanted.length) {
    const says = [`It has ${read.length} bytes; ${sizeText(wanted.length)} were laid out. Set the programmer to this device.`];
    const times = read.length / wanted.length;
    if (Number.isInteger(times) && timesHeld(read) % times === 0 && sameBytes(read.subarray(0, wanted.length), wanted))
      says.push(`What was laid out stands in it ${times} times over: the programmer was set to a larger device.`);
    else if (sameBytes(read, wanted.subarray(0, read.length))) says.push("What is there agrees with the start: it was cut short.");
    return says;
  }
  const first = itemAt(read, 0);
  if (read.every((b) => b === first))
    return [
      first === 0xff
        ? "Every byte is FF: the device is blank, or made no contact."
        : `Every byte is ${hexAddress(first)}: no contact, or no supply.`,
    ];
  const says: string[] = [];
  if (sameBytes(swapBytes(read), wanted)) says.push("The bytes of each 16-bit word are exchanged.");
  else if (sameBytes(swapWords(read), wanted)) says.push("The words of each 32 bits are exchanged.");
  for (const other of others)
    if (other !== device && sameBytes(read, other.bytes)) says.push(`It is the device of socket ${other.socket}: the two are exchanged.`);
  if (reversedBanks(device, read)) says.push("The banks lie in the reverse order.");
  if (says.length > 0) return says;
  let unburned = 0;
  let uncleared = 0;
  for (let i = 0; i < read.length; i++) {
    if ((itemAt(read, i) & ~itemAt(wanted, i)) !== 0) unburned++;
    if ((~itemAt(read, i) & itemAt(wanted, i) & 0xff) !== 0) uncleared++;
  }
  if (unburned > 0 && uncleared === 0)
    says.push("Bits that should be 0 are still 1: programming stopped early or was too weak; program it again.");
  if (uncleared > 0 && unburned === 0)
    says.push("Bits that should be 1 are already 0: it was not erased fully before; erase it and program it again.");
  return says;
}

/** `others` are all devices of the layout, to notice exchanged ones. */
export function verify(read: Uint8Array, device: BurnDevice, others: readonly BurnDevice[] = []): Verification {
  const wanted = device.bytes;
  let differ = Math.abs(read.length - wanted.length);
  let first: Verification["first"];
  for (let i = 0; i < Math.min(read.length, wanted.length); i++)
    if (read[i] !== wanted[i]) {
      differ++;
      first ??= { at: i, wanted: itemAt(wanted, i), read: itemAt(read, i) };
    }
  const banks = device.regions.map(({ bank, version, offset, size }) => ({
    bank,
    version,
    same: sameBytes(read.subarray(offset, offset + size), wanted.subarray(offset, offset + size)),
  }));
  const same = differ === 0;
  const because = same ? [] : explain(device, read, others);
  const bad = banks.filter((b) => !b.same);
  const where = bad.length === 0 ? "outside every bank" : `in ${bad.map((b) => `bank ${b.bank} (${b.version})`).join(", ")}`;
  const says = same
    ? `Socket ${device.socket}: all ${sizeText(wanted.length)} agree.`
    : `Socket ${device.socket}: ${differ} bytes differ, ${where}. ${because.join(" ")}`.trimEnd();
  return { socket: device.socket, same, says, differ, first, banks, because };
}
