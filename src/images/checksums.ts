// The checksums a dump is known by. The two SHA sums come from the platform; a page opened as a file may lack them.
import { crc32 } from "./crc32.js";

export interface Checksums {
  readonly size: number;
  readonly crc32: string;
  /** Left out where the platform offers no digests. */
  readonly sha1?: string | undefined;
  readonly sha256?: string | undefined;
}

async function sha(name: "SHA-1" | "SHA-256", bytes: Uint8Array): Promise<string | undefined> {
  const subtle = globalThis.crypto?.subtle;
  if (subtle === undefined) return undefined;
  const digest = await subtle.digest(name, bytes as Uint8Array<ArrayBuffer>);
  return [...new Uint8Array(digest)].map((b) => b.toString(16).padStart(2, "0")).join("");
}

export async function checksums(bytes: Uint8Array): Promise<Checksums> {
  return { size: bytes.length, crc32: crc32(bytes), sha1: await sha("SHA-1", bytes), sha256: await sha("SHA-256", bytes) };
}
