// Published jumper tables and worked coexistence cases of the 16-bit ISA bus, retabulated; the sources stand beside each table.
// All addresses are hexadecimal text as in the source.

/** Linux kernel Documentation/networking/arcnet-hardware.rst, "8-bit cards with a 90C63 controller" (facts only). Switch off = 1, on = 0. */
export const net8A = {
  io: { "000": "260", "001": "290", "010": "2E0", "011": "2F0", "100": "300", "101": "350", "110": "380", "111": "3E0" },
  memory: {
    "00000": ["C0000", "C2000"],
    "00001": ["C0800", "C2000"],
    "00010": ["C1000", "C2000"],
    "00011": ["C1800", "C2000"],
    "00100": ["C4000", "C6000"],
    "00101": ["C4800", "C6000"],
    "00110": ["C5000", "C6000"],
    "00111": ["C5800", "C6000"],
    "01000": ["CC000", "CE000"],
    "01001": ["CC800", "CE000"],
    "01010": ["CD000", "CE000"],
    "01011": ["CD800", "CE000"],
    "01100": ["D0000", "D2000"],
    "01101": ["D0800", "D2000"],
    "01110": ["D1000", "D2000"],
    "01111": ["D1800", "D2000"],
    "10000": ["D4000", "D6000"],
    "10001": ["D4800", "D6000"],
    "10010": ["D5000", "D6000"],
    "10011": ["D5800", "D6000"],
    "10100": ["D8000", "DA000"],
    "10101": ["D8800", "DA000"],
    "10110": ["D9000", "DA000"],
    "10111": ["D9800", "DA000"],
    "11000": ["DC000", "DE000"],
    "11001": ["DC800", "DE000"],
    "11010": ["DD000", "DE000"],
    "11011": ["DD800", "DE000"],
    "11100": ["E0000", "E2000"],
    "11101": ["E0800", "E2000"],
    "11110": ["E1000", "E2000"],
    "11111": ["E1800", "E2000"],
  },
  irq: [2, 3, 4, 5, 7],
} as const;

/** The same document, 8/16-bit card with ranges listed: the same addresses with the switch order reversed. */
export const net8B = {
  io: {
    "000": ["260", "26F"],
    "100": ["290", "29F"],
    "010": ["2E0", "2EF"],
    "110": ["2F0", "2FF"],
    "001": ["300", "30F"],
    "101": ["350", "35F"],
    "011": ["380", "38F"],
    "111": ["3E0", "3EF"],
  },
  irq: [2, 3, 4, 5, 6, 7],
} as const;

/** The same document, 8-bit card with a 90C65: switches told as ON and OFF; the jumper marked 6 gives interrupt 7. */
export const net8C = {
  io: {
    "ON ON ON": "260",
    "OFF ON ON": "290",
    "ON OFF ON": "2E0",
    "OFF OFF ON": "2F0",
    "ON ON OFF": "300",
    "OFF ON OFF": "350",
    "ON OFF OFF": "380",
    "OFF OFF OFF": "3E0",
  },
  irq: { "2": 2, "3": 3, "4": 4, "5": 5, "6": 7 },
} as const;

/** The same document, 16-bit card with a 9026: interrupt by jumper number, memory by four switches [RAM, PROM]. */
export const net16D = {
  irq: { "3": 14, "4": 15, "5": 12, "6": 11, "7": 10, "8": 3, "9": 4, "10": 5, "11": 6, "12": 7, "13": 9 },
  memory: { "OFF OFF ON ON": ["C0000", "C8000"], "OFF OFF ON OFF": ["D0000", "D8000"], "OFF OFF OFF ON": ["E0000", "E8000"] },
} as const;

/** The same document, 16-bit long board: ports 200h + switches 4..1 times 10h, + 100h with switch 6; interrupt by switches 10..7. */
export const net16E = { irq: { "0011": 3, "0100": 4, "0101": 5, "0111": 7, "1001": 9, "1010": 10, "1011": 11, "1100": 12 } } as const;

/** The same document, 8-bit card with MS and IO switches: the same eight addresses, complemented code. */
export const net8F = {
  io: { "111": "260", "110": "290", "101": "2E0", "100": "2F0", "011": "300", "010": "350", "001": "380", "000": "3E0" },
} as const;

/** Linux kernel Documentation/networking/device_drivers/appletalk/ltpc.rst: SW1-SW8; 8 ports is an assumption (from memory). */
export const lt8G = { io: ["220", "240"], irq: { SW1: 4, SW2: 3, SW3: 9 }, dma: { "3": ["SW4", "SW6"], "1": ["SW5", "SW7"] } } as const;

/** Linux kernel sound/isa/sb/sb16.c (choices) and sb_common.c (16 ports). */
export const sndH = { io: ["220", "240", "260", "280"], irq: [5, 7, 9, 10], dma8: [0, 1, 3], dma16: [5, 6, 7] } as const;

/** Linux kernel drivers/net ne.c probe list, 32 ports; interrupts by common practice, no source. */
export const eth16I = { io: ["300", "280", "320", "340", "360"], irq: [3, 4, 5, 9, 10, 11, 12, 15] } as const;

/** Worked jumper positions: what a setting gives, read off the tables above by hand. */
export const workedJumpers: readonly { card: string; what: string; setting: string; result: string }[] = [
  { card: "net8-A", what: "io", setting: "000", result: "260" },
  { card: "net8-A", what: "io", setting: "010", result: "2E0" },
  { card: "net8-A", what: "io", setting: "111", result: "3E0" },
  { card: "net8-A", what: "ram", setting: "01100", result: "D0000" },
  { card: "net8-A", what: "ram", setting: "10011", result: "D5800" },
  { card: "net8-A", what: "rom", setting: "01100", result: "D2000" },
  { card: "net8-B", what: "io", setting: "010", result: "2E0-2EF" },
  { card: "net8-B", what: "io", setting: "011", result: "380-38F" },
  { card: "net8-C", what: "io", setting: "OFF ON OFF", result: "350" },
  { card: "net16-E", what: "io", setting: "011110", result: "2E0" },
  { card: "net16-E", what: "irq", setting: "1001", result: "9" },
  { card: "net8-F", what: "io", setting: "011", result: "300" },
  { card: "net16-D", what: "irq", setting: "jumper 13", result: "9" },
  { card: "lt8-G", what: "dma", setting: "SW5+SW7", result: "1" },
];

export interface Claimed {
  readonly id: string;
  readonly io?: readonly (readonly string[])[];
  readonly mem?: readonly (readonly string[])[];
  readonly irq?: readonly number[];
  readonly dma?: readonly number[];
}

/** What a plain AT-class machine takes itself (public port lists; Linux kernel setup.c). */
export const fixed: readonly Claimed[] = [
  { id: "COM1", io: [["3F8", "3FF"]], irq: [4] },
  { id: "COM2", io: [["2F8", "2FF"]], irq: [3] },
  { id: "LPT1", io: [["378", "37F"]], irq: [7] },
  { id: "floppy", io: [["3F0", "3F5"]], irq: [6], dma: [2] },
  {
    id: "disk1",
    io: [
      ["1F0", "1F7"],
      ["3F6", "3F6"],
    ],
    irq: [14],
  },
  {
    id: "colour video",
    io: [["3D0", "3DF"]],
    mem: [
      ["B8000", "BFFFF"],
      ["C0000", "C7FFF"],
    ],
  },
];

/** Which settings can stand together; conflicts found by brute force outside this project. */
export const coexistence: readonly {
  name: string;
  settings: readonly Claimed[];
  conflicts: readonly { resource: string; between: readonly string[]; at: string }[];
  together: boolean;
}[] = [
  {
    name: "factory defaults together",
    settings: [
      { id: "net8-A", io: [["2E0", "2EF"]], mem: [["D0000", "D07FF"]], irq: [9] },
      { id: "lt8-G", io: [["240", "247"]], irq: [9], dma: [1] },
      { id: "snd-H", io: [["220", "22F"]], irq: [5], dma: [1, 5] },
    ],
    conflicts: [
      { resource: "irq", between: ["net8-A", "lt8-G"], at: "9" },
      { resource: "dma", between: ["lt8-G", "snd-H"], at: "1" },
    ],
    together: false,
  },
  {
    name: "repaired",
    settings: [
      { id: "net8-A", io: [["2E0", "2EF"]], mem: [["D0000", "D07FF"]], irq: [9] },
      { id: "lt8-G", io: [["240", "247"]], irq: [], dma: [3] },
      { id: "snd-H", io: [["220", "22F"]], irq: [5], dma: [1, 5] },
    ],
    conflicts: [],
    together: true,
  },
  {
    name: "network at 2F0 over COM2",
    settings: [{ id: "net8-A", io: [["2F0", "2FF"]], mem: [["D0000", "D07FF"]], irq: [9] }],
    conflicts: [{ resource: "io", between: ["COM2", "net8-A"], at: "2F8-2FF" }],
    together: false,
  },
  {
    name: "network at 3E0",
    settings: [{ id: "net8-A", io: [["3E0", "3EF"]], mem: [["D0000", "D07FF"]], irq: [9] }],
    conflicts: [],
    together: true,
  },
  {
    name: "network at 3E0 with COM3",
    settings: [
      { id: "net8-A", io: [["3E0", "3EF"]], mem: [["D0000", "D07FF"]], irq: [9] },
      { id: "COM3", io: [["3E8", "3EF"]], irq: [4] },
    ],
    conflicts: [
      { resource: "irq", between: ["COM1", "COM3"], at: "4" },
      { resource: "io", between: ["net8-A", "COM3"], at: "3E8-3EF" },
    ],
    together: false,
  },
  {
    name: "boot ROM in the video BIOS area",
    settings: [
      {
        id: "net8-A",
        io: [["300", "30F"]],
        mem: [
          ["C4000", "C47FF"],
          ["C6000", "C7FFF"],
        ],
        irq: [5],
      },
    ],
    conflicts: [
      { resource: "mem", between: ["colour video", "net8-A"], at: "C4000-C47FF" },
      { resource: "mem", between: ["colour video", "net8-A"], at: "C6000-C7FFF" },
    ],
    together: false,
  },
  {
    name: "ethernet 300 and network 300",
    settings: [
      { id: "eth16-I", io: [["300", "31F"]], irq: [10] },
      { id: "net8-A", io: [["300", "30F"]], mem: [["D0000", "D07FF"]], irq: [5] },
    ],
    conflicts: [{ resource: "io", between: ["eth16-I", "net8-A"], at: "300-30F" }],
    together: false,
  },
  {
    name: "ethernet 360 over the printer port",
    settings: [{ id: "eth16-I", io: [["360", "37F"]], irq: [10] }],
    conflicts: [{ resource: "io", between: ["LPT1", "eth16-I"], at: "378-37F" }],
    together: false,
  },
  {
    name: "ethernet 340 fits",
    settings: [
      { id: "eth16-I", io: [["340", "35F"]], irq: [10] },
      { id: "net8-A", io: [["300", "30F"]], mem: [["CC000", "CC7FF"]], irq: [5] },
      { id: "snd-H", io: [["220", "22F"]], irq: [9], dma: [1, 5] },
    ],
    conflicts: [],
    together: true,
  },
  {
    name: "sound card with MIDI at 330, network at 320",
    settings: [
      {
        id: "snd-H",
        io: [
          ["220", "22F"],
          ["330", "331"],
        ],
        irq: [5],
        dma: [1, 5],
      },
      { id: "eth16-I", io: [["320", "33F"]], irq: [10] },
    ],
    conflicts: [{ resource: "io", between: ["snd-H", "eth16-I"], at: "330-331" }],
    together: false,
  },
];
