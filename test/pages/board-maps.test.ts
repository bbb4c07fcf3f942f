// The address maps of a board's page: the whole space of its bus, with nothing drawn free that the board, its firmware or a card can take.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { mapFigures } from "../../src/pages/board-figures.js";
import type { Board } from "../../src/records/index.js";
import { linkClub, type TestClub, testClub } from "../support/club.js";
import { demo } from "../support/demo.js";

/** What a map says in words: the drawing's description, one sentence an entry. */
function sentences(catalogue: Catalogue, board: Board | undefined, title: "Memory" | "Ports"): readonly string[] {
  if (!board) throw new Error("no such board");
  const found = mapFigures(catalogue, board).find((m) => m.title === title);
  return /<desc[^>]*>([^<]*)</.exec(found?.drawing.wide ?? "")?.[1]?.split(/(?<=\.) (?=[A-Z0-9])/) ?? [];
}

function small(change: (club: TestClub) => void = () => {}) {
  const club = testClub();
  change(club);
  const { catalogue } = linkClub(club);
  return { catalogue, board: catalogue.boards.get("tb-1") };
}

describe("a board whose record lists no window of its firmware", () => {
  const { catalogue, board } = small();
  const memory = sentences(catalogue, board, "Memory");

  it("has the firmware's window taken", () => {
    expect(memory).toContain("0xF0000 to 0xF7FFF: firmware, socket IC7.");
    expect(memory.filter((s) => s.startsWith("Free:"))).not.toContain("Free: 0xF0000 to 0xF7FFF.");
    expect(memory).toContain("Free: 0xF8000 to 0xFFFFF.");
  });

  it("shows where a card can be set to answer, and calls that neither free nor taken", () => {
    expect(memory).toContain("0xD0000 to 0xD3FFF: Test card: if fitted.");
    expect(memory.some((s) => s.startsWith("Free:") && s.includes("0xD0000"))).toBe(false);
    expect(sentences(catalogue, board, "Ports")).toContain("0x0300 to 0x0307: Test card: if fitted.");
  });

  it("draws all ports of the bus, with those that answer again further up", () => {
    const ports = sentences(catalogue, board, "Ports");
    expect(ports[0]).toBe("Port addresses from 0x0000 to 0xFFFF.");
    expect(ports).toContain("0x0400 to 0xFFFF: Screen: again every 0x400.");
    expect(ports.filter((s) => s.includes("answer at once"))).toEqual([]);
  });
});

it("a narrow bus has a small space, a wide one a large space", () => {
  const spaces = ([memory, io]: readonly [number, number]) => {
    const { catalogue, board } = small((c) => {
      for (const bus of Object.values(c.bus)) {
        Object.assign(bus, { memory_address_bits: memory, io_address_bits: io });
        for (const edge of bus.edges) Object.assign(edge, { address_bits: undefined });
      }
    });
    return (["Memory", "Ports"] as const).map((space) => sentences(catalogue, board, space)[0]);
  };
  expect(spaces([20, 12])).toEqual(["Memory addresses from 0x00000 to 0xFFFFF.", "Port addresses from 0x000 to 0xFFF."]);
  expect(spaces([24, 16])).toEqual(["Memory addresses from 0x000000 to 0xFFFFFF.", "Port addresses from 0x0000 to 0xFFFF."]);
});

it("two sockets of one window are one run; sockets of different revisions each have theirs", () => {
  const { catalogue, board } = small((c) => {
    const one = c.board["tb-1"];
    const [socket] = one?.firmware_sockets ?? [];
    if (!one || !socket) throw new Error("the small club lost its socket");
    one.firmware_sockets = [
      { ...socket, id: "IC7", lane: "even", revisions: ["A"] },
      { ...socket, id: "IC8", lane: "odd", revisions: ["A"] },
      { ...socket, id: "IC9", revisions: ["B"], window: { base: 0xe0000, size: "64K" } },
    ];
  });
  const memory = sentences(catalogue, board, "Memory");
  expect(memory).toContain("0xF0000 to 0xF7FFF: firmware, socket IC7, revision A; IC8, revision A.");
  expect(memory).toContain("0xE0000 to 0xEFFFF: firmware, socket IC9, revision B.");
  expect(memory.filter((s) => s.includes("answer at once"))).toEqual([]);
});

it("every board of the demo has both maps, over the whole space of its bus", () => {
  const catalogue = demo();
  for (const board of catalogue.boards.values()) {
    const bus = catalogue.buses.get(board.bus);
    const last = (bits = 0) => `0x${(2 ** bits - 1).toString(16).toUpperCase()}.`;
    expect(sentences(catalogue, board, "Memory")[0]).toContain(`to ${last(bus?.memory_address_bits)}`);
    expect(sentences(catalogue, board, "Ports")[0]).toContain(`to ${last(bus?.io_address_bits)}`);
  }
});
