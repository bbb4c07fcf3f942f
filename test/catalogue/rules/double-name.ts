// Cases of the rule double-name.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "one name on two revisions": (c) => {
      const [slot] = c.board["tb-1"]!.slots;
      c.board["tb-1"]!.slots.splice(0, 1, { ...slot!, revisions: ["A"] }, { ...slot!, revisions: ["B"], longest_mm: 200 });
    },
  },
  bad: {
    "two slots of one name": (c) => {
      c.board["tb-1"]!.slots[1]!.id = "S1";
      delete c.board["tb-1"]!.slots[1]!.revisions;
      c.board["tb-1"]!.chains = [{ chain: "G", slots: ["S1"], empty: "breaks" }];
    },
    "another name that is a line itself": (c) => {
      c.bus.tb!.interrupts[1]!.also = ["I9"];
    },
    "two positions of one name": (c) => {
      c.card.tc!.settings![0]!.positions.push({ id: "310" });
    },
    "two copies of a card without names": (c) => {
      c.build.tbd!.cards = [
        { card: "tc", slot: "S1" },
        { card: "tc", slot: "S2" },
      ];
      c.build.tbd!.modes![0]!.cards = ["tc"];
    },
    "a result told twice": (c) => {
      c.build.tbd!.result!.modes!.push({ mode: "day", outcome: "partly" });
    },
    "two pins of one number": (c) => {
      const device = c.part["t-27c256"]!;
      if (device.type === "memory") device.pins.push({ pin: 28, name: "NC" });
    },
  },
} satisfies RuleCases;
