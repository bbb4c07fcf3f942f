// Memory devices and sockets made from the fixture pin lists, and what a device makes of a socket.
import { readFileSync } from "node:fs";
import type { FirmwareSocket, MemoryDevice } from "../../../src/records/index.js";
import { type DeviceFit, fitDevice } from "../../../src/switching/contacts/device.js";
import type { Sockets } from "../../../src/switching/demand/sockets.js";

interface Listed {
  readonly package: string;
  readonly capacity: number;
  readonly organisations: readonly (readonly [number, number])[];
  readonly pins: string;
}

const read = (name: string): Readonly<Record<string, Listed>> => JSON.parse(readFileSync(new URL(name, import.meta.url), "utf8"));
const listed = { ...read("memory-pins.json"), ...read("kicad-derived/memory-pins.json") };

export const families: ReadonlyMap<string, MemoryDevice> = new Map(
  Object.entries(listed).map(([family, l]): [string, MemoryDevice] => [
    family,
    {
      id: family.toLowerCase(),
      name: family,
      type: "memory",
      family,
      technology: "uv-eprom",
      capacity: l.capacity,
      organisations: l.organisations.map(([words, width]) => ({ words, width })),
      package: l.package,
      pins: l.pins.split(" ").map((name, i) => ({ pin: i + 1, name })),
      grades_ns: [{ marking: "-10", access_ns: 100 }],
    },
  ]),
);

/** A socket made for one family whose window is one image. */
export function socketFor(family: string, width: number, image: number, upper: FirmwareSocket["upper_pins"] = undefined): Sockets {
  const socket: FirmwareSocket = {
    id: "U1",
    pins: families.get(family)!.pins.length,
    data_width: width,
    window: { base: 0, size: image },
    wired_for: family,
    ...(upper ? { upper_pins: upper } : {}),
    slowest_ns: 200,
  };
  return {
    sockets: [{ socket, lane: "whole" }],
    base: 0,
    window: image,
    share: image,
    width,
    rows: 1,
    totalWidth: width,
    slowest_ns: 200,
  };
}

export function fitOf(family: string, sockets: Sockets): DeviceFit {
  const fit = fitDevice(families.get(family)!, sockets, families);
  if (fit.kind !== "fits") throw new Error(fit.says);
  return fit.fit;
}

export function unfitText(family: string, sockets: Sockets): string {
  const fit = fitDevice(families.get(family)!, sockets, families);
  return fit.kind === "fits" ? "fits" : fit.says;
}
