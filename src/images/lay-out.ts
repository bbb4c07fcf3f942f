// From images and the bank table to the bytes of each device. Where a bank lies and what it holds was decided by the plan;
// this checks that the images fit it and fills the rest.
import { sizeText } from "../records/index.js";
import { crc32 } from "./crc32.js";
import { hexAddress } from "./memory-file.js";
import { repeatTo, swapBytes, takeLane } from "./rearrange.js";

/** The part of a wiring plan a burn needs. */
export interface BurnPlan {
  readonly device: {
    readonly family: string;
    /** In bytes. */
    readonly capacity: number;
    /** Data bits. */
    readonly width: number;
    readonly sockets: readonly { readonly socket: string; readonly lane: "whole" | "even" | "odd" }[];
  };
  readonly banks: readonly BurnBank[];
}

/** What lies where in each device, in bytes: the image of a version, repeated to fill the bank. */
export interface BurnBank {
  readonly index: number;
  readonly offset: number;
  readonly size: number;
  readonly version: string;
  readonly repeats: number;
}

export interface Region {
  readonly bank: number;
  /** First byte inside the device, and how many. */
  readonly offset: number;
  readonly size: number;
  readonly version: string;
  readonly repeats: number;
  /** Of the plain image, whole. */
  readonly imageCrc32: string;
}

export interface BurnDevice {
  readonly socket: string;
  readonly lane: "whole" | "even" | "odd";
  /** Data bits of the device: a lane of 8 bits holds every second byte, one of 16 every second word. */
  readonly width: number;
  readonly bytes: Uint8Array;
  readonly crc32: string;
  /** In order of offset; what lies between holds the fill. */
  readonly regions: readonly Region[];
}

export type Layout =
  | { readonly kind: "layout"; readonly family: string; readonly fill: number; readonly devices: readonly BurnDevice[] }
  | { readonly kind: "refused"; readonly problems: readonly { readonly version?: string; readonly says: string }[] };

export interface LayOutOptions {
  /** Value of bytes no image fills; FF is what an erased device holds. */
  readonly fill?: number;
  /** For programmers that take the high byte of a 16-bit device first. */
  readonly highByteFirst?: boolean | undefined;
}

/** What a device holds when two share the width: "even bytes", "odd words"; empty when it holds all. */
export function laneText({ lane, width }: Pick<BurnDevice, "lane" | "width">): string {
  return lane === "whole" ? "" : `${lane} ${width === 16 ? "words" : "bytes"}`;
}

export function layOut(plan: BurnPlan, images: ReadonlyMap<string, Uint8Array>, options: LayOutOptions = {}): Layout {
  const fill = options.fill ?? 0xff;
  const { device, banks } = plan;
  const lanes = device.sockets.length > 1 ? 2 : 1;
  const unit = device.width / 8;
  const problems: { version?: string; says: string }[] = [];
  if (!Number.isInteger(fill) || fill < 0 || fill > 0xff) problems.push({ says: `The fill is ${fill}; it must be one byte, 0 to 255.` });
  const order = device.sockets.map((s) => s.lane).join(" ");
  if (order !== "whole" && order !== "even odd" && order !== "odd even")
    problems.push({
      says: `Sockets ${device.sockets.map((s) => `${s.socket} (${s.lane})`).join(", ")}: only one socket that holds the whole width, or one even and one odd, can be laid out.`,
    });

  const sorted = [...banks].sort((a, b) => a.offset - b.offset);
  for (const [i, bank] of sorted.entries()) {
    if (bank.offset + bank.size > device.capacity)
      problems.push({
        says: `Bank ${bank.index} ends at ${hexAddress(bank.offset + bank.size)}, past the ${sizeText(device.capacity)} of the ${device.family}.`,
      });
    const next = sorted[i + 1];
    if (next && bank.offset + bank.size > next.offset) problems.push({ says: `Banks ${bank.index} and ${next.index} overlap.` });
  }
  for (const version of new Set(banks.map((b) => b.version))) {
    const image = images.get(version);
    const mine = banks.filter((b) => b.version === version);
    if (image === undefined) {
      problems.push({ version, says: `There is no image of ${version}; bank ${mine.map((b) => b.index).join(", ")} needs it.` });
      continue;
    }
    if (image.length % (lanes * unit) !== 0)
      problems.push({
        version,
        says:
          lanes === 2
            ? `The image of ${version} has ${image.length} bytes; it cannot be split evenly over two devices of ${device.width} bits.`
            : `The image of ${version} has an odd length; the ${device.family} holds ${device.width}-bit words.`,
      });
    const part = image.length / lanes;
    for (const bank of mine)
      if (part * bank.repeats !== bank.size)
        problems.push({
          version,
          says: `Bank ${bank.index} has ${sizeText(bank.size)} for ${bank.repeats} times ${version}; the image gives ${sizeText(part)} each.`,
        });
  }
  if (problems.length > 0) return { kind: "refused", problems };

  const devices = device.sockets.map(({ socket, lane }): BurnDevice => {
    const out = new Uint8Array(device.capacity).fill(fill);
    const regions = sorted.map((bank): Region => {
      const image = images.get(bank.version)!;
      const part = lane === "whole" ? image : takeLane(image, lane, unit);
      out.set(repeatTo(part, bank.size), bank.offset);
      const { index, offset, size, version, repeats } = bank;
      return { bank: index, offset, size, version, repeats, imageCrc32: crc32(image) };
    });
    const bytes = options.highByteFirst && device.width === 16 ? swapBytes(out) : out;
    return { socket, lane, width: device.width, bytes, crc32: crc32(bytes), regions };
  });
  return { kind: "layout", family: device.family, fill, devices };
}
