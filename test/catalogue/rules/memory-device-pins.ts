// Cases of the rule memory-device-pins.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a name with two functions": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.pins[26]!.name = "A14/PGM";
    },
  },
  bad: {
    "a pin that is not listed": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.pins.pop();
    },
    "an address line too few": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.pins[26]!.name = "NC";
    },
    "organisation and capacity": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.capacity = "64K";
    },
    "words of an x16 device with the pins of an x8": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.organisations.push({ words: 16384, width: 16 });
    },
    "no supply pin": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.pins[27]!.name = "NC";
    },
    "a pin to hold that is not there": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.read_pins = [{ pin: 30, at: "high" }];
    },
  },
} satisfies RuleCases;
