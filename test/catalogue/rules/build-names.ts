// Cases of the rule build-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a release of another family in a drawer": (c) => {
      const family = { ...c.firmware.tm!, id: "tm2", name: "Tm2 firmware", versions: [{ ...c.firmware.tm!.versions[0]!, id: "Q9" }] };
      c.firmware.tm2 = family;
      c.board["tb-1"]!.firmware = [...c.board["tb-1"]!.firmware, "tm2"];
      c.build.tbd!.at_hand!.firmware = ["Q9"];
    },
    "a question that leaves all open": (c) => {
      c.build.tbd = { id: "tbd", name: "Open", board: "tb-1", cards: [] };
    },
    "a card's id that no copy is called by: every copy of it": (c) => {
      c.build.tbd!.modes![0]!.cards = ["tc"];
    },
    "a mode with no card on": (c) => {
      c.build.tbd!.modes![0]!.cards = [];
    },
  },
  bad: {
    "a board revision": (c) => {
      c.build.tbd!.revision = "C";
    },
    "one of several board revisions": (c) => {
      c.build.tbd!.revision = ["A", "Z"];
      delete c.build.tbd!.result;
    },
    "a slot": (c) => {
      c.build.tbd!.cards[0]!.slot = "S11";
    },
    "a card revision": (c) => {
      c.build.tbd!.cards[0]!.revision = "2";
    },
    "a firmware version": (c) => {
      c.build.tbd!.modes![0]!.firmware = "R1B";
      delete c.build.tbd!.result!.conflicts;
    },
    "a firmware version at hand": (c) => {
      c.build.tbd!.at_hand!.firmware = ["R7"];
    },
    "an amount of memory": (c) => {
      c.build.tbd!.stands!.memory = "384K";
    },
    "a copy of a card": (c) => {
      c.build.tbd!.modes![0]!.cards = ["tc3"];
    },
    "a setting the card lacks": (c) => {
      c.build.tbd!.cards[0]!.settings = { J3: "300" };
    },
    "a position the setting lacks": (c) => {
      c.build.tbd!.cards[0]!.settings = { J1: "301" };
      delete c.build.tbd!.result!.conflicts;
    },
    "a mode a result speaks of": (c) => {
      c.build.tbd!.modes![0]!.id = "night";
      c.build.tbd!.modes!.length = 1;
    },
    "the machine as it stands": (c) => {
      c.build.tbd!.stands = { revision: "Q", firmware: "R7", cards: [{ card: "tc", slot: "S11", revision: "9", settings: { J1: "999" } }] };
    },
    "a firmware of another board": (c) => {
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", firmware: ["tm2"] };
      const image = c.firmware.tm!.versions[0]!.image;
      c.firmware.tm2 = {
        ...c.firmware.tm!,
        id: "tm2",
        name: "Tm2 firmware",
        boards: [{ board: "b2" }],
        versions: [
          { id: "R1", image },
          { id: "R1A", image },
        ],
      };
      c.build.tbd!.firmware = "tm2";
      delete c.build.tbd!.result!.conflicts;
    },
  },
} satisfies RuleCases;
