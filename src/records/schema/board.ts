// A board: mainboard or backplane, with revisions, slots, firmware sockets, fixed resources and rails.
import { type Static, Type } from "@sinclair/typebox";
import {
  address,
  amount,
  Claims,
  fact,
  flag,
  head,
  idOf,
  inSpace,
  list,
  mark,
  most,
  OnRevisions,
  oneOf,
  optional,
  size,
  strict,
  text,
  when,
  whole,
  wholeOf,
} from "./common.js";

export const Revision = strict("A revision of the board.", {
  id: mark("As etched or stamped: C, D1."),
  date: optional(when("First seen.")),
  tell: text("How to tell it apart: where to look and what to see."),
  changes: optional(text("What changed against the revision before.")),
});

export const Slot = strict("A slot for a card.", {
  id: mark("As printed beside it."),
  edge: mark("Edge of the bus it takes (edge id)."),
  position: whole("Place in the row, counted from 1; neighbours differ by 1.", 1),
  number: optional(
    fact(
      whole("Number of the slot."),
      "Number that its contacts give a card whose addresses follow the slot. Left out: not known, and no such card is called workable there.",
    ),
  ),
  pitch_mm: optional(amount("mm", "Distance to the next slot up, in mm.")),
  longest_mm: optional(
    fact(most("mm", "Longest card that fits, in mm; any: no limit."), "Longest card that fits, in mm, or any. Left out: not known."),
  ),
  highest_mm: optional(
    fact(most("mm", "Highest card that fits, in mm; any: no limit."), "Highest card that fits, in mm, or any. Left out: not known."),
  ),
  opening: optional(
    mark("Rear opening it uses; two slots naming the same one share it, and only one of two cards may use it. Left out: its own."),
  ),
  interrupts: optional(Type.Array(mark("Line."), { description: "Lines that reach this slot, when not all of its edge do." })),
  dma: optional(Type.Array(mark("Channel."), { description: "DMA channels that reach this slot, when not all of its edge do." })),
  bus_master: optional(fact(flag("Bus master works here."), "Whether a bus master works here. Left out: not known.")),
  revisions: optional(OnRevisions),
});
export type Slot = Static<typeof Slot>;

export const Fixed = strict("A resource the board itself takes.", {
  name: text("What it is."),
  revisions: optional(OnRevisions),
  when_memory: optional(list(size("Fitted memory."), "Only with one of these amounts of memory fitted.")),
  ...Claims.properties,
  source: optional(text("Where it comes from.")),
});

export const RailLimit = strict("What the supply gives on one rail.", {
  rail: mark("Rail of the bus."),
  limit_A: fact(
    amount("A"),
    "What the supply can give for the whole machine, in A. The board alone is within it; the cards are judged with the board.",
  ),
  board_A: optional(fact(amount("A"), "What the board itself takes, in A; 0 when it takes nothing. Left out: not known.")),
  per_slot_A: optional(
    fact(
      most("A", "Most that one card may take from its slot, in A; any: no limit."),
      "Most that one card may take from its slot, all its entries for this rail together, in A, or any. Left out: not known.",
    ),
  ),
  derate: optional(Type.Number({ minimum: 0, maximum: 1, description: "Part of limit_A to plan with (0.8); 1 when left out." })),
  revisions: optional(OnRevisions),
  source: optional(text("Where it comes from.")),
});

export const UpperPin = strict("What the socket carries on a pin that a larger device would use.", {
  pin: whole("Pin of the socket.", 1),
  carries: oneOf(
    ["driven", "high", "low", "open", "supply", "rail"],
    "driven: an address line of the board; high/low: tied; open: not connected; supply: +5 V; rail: another supply, as +12 V.",
  ),
  line: optional(mark("The address line, when driven; the name of the supply, when another than +5 V.")),
});

export const FirmwareSocket = strict("A socket for firmware.", {
  id: mark("As printed: IC7."),
  pins: whole("Number of pins.", 8),
  data_width: wholeOf("bits", "Data bits the socket has.", 8),
  window: strict("Where it appears in the address space; nothing else may answer there.", {
    base: address("First address."),
    size: size("Length in bytes."),
    space: inSpace,
  }),
  wired_for: text("Memory device family it is wired for (27C010)."),
  lane: optional(
    oneOf(["whole", "even", "odd"], "Which bytes it holds when two sockets share the width; of two 16-bit sockets, which words."),
  ),
  upper_pins: optional(list(UpperPin, "Pins that matter to larger devices.")),
  slowest_ns: fact(wholeOf("ns", "ns", 1), "Slowest access time that still works, in ns."),
  revisions: optional(OnRevisions),
});
export type FirmwareSocket = Static<typeof FirmwareSocket>;

const BoardChain = strict("One chain of the bus, as this board leads it.", {
  chain: mark("The chain (id of the bus)."),
  slots: list(mark("Slot id."), "Slots in the order of the chain, served first to last; one that a revision lacks is passed over."),
  empty: optional(
    fact(
      oneOf(["breaks", "passes", "jumper", "plug"], "What an empty slot does."),
      "What an empty slot does to the chain for those behind it. breaks: nothing bridges it; passes: the board bridges it by itself; jumper: a jumper on the board bridges it; plug: a plug in the slot bridges it. One that a wide card only covers is empty, and takes a jumper but no plug. Left out: not known.",
    ),
  ),
});

const MainMemory = strict(
  "It takes the addresses from its base up to the amount fitted, or to the first window of the board in its way; what lies beyond is reached otherwise.",
  {
    options: list(size("Bytes fitted."), "Amounts that can be fitted."),
    base: optional(address("First address of main memory, 0 on most boards. Left out: where it lies is not known.")),
    space: inSpace,
  },
);

export const Board = strict("A mainboard or backplane.", {
  ...head,
  maker: text("Maker as marked."),
  model: text("Model as marked."),
  years: optional(text("When it was made.")),
  bus: idOf("bus", "its expansion bus"),
  revisions: list(Revision, "Revisions, oldest first."),
  clock_MHz: fact(amount("MHz"), "Bus clock in MHz."),
  slots: list(Slot, "Slots, in order of position."),
  chains: optional(
    list(
      BoardChain,
      "The chains of the bus that run through its slots. One that is not named is not there, and no card that uses it works.",
    ),
  ),
  fixed: list(Fixed, "Resources the board itself takes: all of them. Each entry says all four kinds."),
  rails: list(RailLimit, "Supply rails and limits."),
  total_W: optional(
    fact(
      most("W", "What the supply can give in all, in W; any: no limit beside those of its rails."),
      "What the supply can give in all, in W: currents of cards and board, each times the volts of its rail without the sign. Any: no limit beside those of its rails. Left out: not known.",
    ),
  ),
  total_derate: optional(Type.Number({ minimum: 0, maximum: 1, description: "Part of the total to plan with (0.8); 1 when left out." })),
  memory: optional(
    Type.Union([MainMemory, oneOf(["none", "unknown"], "Or one of these words.")], {
      description:
        "Main memory. None: the board has none that takes addresses (it sits on cards, which claim theirs). Left out, or unknown: neither the amount nor where it lies is known, and no card that answers at memory addresses is called workable.",
    }),
  ),
  firmware: list(idOf("firmware", "a firmware family"), "Firmware families made for it."),
  firmware_sockets: list(FirmwareSocket, "Sockets for firmware."),
});
export type Board = Static<typeof Board>;
