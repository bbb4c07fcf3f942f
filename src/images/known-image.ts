// The images the firmware records know, flattened to what a dump can be held against.
import { bytes, type Firmware, known, unknown } from "../records/index.js";
import { checksums } from "./checksums.js";
import { crc32 } from "./crc32.js";

export interface KnownImage {
  readonly family: string;
  readonly familyName: string;
  readonly version: string;
  readonly size: number | "unknown";
  readonly crc32: string | "unknown";
  readonly sha1: string | "unknown";
  readonly sha256: string | "unknown";
  readonly width: number;
  readonly circulating: readonly CirculatingFile[];
}

type Recorded = NonNullable<Firmware["versions"][number]["circulating"]>[number];

/** A file in circulation, its size in bytes. */
export type CirculatingFile = Omit<Recorded, "size"> & { readonly size: number };

export function knownImages(firmware: Iterable<Firmware>): KnownImage[] {
  return [...firmware].flatMap((family) =>
    family.versions.map((version): KnownImage => {
      const size = known(version.image.size);
      return {
        family: family.id,
        familyName: family.name,
        version: version.id,
        size: size === unknown ? unknown : bytes(size),
        crc32: known(version.image.crc32),
        sha1: known(version.image.sha1),
        sha256: known(version.image.sha256),
        width: version.image.width ?? 8,
        circulating: (version.circulating ?? []).map((c) => ({ ...c, size: bytes(c.size) })),
      };
    }),
  );
}

/** The strongest checksum that agreed. */
export type AgreedBy = "sha256" | "sha1" | "crc32";

/** Compares with every checksum the record gives. A CRC-32 that agrees beside a SHA that does not is no match. */
export async function agrees(image: KnownImage, bytes: Uint8Array): Promise<AgreedBy | undefined> {
  if (image.size !== bytes.length) return undefined;
  if (image.crc32 !== "unknown" && image.crc32 !== crc32(bytes)) return undefined;
  if (image.crc32 === "unknown" && image.sha1 === "unknown" && image.sha256 === "unknown") return undefined;
  const sums = await checksums(bytes);
  let by: AgreedBy | undefined = image.crc32 === "unknown" ? undefined : "crc32";
  if (image.sha1 !== "unknown" && sums.sha1 !== undefined) {
    if (image.sha1 !== sums.sha1) return undefined;
    by = "sha1";
  }
  if (image.sha256 !== "unknown" && sums.sha256 !== undefined) {
    if (image.sha256 !== sums.sha256) return undefined;
    by = "sha256";
  }
  return by;
}
