// How a memory device stands in a socket: where each pin lands, what it meets there, what has to be lifted, wired or tied,
// and which of its upper address lines choose the bank. Which of them are switched is chosen in design.ts.
import { bytes, type FirmwareSocket, itemAt, type MemoryDevice } from "../../records/index.js";
import type { Sockets } from "../demand/sockets.js";
import { isPowerOfTwo } from "../demand/sockets.js";
import type { BankLine, PinWork } from "../types.js";

/** One bank line over all sockets of the board. */
export interface LineFit {
  readonly line: string;
  readonly bit: number;
  readonly pin: number;
  readonly at: readonly LineAt[];
  /** Level it has when nothing is done to it, when every socket agrees on one. */
  readonly rest: "high" | "low" | undefined;
  /** Pins to lift (or reach beside the socket) when a contact is to switch it. */
  readonly liftsToSwitch: number;
  /** Pins to work on when it is to stay at one level. */
  readonly worksToFix: number;
}

export interface LineAt {
  readonly socket: string;
  readonly socketPin?: number | undefined;
  readonly carries: BankLine["carries"];
  readonly detail: string;
}

export interface DeviceFit {
  readonly device: MemoryDevice;
  readonly words: number;
  readonly width: number;
  readonly capacity: number;
  /** Banks of the share of the window each device holds. */
  readonly banks: number;
  readonly lines: readonly LineFit[];
  /** Work that has to be done whatever is switched. */
  readonly pinWork: readonly PinWork[];
  readonly grade: { readonly marking: string; readonly access_ns: number } | "unknown";
  /** Of the first socket, not of the device. */
  readonly groundPin: number;
}

export type Fit = { readonly kind: "fits"; readonly fit: DeviceFit } | { readonly kind: "unfit"; readonly says: string };

/** More crossed pins than this and a hand-wired device is a trap: an adapter board is the way. */
const mostRewired = 4;

export function fitDevice(device: MemoryDevice, at: Sockets, families: ReadonlyMap<string, MemoryDevice>): Fit {
  const unfit = (says: string): Fit => ({ kind: "unfit", says: `${device.name}: ${says}` });
  const organisation = device.organisations.find((o) => o.width === at.width);
  if (!organisation) return unfit(`it has no ${at.width}-bit organisation.`);
  if (!device.package.startsWith("DIP")) return unfit(`a ${device.package} package does not go into the socket without an adapter board.`);
  const capacity = bytes(device.capacity);
  if (!isPowerOfTwo(capacity)) return unfit("its capacity is not a power of two.");
  if (capacity < at.share) return unfit("it is smaller than the window.");
  const grade = slowestGrade(device, at.slowest_ns);
  if (grade === undefined) return unfit(`no grade reaches ${at.slowest_ns} ns.`);

  const inside = Math.log2(at.share / (at.width / 8));
  const lineNames = addressLines(device, at.width);
  const bankNames = lineNames.slice(inside);
  if (2 ** lineNames.length * (at.width / 8) !== capacity) return unfit("its pin list does not name every address line.");

  const work: PinWork[] = [];
  const lines = new Map<string, LineAt[]>();
  for (const { socket } of at.sockets) {
    const wired = families.get(socket.wired_for);
    if (!wired) return unfit(`the pin order of ${socket.wired_for}, which ${socket.id} is wired for, is in no part record.`);
    const offset = (socket.pins - device.pins.length) / 2;
    if (!Number.isInteger(offset) || Math.abs(offset) > 2)
      return unfit(`${device.pins.length} pins do not go into the ${socket.pins} of ${socket.id}.`);
    let rewired = 0;
    for (const pin of device.pins) {
      const meets = provided(socket, wired, pin.pin + offset, at, inside);
      const signal = canonical(pin.name, at.width, device);
      if (bankNames.includes(signal)) {
        const list = lines.get(signal) ?? [];
        lines.set(signal, list);
        list.push({ socket: socket.id, socketPin: meets.pin, carries: meets.carries, detail: meets.detail });
        continue;
      }
      if (mustStandFree(signal, meets)) {
        work.push(lift(device, pin.pin, pin.name, meets, socket));
        continue;
      }
      const want = needOf(signal, device, pin.pin, at.width);
      if (want === undefined || satisfies(want, meets)) continue;
      const step = workFor({ device, pin: pin.pin, name: pin.name, need: want, meets, socket, wired, at, inside });
      if (!step) return unfit(`pin ${pin.pin} (${pin.name}) finds no ${needText(want)} in ${socket.id}.`);
      rewired += 1;
      work.push(step);
    }
    if (rewired > mostRewired)
      return unfit(`${rewired} of its pins would have to be crossed in ${socket.id}; that wants an adapter board.`);
  }
  const fits = bankNames.map((line, bit): LineFit => lineFit(line, bit, pinOf(device, line, at.width), lines.get(line) ?? [], at));
  if (!device.pins.some((p) => isGround(p.name))) return unfit("its pin list names no ground pin.");
  const ground = groundOf(itemAt(at.sockets, 0).socket, families);
  if (ground === undefined) return unfit(`the pin order of ${itemAt(at.sockets, 0).socket.wired_for} names no ground pin.`);
  return {
    kind: "fits",
    fit: {
      device,
      words: organisation.words,
      width: at.width,
      capacity,
      banks: capacity / at.share,
      lines: fits,
      pinWork: work,
      grade,
      groundPin: ground,
    },
  };
}

function groundOf(socket: FirmwareSocket, families: ReadonlyMap<string, MemoryDevice>): number | undefined {
  const wired = families.get(socket.wired_for);
  const found = wired?.pins.find((p) => isGround(p.name) && !socket.upper_pins?.some((u) => u.pin === p.pin && u.carries !== "low"));
  return wired && found && found.pin + (socket.pins - wired.pins.length) / 2;
}

function lineFit(line: string, bit: number, pin: number, at: readonly LineAt[], sockets: Sockets): LineFit {
  const rests = at.map((a) => restLevel(a, sockets));
  const rest = rests.every((r) => r === rests[0]) ? rests[0] : undefined;
  return {
    line,
    bit,
    pin,
    at,
    rest,
    liftsToSwitch: at.filter((a) => a.carries !== "open").length,
    worksToFix: rest === undefined ? at.length : 0,
  };
}

function restLevel(at: LineAt, sockets: Sockets): "high" | "low" | undefined {
  if (at.carries === "high" || at.carries === "supply") return "high";
  if (at.carries === "low") return "low";
  if (at.carries === "driven") {
    // A board line above the window keeps one level while the window is read: the bit of the window's base.
    const number = /^A(\d+)$/.exec(at.detail)?.[1];
    if (number === undefined || 2 ** Number(number) < sockets.window) return undefined;
    return Math.floor(sockets.base / 2 ** Number(number)) % 2 === 1 ? "high" : "low";
  }
  return undefined;
}

function slowestGrade(device: MemoryDevice, limit: number | "unknown"): DeviceFit["grade"] | undefined {
  if (limit === "unknown") return "unknown";
  return [...device.grades_ns].filter((g) => g.access_ns <= limit).sort((a, b) => b.access_ns - a.access_ns)[0];
}

/** Address lines from the lowest: A0.., with A-1 first when a word-wide device is read by bytes. */
export function addressLines(device: MemoryDevice, width: number): string[] {
  const names = device.pins.map((p) => canonical(p.name, width, device)).filter((n) => /^A-?\d+$/.test(n));
  return [...new Set(names)].sort((a, b) => Number(a.slice(1)) - Number(b.slice(1)));
}

function pinOf(device: MemoryDevice, line: string, width: number): number {
  return device.pins.find((p) => canonical(p.name, width, device) === line)?.pin ?? 0;
}

/** One name for each signal, whatever the data sheet writes. */
function canonical(name: string, width: number, device: MemoryDevice): string {
  const plain = name.toUpperCase().replace(/\s/g, "");
  if (/BUSY|READY|RDY|RY\/*BY|R\/+B/.test(plain)) return "OUT";
  const wide = Math.max(...device.organisations.map((o) => o.width));
  if (wide === 16 && width === 8) {
    if (/^D15|^A-1|A-1$/.test(plain)) return "A-1";
    if (/^D(8|9|1[0-4])$/.test(plain)) return "NC";
  }
  if (/^D15.?A-1$/.test(plain)) return "D15";
  if (/BYTE/.test(plain)) return "BYTE";
  if (/(OE|\/G\b)/.test(plain)) return "OE";
  if (/(CE|CS|\/E\b)/.test(plain)) return "CE";
  if (/PGM/.test(plain)) return "PGM";
  if (/WE|\/W\b/.test(plain)) return "WE";
  if (/^VPP/.test(plain)) return "VPP";
  // Beside a VCC, VDD is a supply of its own: +12 V in the old devices with three.
  if (plain === "VDD" && device.pins.some((p) => /^VCC$/i.test(p.name))) return "VDD";
  if (/^(VCC|VDD|\+5V?)$/.test(plain)) return "VCC";
  if (isGround(plain)) return "GND";
  if (/^(NC|N\.C\.|DU|-)$/.test(plain)) return "NC";
  return plain;
}

function isGround(name: string): boolean {
  return /^(GND|VSS|0V)$/i.test(name);
}

/** A supply other than +5 V, by the name of the pin. */
function isRail(signal: string): boolean {
  return /^(VDD|VBB|VEE|[+-][0-9]+V?)$/.test(signal);
}

/** An output, or a pin that goes nowhere, over something that drives it or is no logic level. */
function mustStandFree(signal: string, { carries }: Meets): boolean {
  if (signal === "OUT") return carries !== "open" && carries !== "overhangs" && carries !== "unknown";
  return signal === "NC" && carries === "rail";
}

function lift(device: MemoryDevice, pin: number, signal: string, meets: Meets, socket: FirmwareSocket): PinWork {
  return {
    socket: socket.id,
    pin,
    signal,
    does: "lift",
    says: `Lift pin ${pin} (${signal}) of ${device.family} in ${socket.id} and leave it free.`,
    why: `Socket pin ${meets.pin ?? pin} carries ${carriesText(meets)}.`,
  };
}

type Need = "high" | "low" | "supply" | "ground" | { readonly rail: string } | { readonly signal: string };

function needText(need: Need): string {
  if (typeof need === "string") return need;
  return "rail" in need ? `rail ${need.rail}` : `signal ${need.signal}`;
}

function needOf(signal: string, device: MemoryDevice, pin: number, width: number): Need | undefined {
  if (signal === "BYTE") return width === 16 ? "high" : "low";
  const read = device.read_pins?.find((r) => r.pin === pin);
  if (read) return read.at;
  if (signal === "VCC") return "supply";
  if (signal === "GND") return "ground";
  if (signal === "VPP" || signal === "PGM" || signal === "WE") return "high";
  if (signal === "NC" || signal === "OUT") return undefined;
  if (isRail(signal)) return { rail: signal };
  return { signal };
}

interface Meets {
  readonly pin?: number;
  readonly carries: BankLine["carries"];
  /** Signal of the family the socket is wired for, or the line the record names. */
  readonly signal: string;
  readonly detail: string;
  /** It is the line of the board by another number than the one that must come to this pin. */
  readonly otherLine?: boolean;
}

function provided(socket: FirmwareSocket, wired: MemoryDevice, pin: number, at: Sockets, inside: number): Meets {
  if (pin < 1 || pin > socket.pins) return { carries: "overhangs", signal: "", detail: "" };
  const offset = (socket.pins - wired.pins.length) / 2;
  const name = wired.pins.find((p) => p.pin + offset === pin)?.name;
  const signal = name === undefined ? "" : canonical(name, at.width, wired);
  const listed = socket.upper_pins?.find((u) => u.pin === pin);
  const line = addressLines(wired, at.width).indexOf(signal);
  if (listed) {
    const told = /^A(\d+)$/.exec(listed.line ?? "")?.[1];
    const otherLine = line >= 0 && line < inside && told !== undefined && Number(told) !== line + Math.log2(at.totalWidth / 8);
    return { pin, carries: listed.carries, signal, detail: listed.line ?? "", otherLine };
  }
  if (signal === "VCC") return { pin, carries: "supply", signal, detail: "" };
  if (signal === "GND") return { pin, carries: "low", signal, detail: "" };
  if (signal === "VPP" || signal === "PGM" || signal === "WE") return { pin, carries: "high", signal, detail: "" };
  if (signal === "BYTE") return { pin, carries: at.width === 16 ? "high" : "low", signal, detail: "" };
  if (signal === "" || signal === "NC" || signal === "OUT") return { pin, carries: "unknown", signal, detail: "" };
  if (isRail(signal)) return { pin, carries: "rail", signal, detail: signal };
  // The window asks for no line above it: what the board has there nobody has said.
  if (line >= inside) return { pin, carries: "unknown", signal, detail: "" };
  return { pin, carries: "driven", signal, detail: "" };
}

function satisfies(need: Need, meets: Meets): boolean {
  switch (need) {
    case "high":
      return meets.carries === "high" || meets.carries === "supply";
    case "low":
      return meets.carries === "low";
    case "supply":
      return meets.carries === "supply";
    case "ground":
      return meets.carries === "low" && meets.signal === "GND";
    default: {
      if ("rail" in need) return meets.carries === "rail" && meets.signal === need.rail;
      const { signal } = need;
      // A select or output-enable held low for good is how some boards wire a single device.
      if ((signal === "OE" || signal === "CE") && meets.signal === signal) return meets.carries === "driven" || meets.carries === "low";
      return meets.signal === signal && meets.carries === "driven" && !meets.otherLine;
    }
  }
}

interface Unsatisfied {
  readonly device: MemoryDevice;
  readonly pin: number;
  readonly name: string;
  readonly need: Need;
  readonly meets: Meets;
  readonly socket: FirmwareSocket;
  readonly wired: MemoryDevice;
  readonly at: Sockets;
  readonly inside: number;
}

function workFor({ device, pin, name, need, meets, socket, wired, at, inside }: Unsatisfied): PinWork | undefined {
  const offset = (socket.pins - wired.pins.length) / 2;
  const find = (signal: string) => {
    const found = wired.pins.find((p) => canonical(p.name, socket.data_width, wired) === signal);
    return found && found.pin + offset;
  };
  const there = meets.pin === undefined ? "it hangs out beyond the socket" : `socket pin ${meets.pin} carries ${carriesText(meets)}`;
  const make = (reaches: number, carried: string, why: string): PinWork => ({
    socket: socket.id,
    pin,
    signal: name,
    does: "lift-and-wire",
    to: `socket pin ${reaches} (${carried})`,
    reaches,
    lifted: meets.pin !== undefined,
    says: `${meets.pin === undefined ? "Wire" : "Lift"} pin ${pin} (${name}) of ${device.family} in ${socket.id}${meets.pin === undefined ? "" : " and wire it"} to socket pin ${reaches} (${carried}).`,
    why: `${why}; ${there}.`,
  });
  if (need === "high" || need === "supply") {
    const supply = find("VCC");
    return supply === undefined ? undefined : make(supply, "+5 V", `${name} must be high for reading`);
  }
  if (need === "low" || need === "ground") {
    const ground = find("GND");
    return ground === undefined ? undefined : make(ground, "ground", `${name} must be low for reading`);
  }
  // No wire brings another supply to a pin: a wrong one would be the end of the device.
  if ("rail" in need) return undefined;
  const { signal } = need;
  const source = find(signal);
  if (source === undefined) return undefined;
  if (!satisfies(need, provided(socket, wired, source, at, inside))) return undefined;
  return make(source, signal, `${name} needs the board's ${signal}`);
}

function carriesText(meets: Meets): string {
  if (meets.carries === "driven") return meets.detail || meets.signal;
  if (meets.carries === "rail") return `the supply ${meets.detail || meets.signal}, not +5 V`;
  if (meets.carries === "supply") return "+5 V";
  if (meets.carries === "unknown") return "nothing the records name";
  return meets.carries === "open" ? "nothing" : `a fixed ${meets.carries}`;
}
