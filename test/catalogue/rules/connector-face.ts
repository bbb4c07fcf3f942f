// Cases of the rule connector-face.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "two halves that mate": (c) => {
      c.part["t-socket"] = { ...c.part["t-plug"]!, id: "t-socket", name: "T-socket part", half: "socket", mates: "t-plug" } as never;
    },
    "the other half in words": (c) => {
      Object.assign(c.part["t-plug"]!, { mates: "the socket on the lead" });
    },
  },
  bad: {
    "a contact that is not shown": (c) => {
      const p = c.part["t-plug"]!;
      if (p.type === "connector") p.contacts = 3;
    },
    "two contacts in one place": (c) => {
      const p = c.part["t-plug"]!;
      if (p.type === "connector") p.face[1]!.x_mm = -1.4;
    },
    "a half that is not there": (c) => {
      Object.assign(c.part["t-plug"]!, { mates: "t-socket" });
    },
    "the same half": (c) => {
      c.part["t-socket"] = { ...c.part["t-plug"]!, id: "t-socket", name: "T-socket part", mates: "t-plug" } as never;
    },
    "what is no connector": (c) => {
      Object.assign(c.part["t-plug"]!, { mates: "t-cable" });
    },
  },
} satisfies RuleCases;
