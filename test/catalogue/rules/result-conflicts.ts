// Cases of the rule result-conflicts.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "settings that are not told": (c) => {
      delete c.build.tbd!.cards[0]!.settings;
    },
    "evidence against a disproved conflict": (c) => {
      c.conflict.tx!.status = "disproved";
      delete c.conflict.tx!.settle;
      c.build.plain = {
        id: "plain",
        name: "Plain",
        board: "tb-1",
        revision: "A",
        modes: [{ id: "day", firmware: "R1" }],
        cards: [],
        result: { by: "Ann", date: "1991", outcome: "worked" },
      };
      c.conflict.tx!.evidence.push({ grade: "bench", says: "Seen.", build: "plain" });
    },
  },
  bad: {
    "a card that is not in the build": (c) => {
      c.card.other = { ...c.card.tc!, id: "other", name: "Other card", model: "other" };
      c.conflict.tx!.when.cards!.push({ card: "other" });
    },
    "a card that is set otherwise": (c) => {
      c.build.tbd!.cards[0]!.settings = { J1: "310" };
    },
    "less memory than the condition asks": (c) => {
      c.build.tbd!.memory = "256K";
    },
    "another board": (c) => {
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2" };
      c.firmware.tm!.boards.push({ board: "b2" });
      c.build.tbd!.board = "b2";
    },
    "evidence without a result": (c) => {
      c.build.plain = { id: "plain", name: "Plain", board: "tb-1", cards: [{ card: "tc" }] };
      c.conflict.tx!.evidence.push({ grade: "bench", says: "Seen.", build: "plain" });
    },
    "evidence from a build without the card": (c) => {
      c.build.plain = {
        id: "plain",
        name: "Plain",
        board: "tb-1",
        revision: "A",
        modes: [{ id: "day", firmware: "R1" }],
        cards: [],
        result: { by: "Ann", date: "1991", outcome: "worked" },
      };
      c.conflict.tx!.evidence.push({ grade: "bench", says: "Seen.", build: "plain" });
    },
  },
} satisfies RuleCases;
