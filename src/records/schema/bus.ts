// A bus: what every slot of one kind carries, whatever board it is on.
import { type Static, Type } from "@sinclair/typebox";
import { amount, fact, head, list, mark, oneOf, optional, signed, strict, text, whole, wholeOf } from "./common.js";

export const Rail = strict("A supply rail of the bus.", {
  id: mark("The rail as it is written (+5, -12)."),
  volts: signed("V", "Nominal voltage."),
});

export const InterruptLine = strict("An interrupt line of the bus.", {
  id: mark("Name of the line."),
  also: optional(list(mark("Another name."), "Other names of the same line; a jumper may be marked with any of them.")),
  trigger: fact(oneOf(["edge", "level"], "How the line is sensed."), "How the line is sensed."),
  share: fact(
    oneOf(["never", "if-shareable"], "Sharing rule."),
    "never: one owner; if-shareable: several, when the line is level-triggered and every owner is shareable.",
  ),
});
export type InterruptLine = Static<typeof InterruptLine>;

export const DmaChannel = strict("A DMA channel of the bus.", {
  id: mark("Name of the channel."),
  width: optional(wholeOf("bits", "Bits per transfer.", 1)),
});

export const Edge = strict("A kind of card edge (and the slot made for it).", {
  id: mark("Name of the edge: short, long."),
  name: text("In words."),
  contacts: optional(whole("Number of contacts.", 1)),
  fits: list(mark("An edge id."), "Slots (by edge id) that take a card with this edge."),
  interrupts: optional(
    Type.Array(mark("Line."), {
      description: "Interrupt lines on this edge, of a card or of a slot; left out: all. A card uses a line only where both have it.",
    }),
  ),
  dma: optional(Type.Array(mark("Channel."), { description: "DMA channels on this edge, of a card or of a slot; left out: all." })),
  address_bits: optional(whole("Memory address lines on this edge.", 1)),
  data_bits: optional(wholeOf("bits", "Data lines on this edge.", 1)),
});
export type Edge = Static<typeof Edge>;

export const AddressSpace = strict("One of several memory address spaces of a bus.", {
  id: mark("As people write it: A16, A24."),
  name: text("What it is, and how a card tells it from the others."),
  bits: whole("Address lines that count in it; windows in it lie below 2 to this power.", 1),
});

export const OverlayLine = strict("A line that silences what lies under an overlay.", {
  id: mark("Name of the line."),
  says: text("What it does."),
});

export const Chain = strict(
  "A line that runs from slot to slot, through the cards: what a card does not pass on, those behind it never see.",
  {
    id: mark("Short name: BG3, IACK."),
    name: text("What the chain is called: bus grant 3."),
    most: optional(
      whole(
        "Most cards that can use it in one machine, where the bus settles who is first in one clock. Left out: as many as stand on it.",
        1,
      ),
    ),
  },
);

export const Bus = strict("A bus: the lines, rails and edges that boards and cards share.", {
  ...head,
  memory_address_bits: whole("Memory address lines; windows must lie below 2 to this power, or to that of their own space.", 1),
  io_address_bits: whole("Port address lines.", 1),
  spaces: optional(
    list(
      AddressSpace,
      "Memory address spaces, where the bus has several at the same numbers (told apart by modifier or status lines). Left out: there is one.",
    ),
  ),
  overlay_lines: optional(
    list(
      OverlayLine,
      "Lines by which one window takes the place of another: what asserts the line answers, what yields to it keeps silent. Left out: none.",
    ),
  ),
  edges: list(Edge, "Kinds of card edge."),
  interrupts: list(InterruptLine, "Interrupt lines, most urgent first."),
  dma: optional(list(DmaChannel, "DMA channels.")),
  rails: list(Rail, "Supply rails."),
  clock_MHz: optional(fact(amount("MHz"), "Bus clock the standard asks for.")),
  chains: optional(list(Chain, "Chains from slot to slot: priority, grant, acknowledge. Left out: none.")),
});
export type Bus = Static<typeof Bus>;
