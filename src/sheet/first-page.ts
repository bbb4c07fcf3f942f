// What stands on the first page of the sheet beside switch and banks: the order of the work, what must be done besides, and the cautions
// that bear on this work most.
import { crc32Joined } from "../images/index.js";
import { bytes, type Firmware, known, unknown } from "../records/index.js";
import type { Caution, WiringPlan } from "../wiring/index.js";

/** Most cautions on the first page; all of them stand further back. */
const mostCautions = 3;

/** In about ten lines, each naming the part of the sheet that has the rest. */
export function orderOfWork(plan: WiringPlan, jumpers: number): string[] {
  const { device, pinWork, wires, benchTest, connectors } = plan;
  const toGet = plan.parts.filter((p) => p.part !== undefined && !p.atHand).length;
  const steps = (wanted: (step: WiringPlan["benchTest"][number]) => boolean) => {
    const numbers = benchTest.filter(wanted).map((s) => s.number);
    const [first, last] = [numbers[0], numbers.at(-1)];
    return first === undefined ? "" : first === last ? ` (bench test, step ${first})` : ` (bench test, steps ${first} to ${last})`;
  };
  const inPanel = ["the switch", ...connectors.filter((c) => c.panel).map((c) => c.id)].join(" and ");
  return [
    `Lay out the parts${toGet > 0 ? `; ${toGet} line${toGet === 1 ? " is" : "s are"} still to get` : ""}. Measure the bare switch before a wire is on it.`,
    ...(device
      ? [`Burn ${device.sockets.length > 1 ? "the devices" : device.name} by the table of banks, read back, compare the checksum, label.`]
      : []),
    `Pull the mains plug, open the case, take out what the bench test names${steps((s) => s.stage === "power-off")}.`,
    ...(jumpers > 0 ? ["Set slots and settings."] : []),
    ...(pinWork.length > 0
      ? [`Do the work on ${pinWork.length} pin${pinWork.length === 1 ? "" : "s"}${plan.pullUps.length > 0 ? ", fit the resistors" : ""}.`]
      : []),
    `Drill the panel, fit ${inPanel}.`,
    `Lay wires 1 to ${wires.length}; the same label on both ends of each.`,
    `Measure everything without power${steps((s) => s.stage === "continuity")}. Go on only when all of it is right.`,
    `Power on without ${device ? "device and " : ""}switched cards${steps((s) => s.stage === "no-cards")}.`,
    ...(device ? [`Power off, fit the device, start at every position${steps((s) => s.stage === "device")}.`] : []),
    `Power off, fit the cards, start at every position, an hour in each${steps((s) => s.stage === "cards" || s.stage === "soak")}.`,
  ];
}

/** Those that bear on the work of any switched machine first, then on what is special about this one. */
export function cautionsOfToday(plan: WiringPlan): Caution[] {
  const moving = plan.proof.cases.some((c) => c.kind === "transit" && !c.safe);
  const wanted = ["mains-inside", ...(moving ? ["power-off-to-switch"] : []), "polarity-first", "esd", "solder"];
  const found = wanted.flatMap((id) => plan.cautions.find((c) => c.id === id) ?? []);
  return found.slice(0, mostCautions);
}

/** Of the whole device, where one device holds whole images of which each has a checksum on record. */
export function deviceChecksum(plan: WiringPlan, family: Firmware | undefined): string | undefined {
  const [socket, ...others] = plan.device?.sockets ?? [];
  if (socket?.lane !== "whole" || socket.part !== undefined || others.length > 0) return undefined;
  const parts = [...plan.banks]
    .sort((a, b) => a.offset - b.offset)
    .map((bank) => {
      const image = family?.versions.find((v) => v.id === bank.version)?.image;
      const [crc, size] = [known(image?.crc32), known(image?.size)];
      if (crc === unknown || crc === undefined || size === unknown || size === undefined) return undefined;
      const length = bytes(size);
      if (length * bank.repeats !== bank.size) return undefined;
      return Array.from({ length: bank.repeats }, () => ({ crc32: crc, size: length }));
    });
  return parts.includes(undefined) ? undefined : crc32Joined(parts.flatMap((p) => p ?? []));
}
