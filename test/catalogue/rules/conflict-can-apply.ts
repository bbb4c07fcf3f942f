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
      c.build.tbd!.result!.conflicts = undefined;
    },
  },
  bad: {
    "positions that cannot stand together": (c) => {
      c.conflict.tx!.when.cards![0]!.settings = { J1: "310", J2: ["3"] };
      c.build.tbd!.result!.conflicts = undefined;
    },
    "no condition at all": (c) => {
      c.conflict.tx!.when = {};
    },
    "memory between two ends that do not meet": (c) => {
      c.conflict.tx!.when.memory_at_most = "128K";
      c.build.tbd!.result!.conflicts = undefined;
    },
    "more memory than any board takes": (c) => {
      c.conflict.tx!.when.memory_at_least = "1M";
      c.build.tbd!.result!.conflicts = undefined;
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
      c.card.far = { ...c.card.tc!, id: "far", name: "Far card", model: "far", bus: "other", needs: undefined, enable: undefined };
      c.conflict.tx!.when = { cards: [{ card: "tc" }, { card: "far" }] };
      c.build.tbd!.result!.conflicts = undefined;
    },
    "a card that goes into none of the boards": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
      c.conflict.tx!.when.boards = [{ board: "b2" }];
      c.build.tbd!.result!.conflicts = undefined;
    },
    "an edge the bus lacks": (c) => {
      c.conflict.tx!.when.cards![0]!.edge = "huge";
    },
    "firmware that does not run on the revisions named": (c) => {
      c.conflict.tx!.when.boards = [{ board: "tb-1", revisions: ["A"] }];
      c.build.tbd!.result!.conflicts = undefined;
    },
  },
} satisfies RuleCases;
