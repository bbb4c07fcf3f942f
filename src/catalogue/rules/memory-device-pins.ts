// A memory device has the pins its capacity asks for. An x16 device's address lines count words.
import { bytes, type MemoryDevice } from "../../records/index.js";
import { partsOfType } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const memoryDevicePins: Rule = {
  name: "memory-device-pins",
  says: "A memory device's pins are all there, and its address and data lines go with its capacity.",
  why: "Banks, wires and the position of an image all follow from the pins.",
  mend: "Write every pin as the data sheet has it; an x16 device has one address line less, since its lines count words.",
  scope: ["part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const device of partsOfType(catalogue, "memory")) {
      const at = (...path: (string | number)[]) => ref("part", device.id, ...path);
      for (const [i, o] of device.organisations.entries()) {
        if ((o.words * o.width) / 8 === bytes(device.capacity)) continue;
        yield {
          says: `${o.words} words of ${o.width} bits are ${(o.words * o.width) / 8} bytes, not the capacity.`,
          at: at("organisations", i),
          actual: `${o.words} x ${o.width}`,
          related: [{ says: "The capacity.", at: at("capacity") }],
          hint: "Correct the one or the other.",
        };
      }
      // Names cannot be counted while pins are missing: one mistake, one finding.
      const numbered = [...numbering(device)];
      yield* numbered;
      if (numbered.length > 0) continue;
      const widest = device.organisations.reduce((a, b) => (b.width > a.width ? b : a));
      const names = new Set(device.pins.flatMap((p) => p.name.split("/")));
      const address = [...names].filter((n) => /^A\d+$/.test(n)).length;
      const data = [...names].filter((n) => /^D\d+$/.test(n)).length;
      const lines = Math.log2(widest.words);
      // Both counts go wrong together when the wrong width is given; the data lines show which it is.
      if (address !== lines && data === widest.width) {
        yield {
          says: `${widest.words} words take ${lines} address lines, but ${address} pins are named A0, A1 and so on.`,
          at: at("pins"),
          expected: `A0 to A${lines - 1}`,
          actual: `${address} lines`,
          hint: "Compare the pins with the data sheet; a pin that is no address line in this device has another name.",
        };
      }
      if (data !== widest.width) {
        yield {
          says: `${widest.width} data lines are needed, but ${data} pins are named D0, D1 and so on.`,
          at: at("pins"),
          hint: "Compare the pins with the data sheet.",
        };
      }
      const lacking = [
        ["VCC", "VDD"],
        ["GND", "VSS"],
      ].filter((either) => !either.some((n) => names.has(n)));
      for (const either of lacking)
        yield {
          says: `No pin is named ${either[0]}.`,
          at: at("pins"),
          hint: "Supply pins are pins too: without them nothing can be wired.",
        };
      for (const [i, hold] of (device.read_pins ?? []).entries()) {
        if (!device.pins.some((p) => p.pin === hold.pin))
          yield {
            says: `There is no pin ${hold.pin} to hold ${hold.at}.`,
            at: at("read_pins", i, "pin"),
            related: [{ says: "The pins.", at: at("pins") }],
            hint: "Correct the number.",
          };
      }
    }
  },
};

/** Pins are numbered 1 to the number the package's name ends in. */
function* numbering(device: MemoryDevice): Iterable<Draft> {
  const count = Number(/(\d+)$/.exec(device.package)?.[1] ?? Number.NaN);
  if (Number.isNaN(count)) return;
  const given = new Set(device.pins.map((p) => p.pin));
  const missing = Array.from({ length: count }, (_, i) => i + 1).filter((n) => !given.has(n));
  const beyond = [...given].filter((n) => n > count);
  if (missing.length === 0 && beyond.length === 0) return;
  const says =
    missing.length > 0
      ? `Pin ${missing.join(", ")} of ${device.package} is not listed.`
      : `${device.package} has no pin ${beyond.join(", ")}.`;
  yield {
    says,
    at: ref("part", device.id, "pins"),
    related: [{ says: "The package.", at: ref("part", device.id, "package") }],
    hint: "List every pin, NC where nothing is connected.",
  };
}
