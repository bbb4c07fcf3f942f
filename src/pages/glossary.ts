// The words the pages use, each said once in plain words. Meanings are common practice of the trade, from memory; those of the answers are the
// one table of states.
import { evidenceOrder, evidenceWords, verdictOrder, verdictWords } from "../words/index.js";
import { head, type PageHead } from "./common.js";

export interface WordView {
  /** Its place on the page. */
  readonly id: string;
  readonly word: string;
  /** Other names for the same thing. */
  readonly also?: string;
  readonly means: string;
}

export interface GlossaryPage extends PageHead {
  readonly answer: string;
  readonly groups: readonly { readonly id: string; readonly title: string; readonly words: readonly WordView[] }[];
}

type Entry = readonly [word: string, means: string, also?: string];

const answers: readonly Entry[] = [
  ...verdictOrder.map((v): Entry => [verdictWords[v].word, verdictWords[v].means]),
  ...evidenceOrder.map((e): Entry => [evidenceWords[e].word, evidenceWords[e].means]),
  ["combination", "One machine filled in to the end: board revision, firmware, and for each card its revision, slot and settings."],
  [
    "way to run it",
    "Which cards are on, under which firmware. A machine has one way, or several with a switch or a change by hand between them.",
    "mode",
  ],
  ["way out", "The least to change so that a machine which does not work works: a jumper, a slot, a version, a card left out, a switch."],
];

const machine: readonly Entry[] = [
  [
    "board revision",
    "A change its maker made to a board. It may differ in firmware, chips and lines; the page of the board says how to tell.",
  ],
  ["bus", "The lines that all slots share: addresses, data, interrupts, supply."],
  [
    "slot",
    "A place for a card. Short ones carry fewer lines than long ones; a card fits where all its contacts are met.",
    "expansion slot",
  ],
  ["port", "A number by which the processor reaches a card. Two cards that answer at one port disturb one another.", "I/O address"],
  ["window", "A run of addresses in which a card's memory answers. Two windows must not overlap unless one card yields.", "memory range"],
  [
    "address lines",
    "Lines that name a place. A card that looks at fewer of them than the bus has answers again further up, at every address that looks the same to it.",
    "decoded bits, aliases",
  ],
  ["interrupt line", "A line by which a card calls the processor. Most can serve one card only.", "IRQ"],
  ["DMA channel", "Lets a card move data to and from memory without the processor.", "DMA request, DRQ"],
  [
    "chain",
    "A line handed on from slot to slot, by which the first card in the row is served first. An empty slot may break it.",
    "daisy chain",
  ],
  ["rail", "One voltage of the supply. What all cards draw from it must stay below what it can give.", "supply line"],
  [
    "setting",
    "What is set on a card: a block of jumpers, a row of levers, or software. Each has positions; one is in force.",
    "jumper, switch",
  ],
];

const memory: readonly Entry[] = [
  ["firmware", "The program a machine starts with, in a memory device on its board.", "boot ROM, monitor"],
  ["release", "One version of a firmware. Their order is that of the firmware's record, not of their names.", "version"],
  ["image", "The bytes of one release, as they stand in a memory device."],
  ["memory device", "The chip that holds the firmware, in a socket on the board.", "EPROM, EEPROM, flash"],
  ["bank", "A part of a larger memory device that holds one image."],
  ["bank line", "An upper address pin of the device, brought out to the switch: high or low, it chooses the bank."],
  [
    "pull-up",
    "A resistor to the supply that keeps a line high while no contact makes it low. Without one the line floats and means nothing.",
  ],
  ["dump", "The bytes read out of a device. Burn only from your own."],
  ["checksum", "A figure worked out from all bytes of an image; another image has another figure.", "CRC-32, SHA-1, SHA-256"],
];

const wires: readonly Entry[] = [
  ["pole", "One row of contacts of a switch: its common meets one contact at each position.", "deck, wafer"],
  ["position", "Where the knob or lever stands. In each, one way to run the machine is on.", "throw"],
  ["enable points", "Two posts of a card that switch it on or off when they are bridged."],
  ["loom", "The wires between switch, card and board, with their plugs.", "wiring harness"],
  ["link", "A short wire between two terminals of the same switch."],
  ["fault table", "For each wire that could be open, swapped or bridged: what one measures and sees then."],
];

const records: readonly Entry[] = [
  ["record", "What the club knows of one board, card, firmware, part, problem or machine, in one text file."],
  ["tested machine", "A machine somebody built, and what came of it: who, when, and what was seen.", "tested build"],
  ["known problem", "What goes wrong when certain things meet, how one sees it, and what helps."],
  ["source", "Where a figure is from: a manual, a measurement, a bench, a person."],
];

const groups: readonly (readonly [id: string, title: string, entries: readonly Entry[]])[] = [
  ["answers", "Answers", answers],
  ["machine", "In the machine", machine],
  ["memory", "Firmware and memory devices", memory],
  ["switch", "The switch and its wires", wires],
  ["records", "Records", records],
];

export function glossaryPage(): GlossaryPage {
  const answer = "Words the pages use, each said once. Where the trade has several names for a thing, the others stand beside it.";
  return {
    ...head("words.html", "Words", answer, "words"),
    answer,
    groups: groups.map(([id, title, entries]) => ({
      id: `words-${id}`,
      title,
      words: entries.map(([word, means, also]) => ({ id: word.replace(/[^a-z0-9]+/gi, "-"), word, means, ...(also ? { also } : {}) })),
    })),
  };
}
