// Wires that serve one pin of a device and no contact of the switch: a lifted pin to where its socket has what it needs, and the two
// ends of every resistor. They are numbered, measured and break like all others.
import type { Called, PinWork } from "../../switching/index.js";
import type { End, PullUp } from "../types.js";
import { type BareWire, endText } from "./wires.js";

export interface PinWire extends BareWire {
  /** What is without it: a device in this socket, or this resistor. */
  readonly serves: { readonly socket: string } | { readonly resistor: string };
}

export function pinWires(pinWork: readonly PinWork[], pullUps: readonly PullUp[], called: Called): PinWire[] {
  const wire = (net: string, label: string, from: End, to: End, serves: PinWire["serves"]): PinWire => ({
    number: 0,
    net,
    label,
    from,
    to,
    fromText: endText(from, called),
    toText: endText(to, called),
    run: "board",
    serves,
  });
  const pins = pinWork.flatMap(({ socket, pin, signal, reaches, lifted }): PinWire[] => {
    if (reaches === undefined) return [];
    const from: End = { at: "device", socket, pin, lifted: lifted === true };
    const to: End = { at: "socket", socket, pin: reaches };
    return [wire(`pin:${socket}:${pin}`, `${socket} ${signal}`, from, to, { socket })];
  });
  const ends = pullUps.flatMap(({ id, from, to }): PinWire[] => {
    const body: End = { at: "resistor", resistor: id };
    return [wire(`resistor:${id}`, id, from, body, { resistor: id }), wire(`resistor:${id}`, id, body, to, { resistor: id })];
  });
  return [...pins, ...ends];
}
