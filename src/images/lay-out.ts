// From images and the bank table to the bytes of each device. Where a bank lies and what it holds was decided by the plan;
// this checks that the images fit it and fills the rest.
import { entryOf, sizeText } from "../records/index.js";
import { crc32 } from "./crc32.js";
import { hexAddress } from "./memory-file.js";
import { repeatTo, swapBytes, takeLane } from "./rearrange.js";

/** Of sockets in a row: which part of each image, or of its repetitions, the device holds. */
interface Part {
  /** Counted from 1, lowest addresses first. */
  readonly place: number;
  readonly of: number;
  /** Bytes of the part, over the lanes. */
  readonly size: number;
}

/** The part of a wiring plan a burn needs. */
export interface BurnPlan {
  readonly device: {
    readonly family: string;
    /** In bytes. */
    readonly capacity: number;
    /** Data bits. */
    readonly width: number;
    readonly sockets: readonly { readonly socket: string; readonly lane: "whole" | "even" | "odd"; readonly part?: Part }[];
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
  /** How often the image, or the device's part of it, stands in the region. */
  readonly repeats: number;
  /** Of the plain image, whole. */
  readonly imageCrc32: string;
}

export interface BurnDevice {
  readonly socket: string;
  readonly lane: "whole" | "even" | "odd";
  /** Data bits of the device: a lane of 8 bits holds every second byte, one of 16 every second word. */
  readonly width: number;
  readonly part?: Part;
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

/** What a device holds when several share the window: "even bytes", "odd words of part 1 of 2"; empty when it holds all. */
export function laneText({ lane, width, part }: Pick<BurnDevice, "lane" | "width" | "part">): string {
  const words = lane === "whole" ? "" : `${lane} ${width === 16 ? "words" : "bytes"}`;
  if (!part) return words;
  return `${words === "" ? "" : `${words} of `}part ${part.place} of ${part.of}`;
}

export function layOut(plan: BurnPlan, images: ReadonlyMap<string, Uint8Array>, options: LayOutOptions = {}): Layout {
  const fill = options.fill ?? 0xff;
  const { device, banks } = plan;
  const rows = device.sockets[0]?.part?.of ?? 1;
  const lanes = device.sockets.length / rows;
  const unit = device.width / 8;
  const problems: { version?: string; says: string }[] = [];
  if (!Number.isInteger(fill) || fill < 0 || fill > 0xff) problems.push({ says: `The fill is ${fill}; it must be one byte, 0 to 255.` });
  if (!isCovered(device.sockets, rows))
    problems.push({
      says: `Sockets ${device.sockets.map((s) => `${s.socket} (${s.lane})`).join(", ")}: only one socket that holds the whole width, or one even and one odd, and these in a row, can be laid out.`,
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
    const part = image.length / device.sockets.length;
    for (const bank of mine)
      if (part * bank.repeats !== bank.size)
        problems.push({
          version,
          says: `Bank ${bank.index} has ${sizeText(bank.size)} for ${bank.repeats} times ${version}; the image gives ${sizeText(part)} each.`,
        });
    const window = rows * (device.sockets[0]?.part?.size ?? image.length);
    if (window % image.length !== 0)
      problems.push({ version, says: `The image of ${version} has ${image.length} bytes, which do not fill the window evenly.` });
  }
  if (problems.length > 0) return { kind: "refused", problems };

  const devices = device.sockets.map(({ socket, lane, part }): BurnDevice => {
    const out = new Uint8Array(device.capacity).fill(fill);
    const regions = sorted.map((bank): Region => {
      const image = entryOf(images, bank.version);
      const mine = part ? repeatTo(image, part.of * part.size).subarray((part.place - 1) * part.size, part.place * part.size) : image;
      out.set(repeatTo(lane === "whole" ? mine : takeLane(mine, lane, unit), bank.size), bank.offset);
      const { index, offset, size, version } = bank;
      const repeats = (size * lanes) / Math.min(image.length, part?.size ?? image.length);
      return { bank: index, offset, size, version, repeats, imageCrc32: crc32(image) };
    });
    const bytes = options.highByteFirst && device.width === 16 ? swapBytes(out) : out;
    return { socket, lane, ...(part ? { part } : {}), width: device.width, bytes, crc32: crc32(bytes), regions };
  });
  return { kind: "layout", family: device.family, fill, devices };
}

/** Row after row, each with one device for the whole width or one for each lane. */
function isCovered(sockets: BurnPlan["device"]["sockets"], rows: number): boolean {
  const lanes = sockets.map((s) => s.lane).join(" ");
  const row = (order: string) => Array.from({ length: rows }, () => order).join(" ");
  const places = sockets.map((s) => `${s.part?.place ?? 1}/${s.part?.of ?? 1}/${s.part?.size ?? 0}`);
  const wanted = sockets.map((_, i) => `${Math.floor(i / (sockets.length / rows)) + 1}/${rows}/${sockets[0]?.part?.size ?? 0}`);
  return [row("whole"), row("even odd"), row("odd even")].includes(lanes) && places.every((place, i) => place === wanted[i]);
}
