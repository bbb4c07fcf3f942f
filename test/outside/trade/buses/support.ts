// Plain machines on the buses of published standards: a backplane without resources of its own, and cards that say only what is asked.
import type { Answer } from "../../../../src/planning/index.js";
import type { Board, Build, Bus, Card } from "../../../../src/records/index.js";
import { answerOf, plainBoard, plainCard } from "../support.js";

/** A bus with one kind of edge and one rail. */
export function busWith(more: Partial<Bus> & Pick<Bus, "id" | "name" | "memory_address_bits" | "io_address_bits">): Bus {
  return {
    edges: [{ id: "slot", name: "slot", fits: ["slot"] }],
    interrupts: [{ id: "INT", trigger: "level", share: "if-shareable" }],
    rails: [{ id: "+5", volts: 5 }],
    ...more,
  };
}

/** A backplane of so many slots, counted from 1, whose firmware socket lies out of the way. */
export function backplane(bus: Bus, slots: number, more: Partial<Board> = {}): Board {
  const space = bus.spaces?.[0]?.id;
  const top = 2 ** (bus.spaces?.[0]?.bits ?? bus.memory_address_bits);
  return plainBoard({
    bus: bus.id,
    slots: Array.from({ length: slots }, (_, i) => ({ id: `${i + 1}`, edge: "slot", position: i + 1 })),
    firmware_sockets: [
      {
        id: "U1",
        pins: 28,
        data_width: 8,
        window: { base: top - 0x1000, size: 0x1000, ...(space === undefined ? {} : { space }) },
        wired_for: "27C512",
        slowest_ns: 200,
      },
    ],
    ...more,
  });
}

export function cardOn(bus: Bus, id: string, more: Partial<Card> = {}): Card {
  return plainCard(id, { bus: bus.id, edge: "slot", ...more });
}

export function askOn(bus: Bus, board: Board, cards: readonly Card[], more: Partial<Build> = {}): Answer {
  return answerOf(board, cards, more, bus);
}

export const reasonOf = (answer: Answer): string => answer.reasons[0]?.facts[0]?.says ?? "";
