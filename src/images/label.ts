// The text for the label on a burned device: what it holds, by which checksum to know it, when it was made.
import { sizeText } from "../records/index.js";
import { type BurnDevice, laneText } from "./lay-out.js";
import { hexAddress } from "./memory-file.js";

export interface LabelFacts {
  readonly family: string;
  /** Family of the images: Skerry Monitor. */
  readonly firmware: string;
  /** YYYY-MM-DD; the caller's clock. */
  readonly date: string;
  /** Position of the switch that selects a version. */
  readonly positions?: Readonly<Record<string, readonly string[]>>;
  /** Versions whose bytes were taken on the owner's word, with what to say of them: "no checksum recorded: not checked". */
  readonly unchecked?: ReadonlyMap<string, string>;
}

export function labelText(device: BurnDevice, facts: LabelFacts): string {
  const lane = laneText(device);
  const banks = device.regions.map((r) => {
    const at = facts.positions?.[String(r.bank)];
    const times = r.repeats > 1 ? ` x${r.repeats}` : "";
    const unchecked = facts.unchecked?.get(r.version);
    const where = at === undefined || at.length === 0 ? "" : `  position ${at.join(", ")}`;
    return `bank ${r.bank}  ${hexAddress(r.offset)}  ${r.version}${times}  ${r.imageCrc32}${unchecked === undefined ? "" : `  ${unchecked}`}${where}`;
  });
  return [
    `${device.socket}  ${facts.family}  ${sizeText(device.bytes.length)}${lane === "" ? "" : `, ${lane}`}`,
    facts.firmware,
    ...banks,
    `device CRC-32 ${device.crc32}`,
    `burned ${facts.date}`,
    "",
  ].join("\n");
}
