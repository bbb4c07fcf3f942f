// What slotwright burn tells: what each dump is, which device holds what, what is to be done to its pins, what was written and verified.
import { type BurnDevice, type Identification, laneText, type Verification } from "../../images/index.js";
import type { PinWork } from "../../wiring/index.js";
import { json } from "../command.js";
import type { TriedRom } from "../reading/card-rom.js";
import type { ExitCode } from "../usage-error.js";
import type { Terminal } from "./terminal.js";

export type ReadBack = Verification & { readonly file: string };

export interface BurnReport {
  readonly identified: readonly Identification[];
  readonly problems: readonly string[];
  /** The device and its speed; left out for a switched machine, whose sheet tells it. */
  readonly device?: string | undefined;
  readonly pinWork: readonly PinWork[];
  /** Versions taken on the owner's word. */
  readonly unchecked: readonly string[];
  /** Those of them whose bytes miss the recorded checksum. */
  readonly different: readonly string[];
  readonly devices: readonly BurnDevice[];
  readonly wrote: readonly string[];
  readonly verified: readonly ReadBack[];
  readonly cardRoms: readonly TriedRom[];
}

/** 0 when every dump is known, every file right and every comparison equal. */
export function tellBurn(report: BurnReport, { json: asJson }: { readonly json?: boolean }, terminal: Terminal): ExitCode {
  if (asJson) terminal.out(json(asData(report)));
  else for (const line of lines(report)) terminal.out(line);
  if (!asJson && report.problems.length > 0 && report.devices.length === 0) terminal.err("Nothing was written.");
  const holds =
    report.problems.length === 0 &&
    report.identified.every((one) => one.matches.length > 0) &&
    report.verified.every((one) => one.same) &&
    report.cardRoms.every((one) => one.holds);
  return holds ? 0 : 1;
}

function asData({ identified, devices, ...report }: BurnReport): unknown {
  return {
    ...report,
    identified: identified.map(({ matches, ...one }) => ({
      ...one,
      matches: matches.map(({ image, ...m }) => ({ ...m, bytes: image?.length })),
    })),
    devices: devices.map(({ bytes, ...device }) => ({ ...device, size: bytes.length })),
  };
}

function* lines({
  identified,
  cardRoms,
  problems,
  device,
  devices,
  pinWork,
  unchecked,
  different,
  wrote,
  verified,
}: BurnReport): Generator<string> {
  const checked = (version: string) => {
    if (different.includes(version)) return "; not checked: not the recorded checksum";
    return unchecked.includes(version) ? "; no checksum recorded: not checked" : "";
  };
  for (const one of identified) yield `${one.name}: ${one.says}`;
  for (const one of cardRoms) yield `${one.file}: ${one.says}`;
  yield* problems;
  if (device !== undefined) yield device;
  for (const one of devices) {
    const lane = laneText(one);
    yield `Socket ${one.socket}${lane === "" ? "" : ` (${lane})`}: ${one.bytes.length} bytes, CRC-32 ${one.crc32}.`;
    for (const r of one.regions) {
      const at = r.offset.toString(16).toUpperCase().padStart(5, "0");
      yield `  bank ${r.bank} at 0x${at}: ${r.version}${r.repeats > 1 ? `, ${r.repeats} times over` : ""}${checked(r.version)}`;
    }
  }
  for (const { says, why } of pinWork) yield `${says} ${why}`;
  for (const file of wrote) yield `Wrote ${file}.`;
  for (const one of verified) yield `${one.file}: ${one.says}`;
}
