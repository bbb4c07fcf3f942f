// A memory device seen from above, every pin numbered and named; pins that need work stand out, a lifted one does not reach the socket.
import type { BankLine, PinWork } from "../wiring/index.js";
import { drawing, join, line, nothing, path, rect, type Svg, shorten, text, tone, unitsFor, weight, widthOf } from "./svg.js";

export interface DevicePinsInput {
  readonly family: string;
  /** Socket it stands in: IC7. */
  readonly socket?: string;
  /** DIP32 */
  readonly package: string;
  readonly pins: readonly { readonly pin: number; readonly name: string }[];
  readonly lines: readonly Pick<BankLine, "pin" | "line" | "role">[];
  readonly work: readonly Pick<PinWork, "pin" | "does" | "to" | "signal">[];
  /** Pull-ups: from a pin to +5 V. */
  readonly resistors?: readonly { readonly pin: number; readonly name: string }[];
}

const pitch = 20;

const shortWork: Readonly<Record<PinWork["does"], string>> = {
  "lift-and-switch": "lift",
  "wire-in-place": "wire",
  "overhang-and-switch": "overhangs",
  "lift-and-tie": "lift, tie",
  tie: "tie",
  "lift-and-wire": "lift, wire",
  lift: "lift",
};

/** A resistor that leads outwards to the supply. */
function pullUp(x: number, y: number, side: number, name: string, wide: number): Svg {
  const from = side < 0 ? x - 6 - wide : x + 6;
  const end = x + side * (wide + 12);
  return join([
    line(x, y, x + side * 6, y),
    rect(from, y - 7, wide, 14, { rx: 0 }),
    text(from + wide / 2, y + 4, name, { small: true, anchor: "middle" }),
    line(x + side * (wide + 6), y, end, y),
    text(end + side * 3, y + 4, "+5\u2009V", { small: true, anchor: side < 0 ? "end" : "start" }),
  ]);
}

export function devicePins(device: DevicePinsInput, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const half = Math.ceil(device.pins.length / 2);
  const body = width < 480 ? 84 : 108;
  const left = (width - body) / 2;
  const top = 30;
  const height = top + half * pitch + 36;
  const at = (pin: number) =>
    pin <= half
      ? { x: left, y: top + 14 + (pin - 1) * pitch, side: -1 }
      : { x: left + body, y: top + 14 + (device.pins.length - pin) * pitch, side: 1 };

  const noteOf = (pin: number): string | undefined => {
    const work = device.work.find((w) => w.pin === pin);
    const bank = device.lines.find((l) => l.pin === pin);
    if (work) return `${shortWork[work.does]}${work.to === undefined || work.to === work.signal ? "" : `: ${work.to}`}`;
    return bank === undefined
      ? undefined
      : bank.role === "switched"
        ? "bank line"
        : `bank line, ${bank.role === "fixed-high" ? "high" : "low"}`;
  };

  const draw = (pin: { readonly pin: number; readonly name: string }): Svg => {
    const { x, y, side } = at(pin.pin);
    const work = device.work.find((w) => w.pin === pin.pin);
    const lifted = work !== undefined && work.does !== "tie" && work.does !== "wire-in-place";
    const note = noteOf(pin.pin);
    const marked = note !== undefined;
    const end = x + side * 20;
    const anchor = side < 0 ? "end" : "start";
    const style = { mono: true, bold: marked };
    const nameX = end + side * 6;
    const noteX = nameX + side * (widthOf(pin.name, style) + 10);
    const resistor = device.resistors?.find((r) => r.pin === pin.pin);
    const all = (side < 0 ? noteX : width - noteX) - 4;
    const wide = widthOf(resistor?.name ?? "", { small: true }) + 10;
    const noted = widthOf(note ?? "", { small: true });
    // Where there is no room to draw it, it is named.
    const drawn = resistor !== undefined && noted + wide + 32 + widthOf("+5 V", { small: true }) <= all;
    const told = resistor === undefined || drawn ? (note ?? "") : `${resistor.name}${note === undefined ? "" : `, ${note}`}`;
    const leg = lifted
      ? path(`M${x} ${y}h${side * 8}l${side * 8} -8`, { "stroke-width": weight.heavy })
      : line(x, y, end, y, { "stroke-width": marked ? weight.heavy : weight.line });
    return join([
      leg,
      text(x - side * 7, y + 4, String(pin.pin), { mono: true, small: true, anchor: side < 0 ? "start" : "end" }),
      text(nameX, y + 4, pin.name, { ...style, anchor }),
      told === "" ? nothing : text(noteX, y + 4, shorten(told, all, { small: true }), { small: true, anchor }),
      drawn ? pullUp(noteX + side * (noted + 6), y, side, resistor.name, wide) : nothing,
    ]);
  };

  const notch = `M${left + body / 2 - 9} ${top}a9 9 0 0 0 18 0`;
  const heading = `${device.family}${device.socket === undefined ? "" : ` in ${device.socket}`}, seen from above`;
  const says = `${heading}; ${device.package}, notch at the top. ${device.pins
    .map((p) => `Pin ${p.pin} ${p.name}${noteOf(p.pin) === undefined ? "" : `, ${noteOf(p.pin)}`}.`)
    .join(" ")}`;
  return drawing(
    { prefix, title: `Pins of the ${device.family}`, says, width, height, class: "dw-pins" },
    text(left + body / 2, 18, heading, { anchor: "middle" }),
    rect(left, top, body, half * pitch + 8, tone),
    path(notch),
    ...device.pins.map(draw),
  );
}
