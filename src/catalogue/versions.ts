// Firmware versions in their declared order, and spans over that order.
import { type Board, bytes, type Firmware, type FirmwareRange, type FirmwareVersion } from "../records/index.js";

const places = new WeakMap<Firmware, ReadonlyMap<string, number>>();

/** Place of a version in the declared order, or -1. */
export function versionIndex(family: Firmware, version: string): number {
  let of = places.get(family);
  if (!of) {
    // Backwards, so that of two versions told under one name the first counts.
    of = new Map(family.versions.map((v, at) => [v.id, at] as const).reverse());
    places.set(family, of);
  }
  return of.get(version) ?? -1;
}

/** True when the version lies in the span. A span of another family holds no version of this one. */
export function inRange(family: Firmware, version: string, range: FirmwareRange): boolean {
  if (range.family !== family.id) return false;
  const at = versionIndex(family, version);
  if (at < 0) return false;
  if (range.only && !range.only.includes(version)) return false;
  if (range.except?.includes(version)) return false;
  if (range.from !== undefined && at < versionIndex(family, range.from)) return false;
  if (range.upTo !== undefined && at > versionIndex(family, range.upTo)) return false;
  if (range.before !== undefined && at >= versionIndex(family, range.before)) return false;
  return true;
}

/** "R4 to R5.1", "from R5", "up to R4A", "R5.1 alone": a span as people say it. */
export function rangeText(range: FirmwareRange): string {
  const parts: string[] = [];
  if (range.only) parts.push(range.only.length === 1 ? `${range.only[0]} alone` : range.only.join(", "));
  else if (range.from && range.upTo) parts.push(range.from === range.upTo ? `${range.from} alone` : `${range.from} to ${range.upTo}`);
  else if (range.from && range.before) parts.push(`from ${range.from}, before ${range.before}`);
  else if (range.from) parts.push(`from ${range.from}`);
  else if (range.upTo) parts.push(`up to ${range.upTo}`);
  else if (range.before) parts.push(`before ${range.before}`);
  else parts.push("any version");
  if (range.except) parts.push(`but not ${range.except.join(", ")}`);
  return parts.join(", ");
}

/** True when the firmware record says this version runs on this revision of the board. */
export function runsOn(family: Firmware, version: FirmwareVersion, board: Board, revision: string): boolean {
  const matches = version.boards ?? family.boards;
  return matches.some((m) => m.board === board.id && (!m.revisions || m.revisions.includes(revision)));
}

const features = new WeakMap<Firmware, ReadonlyMap<string, ReadonlySet<string>>>();
const none: ReadonlySet<string> = new Set();

/** Features a version has: all that it and its forerunners added, less what was removed. */
export function featuresOf(family: Firmware, version: string): ReadonlySet<string> {
  let of = features.get(family);
  if (!of) {
    of = featuresByVersion(family);
    features.set(family, of);
  }
  return of.get(version) ?? none;
}

/** Versions that bring and drop nothing share one set with the version before, so that a long line stays small. */
function featuresByVersion(family: Firmware): ReadonlyMap<string, ReadonlySet<string>> {
  const out = new Map<string, ReadonlySet<string>>();
  let now = none;
  for (const v of family.versions) {
    if (v.adds || v.removes) now = new Set([...[...now, ...(v.adds ?? [])].filter((f) => !v.removes?.includes(f))]);
    if (!out.has(v.id)) out.set(v.id, now);
  }
  return out;
}

/** Memory a version needs, in bytes; 0 when it asks for none. */
export function memoryNeeded(version: FirmwareVersion): number {
  return version.memory_at_least === undefined ? 0 : bytes(version.memory_at_least);
}
