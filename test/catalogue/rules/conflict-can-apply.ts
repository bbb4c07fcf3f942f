// Cases of the rule conflict-can-apply.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a slot of the board": (c) => {
      c.conflict.tx!.when.cards![0]!.slots = ["S2"];
    },
    neighbours: (c) => {
      c.card.other = { ...c.card.tc!, id: "other", name: "Other card", model: "other" };
      c.conflict.tx!.when = { cards: [{ card: "tc" }, { card: "other" }], adjacent: true };
      delete c.build.tbd!.result!.conflicts;
    },
  },
  bad: {
    "positions that cannot stand together": (c) => {
      c.conflict.tx!.when.cards![0]!.settings = { J1: "310", J2: ["3"] };
      delete c.build.tbd!.result!.conflicts;
    },
    "no condition at all": (c) => {
      c.conflict.tx!.when = {};
    },
    "memory between two ends that do not meet": (c) => {
      c.conflict.tx!.when.memory_at_most = "128K";
      delete c.build.tbd!.result!.conflicts;
    },
    "more memory than any board takes": (c) => {
      c.conflict.tx!.when.memory_at_least = "1M";
      delete c.build.tbd!.result!.conflicts;
    },
    "neighbours of one card": (c) => {
      c.conflict.tx!.when.adjacent = true;
    },
    "a slot no board has": (c) => {
      c.conflict.tx!.when.cards![0]!.slots = ["S2", "S5"];
    },
    "cards of two buses": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
      const { needs: _n, enable: _e, ...tc } = c.card.tc!;
      c.card.far = { ...tc, id: "far", name: "Far card", model: "far", bus: "other" };
      c.conflict.tx!.when = { cards: [{ card: "tc" }, { card: "far" }] };
      delete c.build.tbd!.result!.conflicts;
    },
    "a card that goes into none of the boards": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
      c.conflict.tx!.when.boards = [{ board: "b2" }];
      delete c.build.tbd!.result!.conflicts;
    },
    "an edge the bus lacks": (c) => {
      c.conflict.tx!.when.cards![0]!.edge = "huge";
    },
    "firmware that does not run on the revisions named": (c) => {
      c.conflict.tx!.when.boards = [{ board: "tb-1", revisions: ["A"] }];
      delete c.build.tbd!.result!.conflicts;
    },
  },
} satisfies RuleCases;
