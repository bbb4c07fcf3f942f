// Cases of the rule enable-points.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a change-over": (c) => {
      c.card.tc!.enable = {
        by: "contacts",
        sense: "change-over",
        points: [
          { id: "1", role: "common" },
          { id: "2", role: "on" },
          { id: "3", role: "off" },
          { id: "4", role: "ground" },
        ],
        releases: ["io"],
      };
    },
    "one contact to ground": (c) => {
      c.card.tc!.enable!.points = [
        { id: "J9-1", role: "a" },
        { id: "J9-2", role: "ground" },
      ];
    },
    "a setting": (c) => {
      c.card.tc!.enable = { by: "setting", setting: "J1", off: "310", releases: ["io"] };
    },
  },
  bad: {
    "a change-over with two points": (c) => {
      c.card.tc!.enable!.sense = "change-over";
    },
    "one end of a contact and no ground": (c) => {
      c.card.tc!.enable!.points = [{ id: "J9-1", role: "a" }];
    },
    "contacts without points": (c) => {
      delete c.card.tc!.enable!.points;
    },
    "contacts without a sense": (c) => {
      delete c.card.tc!.enable!.sense;
    },
    "a setting that is not named": (c) => {
      c.card.tc!.enable = { by: "setting", releases: ["io"] };
    },
    "a setting the card lacks": (c) => {
      c.card.tc!.enable = { by: "setting", setting: "J7", off: "310", releases: ["io"] };
    },
    "a setting without its off position": (c) => {
      c.card.tc!.enable = { by: "setting", setting: "J1", releases: ["io"] };
    },
    "an off position that is not there": (c) => {
      c.card.tc!.enable = { by: "setting", setting: "J1", off: "311", releases: ["io"] };
    },
  },
} satisfies RuleCases;
