// Cases of the rule switch-contacts.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a position that joins nothing": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") Object.assign(s, { positions: ["up", "off", "down"], closes: { ...s.closes, off: [] } });
    },
  },
  bad: {
    "a terminal it lacks": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") s.closes.down!.push(["C", "D"]);
    },
    "a position it lacks": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") s.closes.centre = [];
    },
    "a position nothing is said of": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") s.positions.push("middle");
    },
    "a terminal that is never joined": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") s.terminals.push("D");
    },
    "a terminal joined to itself": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") s.closes.up!.push(["A", "A"]);
    },
    "a switch that switches nothing": (c) => {
      const s = c.part["t-switch"]!;
      if (s.type === "switch") Object.assign(s, { terminals: ["C", "A"], closes: { up: [["C", "A"]], down: [["C", "A"]] } });
    },
  },
} satisfies RuleCases;
