// Firmware versions in their declared order, and spans over that order.
import { type Board, bytes, type Firmware, type FirmwareRange, type FirmwareVersion } from "../records/index.js";

/** Place of a version in the declared order, or -1. */
export function versionIndex(family: Firmware, version: string): number {
  return family.versions.findIndex((v) => v.id === version);
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

/** Features a version has: all that it and its forerunners added, less what was removed. */
export function featuresOf(family: Firmware, version: string): ReadonlySet<string> {
  const features = new Set<string>();
  for (const v of family.versions) {
    for (const f of v.adds ?? []) features.add(f);
    for (const f of v.removes ?? []) features.delete(f);
    if (v.id === version) return features;
  }
  return new Set();
}

/** Memory a version needs, in bytes; 0 when it asks for none. */
export function memoryNeeded(version: FirmwareVersion): number {
  return version.memory_at_least === undefined ? 0 : bytes(version.memory_at_least);
}
