// What lies where in the memory device, and which levels of the bank lines choose it.
import type { Bank, WiringPlan } from "../wiring/index.js";
import { address, sizeOf } from "./numbers.js";
import { dashes, drawing, join, line, nothing, rect, type Svg, shorten, text, tone, unitsFor, weight } from "./svg.js";

export type BankMapInput = Pick<WiringPlan, "banks" | "lines" | "modes"> & { readonly device: NonNullable<WiringPlan["device"]> };

/** Level of a bank line in a bank: high is open, low is a closed contact. */
function level(bit: number, bank: number): "H" | "L" {
  return (bank >> bit) & 1 ? "H" : "L";
}

export function bankMap(plan: BankMapInput, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const banks = [...plan.banks].sort((a, b) => a.offset - b.offset);
  const lines = [...plan.lines].sort((a, b) => b.bit - a.bit);
  const digits = Math.max(4, (plan.device.capacity - 1).toString(16).length);
  const left = 22 + digits * 8 + 10;
  // On a narrow page the modes stand inside the bank, under its version.
  const narrow = width < 520;
  const box = narrow ? width - left - lines.length * 30 - 10 : 236;
  const row = narrow ? 58 : 42;
  const step = narrow ? 30 : 36;
  const levelsX = left + box + (narrow ? 2 : 14);
  const modesX = narrow ? left + 8 : levelsX + lines.length * step + 16;
  const top = 34;
  const height = top + banks.length * row + 22;
  const y = (i: number) => top + i * row;
  const positionsOf = (bank: Bank) =>
    plan.modes
      .filter((m) => bank.modes.includes(m.id))
      // The position first: on a narrow page the end of the name may be cut.
      .map((m) => `${m.positions.length === 0 ? "" : `pos ${m.positions.join(", ")}: `}${m.name}`)
      .join("; ");
  const uses = (bank: Bank) => positionsOf(bank) || (bank.use === "safe" ? "safe filling" : "");

  const draw = (bank: Bank, i: number): Svg => {
    const repeats = Math.min(bank.repeats, 8);
    return join([
      text(left - 8, y(i) + 12, address(bank.offset, digits), { mono: true, small: true, anchor: "end" }),
      rect(left, y(i), box, row, {
        ...(bank.use === "safe" ? {} : tone),
        "stroke-dasharray": bank.use === "safe" ? dashes : undefined,
        rx: 0,
      }),
      // Each repeat of a small image begins at a short tick.
      ...Array.from({ length: repeats - 1 }, (_, k) => {
        const x = left + (box * (k + 1)) / repeats;
        return line(x, y(i) + row - 8, x, y(i) + row, { "stroke-width": weight.thin });
      }),
      text(left + 8, y(i) + 17, `bank ${bank.index}`, { small: true }),
      text(left + 62, y(i) + 17, bank.version, { mono: true, bold: true }),
      bank.repeats > 1 ? text(left + 62, y(i) + 31, `${bank.repeats} times over`, { small: true }) : nothing,
      text(left + box - 8, y(i) + 17, sizeOf(bank.size), { mono: true, small: true, anchor: "end" }),
      ...lines.map((l, k) => text(levelsX + k * step + 12, y(i) + 17, level(l.bit, bank.index), { mono: true, anchor: "middle" })),
      narrow
        ? text(modesX, y(i) + 48, shorten(uses(bank), box - 14, { small: true }), { small: true })
        : text(modesX, y(i) + 17, shorten(uses(bank), width - modesX - 4, { small: true }), { small: true }),
    ]);
  };

  const says = [
    `${plan.device.name}, ${sizeOf(plan.device.capacity)} bytes in ${banks.length} banks.`,
    ...banks.map((b) => {
      const levels = lines.map((l) => `${l.line} ${level(l.bit, b.index) === "H" ? "high" : "low"}`).join(", ");
      return `Bank ${b.index} at ${address(b.offset, digits)}: ${b.version}${b.repeats > 1 ? `, ${b.repeats} times over` : ""}, chosen by ${levels}; ${uses(b) || "no mode"}.`;
    }),
  ].join(" ");

  return drawing(
    { prefix, title: `Banks of the ${plan.device.family}`, says, width, height, class: "dw-banks" },
    text(left, 22, shorten(plan.device.name, box), {}),
    ...lines.map((l, k) => text(levelsX + k * step + 12, 22, l.line, { mono: true, small: true, anchor: "middle" })),
    narrow ? nothing : text(modesX, 22, "mode", { small: true }),
    ...banks.map(draw),
    text(left - 8, y(banks.length) + 12, address(plan.device.capacity, digits), { mono: true, small: true, anchor: "end" }),
    text(width - 4, y(banks.length) + 16, "H: open, L: contact closed", { small: true, anchor: "end" }),
  );
}
