// The bank table: which version lies at which offset of the device, how often it is repeated, and why it is there.
// Banks that no position selects hold the safest version, so that no single fault reaches an empty bank.
import { bytes, type Firmware, itemAt, known } from "../../records/index.js";
import type { Candidate, Demands, Sockets } from "../../switching/index.js";
import type { Bank, WiringReason } from "../types.js";

/** Bank numbers: bit of the device's line for each switched line, and what the fixed ones add. */
export function bankOf(candidate: Candidate, levels: number): number {
  let bank = 0;
  let line = 0;
  for (const use of candidate.lines) {
    const high = use.role === "switched" ? (levels >> line++) & 1 : use.role === "fixed-high" ? 1 : 0;
    if (high) bank |= 1 << use.fit.bit;
  }
  return bank;
}

export function bankTable(candidate: Candidate, sockets: Sockets, demands: Demands, repeats: ReadonlyMap<string, number>): Bank[] {
  const { contacts, fit } = candidate;
  if (!fit) return [];
  const modesOf = new Map<number, Set<number>>();
  contacts.modeAt.forEach((mode, position) => {
    if (mode === undefined) return;
    const bank = bankOf(candidate, itemAt(contacts.levelsAt, position));
    modesOf.set(bank, (modesOf.get(bank) ?? new Set()).add(mode));
  });
  const version = new Map<number, number>();
  for (const [levels, v] of contacts.versionAt) version.set(bankOf(candidate, levels), v);
  const first = new Set<string>();
  return Array.from({ length: fit.banks }, (_, index): Bank => {
    const modes = [...(modesOf.get(index) ?? [])].map((m) => itemAt(demands.modes, m).id);
    const held = itemAt(demands.versions, version.get(index) ?? 0);
    const use = modes.length === 0 ? "safe" : first.has(held) ? "copy" : "mode";
    if (use === "mode") first.add(held);
    return { index, offset: index * sockets.share, size: sockets.share, version: held, repeats: repeats.get(held) ?? 1, use, modes };
  });
}

/** How often each version's image goes into the window, or why it does not. */
export function imageRepeats(
  family: Firmware,
  versions: readonly string[],
  sockets: Sockets,
): { readonly repeats: ReadonlyMap<string, number>; readonly reasons: readonly WiringReason[] } {
  const repeats = new Map<string, number>();
  const reasons: WiringReason[] = [];
  for (const id of versions) {
    const index = family.versions.findIndex((v) => v.id === id);
    const refs = [{ kind: "firmware", id: family.id, pointer: index < 0 ? "" : `/versions/${index}/image` }];
    const image = family.versions[index]?.image;
    if (!image) {
      reasons.push({ code: "image-unknown", says: `${family.name} has no version ${id}.`, refs });
      continue;
    }
    const size = known(image.size);
    if (size === "unknown") {
      reasons.push({ code: "image-unknown", says: `The size of ${id} is unknown: read the device and take the length of the dump.`, refs });
      continue;
    }
    const length = bytes(size);
    if (image.width !== undefined && image.width !== sockets.totalWidth) {
      reasons.push({
        code: "image-width",
        says: `${id} is made for ${image.width} data bits, the socket has ${sockets.totalWidth}.`,
        refs,
      });
    } else if (length > sockets.window) {
      reasons.push({ code: "image-too-large", says: `${id} has ${length} bytes, the window ${sockets.window}.`, refs });
    } else if (sockets.window % length !== 0) {
      reasons.push({
        code: "image-uneven",
        says: `${id} has ${length} bytes, which do not fill the window of ${sockets.window} evenly.`,
        refs,
      });
    } else repeats.set(id, sockets.window / length);
  }
  return { repeats, reasons };
}
