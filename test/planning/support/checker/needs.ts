// What cards and firmware need: versions, features, boards, memory, the bus clock, other cards.
import type { BoardMatch, FirmwareRange } from "../../../../src/records/index.js";
import { bytesOf, known } from "./facts.js";
import { mainMemoryIn } from "./memory.js";
import { keeps, runs } from "./switching.js";
import { type Case, type Fitted, type ModeOfUse, no, type Objection, unknown } from "./world.js";

export function inSpan(c: Case, span: FirmwareRange, version: string): boolean {
  const { family } = c.world;
  if (span.family !== family.id) return false;
  const order = family.versions.map((v) => v.id);
  const place = (id: string) => order.indexOf(id);
  const at = place(version);
  return (
    (span.from === undefined || at >= place(span.from)) &&
    (span.upTo === undefined || at <= place(span.upTo)) &&
    (span.before === undefined || at < place(span.before)) &&
    !span.except?.includes(version) &&
    (span.only === undefined || span.only.includes(version))
  );
}

export function isBoard(c: Case, matches: readonly BoardMatch[]): boolean {
  return matches.some((m) => m.board === c.world.board.id && (!m.revisions || m.revisions.includes(c.machine.revision)));
}

/** Features a version has: what it and those before it brought, less what was dropped since. */
function featuresOf(c: Case, version: string): Set<string> {
  const out = new Set<string>();
  for (const v of c.world.family.versions) {
    for (const feature of v.adds ?? []) out.add(feature);
    for (const feature of v.removes ?? []) out.delete(feature);
    if (v.id === version) break;
  }
  return out;
}

/** The firmware of a mode: made for this board, with memory enough. */
export function firmwareObjections(c: Case, mode: ModeOfUse): Objection[] {
  const { family } = c.world;
  const version = family.versions.find((v) => v.id === mode.version)!;
  const out: Objection[] = [];
  if (!isBoard(c, family.boards)) out.push(no(`${family.id} is not made for this board`));
  if (version.boards && !isBoard(c, version.boards)) out.push(no(`${version.id} does not run on this board`));
  if (version.memory_at_least !== undefined) out.push(...memoryAtLeast(mainMemoryIn(c, mode), version.id, version.memory_at_least));
  return out;
}

export function needObjections(c: Case, mode: ModeOfUse): Objection[] {
  return c.fitted.flatMap((f) => [...needsOf(c, mode, f), ...otherCards(c, mode, f)]);
}

function needsOf(c: Case, mode: ModeOfUse, f: Fitted): Objection[] {
  const { needs } = f.card;
  const out: Objection[] = [];
  if (!needs) return out;
  if (needs.firmware && keeps(f, mode, "firmware") && !needs.firmware.some((span) => inSpan(c, span, mode.version)))
    out.push(no(`${f.as} does not work under ${mode.version}`));
  const features = featuresOf(c, mode.version);
  if (needs.features && keeps(f, mode, "features") && !needs.features.every((x) => features.has(x)))
    out.push(no(`${f.as} lacks a feature of ${mode.version}`));
  if (needs.boards && !isBoard(c, needs.boards)) out.push(no(`${f.as} does not work on this board`));
  if (keeps(f, mode, "memory-size")) {
    // "On the board and on other cards together."
    const memory = mainMemoryIn(c, mode, f);
    if (needs.memory_at_least !== undefined) out.push(...memoryAtLeast(memory, f.as, needs.memory_at_least));
    const most = needs.memory_at_most === undefined ? undefined : bytesOf(needs.memory_at_most);
    if (most !== undefined && memory && memory.from > most) out.push(no(`${f.as} bears less memory`));
    else if (most !== undefined && (!memory || memory.to > most)) out.push(unknown(`memory of the machine, for ${f.as}`));
  }
  if (needs.clock_at_most_MHz !== undefined && keeps(f, mode, "clock")) {
    const [most, clock] = [known(needs.clock_at_most_MHz), known(c.world.board.clock_MHz)];
    if (most === undefined || clock === undefined) out.push(unknown(`whether ${f.as} follows the bus clock`));
    else if (clock > most) out.push(no(`the bus is too fast for ${f.as}`));
  }
  return out;
}

function memoryAtLeast(memory: ReturnType<typeof mainMemoryIn>, what: string, size: number | string): Objection[] {
  if (memory && memory.to < bytesOf(size)) return [no(`${what} needs more memory`)];
  return !memory || memory.from < bytesOf(size) ? [unknown(`memory of the machine, for ${what}`)] : [];
}

/** "Another card it needs, running in the same mode: any one of those named." */
function otherCards(c: Case, mode: ModeOfUse, f: Fitted): Objection[] {
  if (!keeps(f, mode, "cards")) return [];
  return (f.card.needs?.cards ?? [])
    .filter((need) => !c.fitted.some((o) => o !== f && need.any_of.includes(o.card.id) && runs(o, mode)))
    .map(() => no(`${f.as} lacks another card`));
}
