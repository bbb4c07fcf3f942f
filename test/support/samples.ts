// Small schema-valid records of every kind, rich enough that most fields occur.
import type { Kind, RecordOf } from "../../src/records/index.js";

const sources = [
  { id: "man", kind: "manual", says: "Manual, page 4", by: "A. Keeper", date: "1987-05", url: "https://example.org/m" },
] as const;

const samples: { readonly [K in Kind]: readonly RecordOf[K][] } = {
  club: [{ id: "testers", name: "Testers", about: "They test.", licence: "CC0", keepers: ["Ann"], contact: "a letter" }],
  bus: [
    {
      id: "tb",
      name: "Test bus",
      sources: [...sources],
      memory_address_bits: 20,
      io_address_bits: 16,
      edges: [
        {
          id: "short",
          name: "Short",
          contacts: 62,
          fits: ["short", "long"],
          interrupts: ["I2", "I3"],
          dma: ["1"],
          address_bits: 20,
          data_bits: 8,
        },
        { id: "long", name: "Long", fits: ["long"] },
      ],
      interrupts: [
        { id: "I2", also: ["I9"], trigger: "edge", share: "never" },
        { id: "I3", trigger: "level", share: { is: "if-shareable", source: "man" } },
      ],
      dma: [{ id: "1", width: 8 }],
      rails: [
        { id: "+5", volts: 5 },
        { id: "-12", volts: -12 },
      ],
      clock_MHz: { is: "unknown", find: "Measure pin 20." },
      chains: [{ id: "G", name: "Grant", most: 3 }],
    },
  ],
  board: [
    {
      id: "tb-1",
      name: "Test board",
      sources: [...sources],
      maker: "Testers",
      model: "One",
      bus: "tb",
      revisions: [
        { id: "A", tell: "No mark.", date: "1986" },
        { id: "B", tell: "B by the crystal.", changes: "Socket wiring." },
      ],
      clock_MHz: 4.77,
      slots: [
        { id: "S1", edge: "short", position: 1, pitch_mm: 20, longest_mm: 300, highest_mm: "unknown", opening: "O1" },
        { id: "S2", edge: "long", position: 2, interrupts: ["I2"], dma: [], bus_master: true, revisions: ["B"] },
      ],
      chains: [{ chain: "G", slots: ["S1", "S2"], empty: "breaks" }],
      fixed: [
        {
          name: "Screen",
          memory: [{ base: 0xb8000, size: "16K", is: "ram" }],
          io: [{ base: 0x3d4, size: 2, decoded_bits: 10 }],
          source: "man",
        },
      ],
      rails: [{ rail: "+5", limit_A: { is: 7, source: "man" }, board_A: 2.5, per_slot_A: 2, derate: 0.8 }],
      total_W: 63,
      memory: { options: ["256K", "512K"], base: 0 },
      firmware: ["tm"],
      firmware_sockets: [
        {
          id: "IC7",
          pins: 28,
          data_width: 8,
          window: { base: 0xf0000, size: "32K" },
          wired_for: "27C256",
          upper_pins: [{ pin: 27, carries: "driven", line: "A14" }],
          slowest_ns: 200,
        },
      ],
    },
  ],
  firmware: [
    {
      id: "tm",
      name: "Test monitor",
      sources: [...sources],
      maker: "Testers",
      boards: [{ board: "tb-1" }],
      features: [{ id: "disk", says: "Starts from a disk." }],
      versions: [
        { id: "R1", date: "1986", image: { size: "16K", crc32: "unknown" } },
        {
          id: "R1A",
          follows: "R1",
          adds: ["disk"],
          boards: [{ board: "tb-1", revisions: ["B"] }],
          image: { size: 0x8000, width: 8, crc32: { is: "0123abcd", source: "man" } },
          circulating: [{ as: "held-twice", size: "64K", crc32: "89abcdef", note: "On the club disk." }],
          memory_at_least: "256K",
        },
      ],
    },
  ],
  card: [
    {
      id: "tc",
      name: "Test card",
      summary: "A card.",
      sources: [...sources],
      maker: "Testers",
      model: "TC",
      does: ["tool"],
      bus: "tb",
      edge: "short",
      revisions: [{ id: "1", tell: "No mark." }],
      room: { length_mm: 160, height_mm: { is: "unknown", find: "Measure it." }, slots: 2, opening: true },
      power: [{ rail: "+5", idle_A: 0.3, worst_A: { is: 0.5, source: "man" }, basis: "measured" }],
      claims: [{ when: { J1: "300", J2: ["2", "3"] }, memory: [{ base: 0xd0000, size: 0x4000, is: "option-rom" }] }],
      settings: [
        {
          id: "J1",
          name: "Ports",
          by: "jumper",
          default: "300",
          positions: [
            { id: "300", how: "closed", io: [{ base: 0x300, size: 8 }] },
            { id: "310", io: [{ base: 0x310, size: 8, decoded_bits: 10 }] },
          ],
        },
        {
          id: "J2",
          name: "Interrupt",
          by: "dip",
          positions: [
            { id: "2", interrupts: [{ line: "I2", mode: "edge" }], dma: [{ channel: "1", shareable: true }] },
            { id: "3", interrupts: [{ line: "I3", shareable: true }] },
          ],
        },
      ],
      impossible: [{ when: { J1: "310", J2: "3" }, why: "One jumper for both." }],
      needs: {
        firmware: [{ family: "tm", from: "R1", upTo: "R1A", except: ["R1"] }],
        features: ["disk"],
        boards: [{ board: "tb-1", revisions: ["B"] }],
        memory_at_least: "256K",
        clock_at_most_MHz: "unknown",
        other: ["A drive."],
      },
      chain: "uses",
      enable: {
        by: "contacts",
        sense: "closed-enables",
        points: [
          { id: "J9-1", role: "a", current_mA: 1 },
          { id: "J9-2", role: "b" },
        ],
        releases: ["io", "interrupts"],
      },
      panel: [{ name: "Lead", conductors: 8, signals: ["P1", "P2"], current_A: 0.1 }],
    },
  ],
  conflict: [
    {
      id: "tx",
      name: "Test conflict",
      sources: [...sources],
      class: "firmware-max",
      when: {
        boards: [{ board: "tb-1" }],
        firmware: [{ family: "tm", from: "R1A" }],
        cards: [{ card: "tc", settings: { J1: ["300"] } }],
        memory_at_least: "512K",
      },
      effect: "degrades",
      loss: "Half the speed.",
      symptoms: ["slow"],
      cause: "Not known.",
      remedies: [{ says: "Set J1 to 310.", leaves: "nothing", costs: "jumper" }],
      status: "suspected",
      settle: "Try it with R1.",
      evidence: [{ grade: "reported", says: "Someone said so.", date: "1990", by: "Ann" }],
    },
  ],
  build: [
    {
      id: "tbd",
      name: "Test build",
      board: "tb-1",
      revision: "B",
      memory: "512K",
      firmware: "tm",
      cards: [{ card: "tc", as: "tc2", revision: "1", slot: "S1", settings: { J1: "300" } }],
      modes: [{ id: "day", name: "Day", firmware: "R1A", cards: ["tc2"], safest: true }],
      at_hand: { firmware: ["R1"], cards: ["tc"], parts: ["t-27c256"] },
      stands: { revision: "A", memory: 0x40000, firmware: "R1", cards: [{ card: "tc" }] },
      switch: { device: "t-27c256" },
      result: {
        by: "Ann",
        date: "1990-03-04",
        outcome: "partly",
        hours: 3,
        modes: [{ mode: "day", outcome: "partly", symptoms: ["slow"] }],
        conflicts: ["tx"],
      },
    },
  ],
  part: [
    {
      id: "t-27c256",
      name: "27C256",
      sources: [...sources],
      type: "memory",
      family: "27C256",
      technology: "uv-eprom",
      capacity: "32K",
      organisations: [{ words: 32768, width: 8 }],
      package: "DIP28",
      // JEDEC 28-pin layout of a 32K x 8 EPROM, pin 1 first.
      pins: "VPP A12 A7 A6 A5 A4 A3 A2 A1 A0 D0 D1 D2 GND D3 D4 D5 D6 D7 /CE A10 /OE A11 A9 A8 A13 A14 VCC"
        .split(" ")
        .map((name, i) => ({ pin: i + 1, name })),
      grades_ns: [{ marking: "-15", access_ns: 150 }],
      read_pins: [{ pin: 1, at: "high" }],
    },
    {
      id: "t-switch",
      name: "Toggle",
      sources: [...sources],
      type: "switch",
      form: "toggle",
      poles: 1,
      positions: ["up", "down"],
      terminals: ["C", "A", "B"],
      closes: { up: [["C", "A"]], down: [["C", "B"]] },
      transit: "break-before-make",
      hole_mm: 6.5,
      body_mm: { width: 8, height: 13 },
    },
    {
      id: "t-plug",
      name: "Plug",
      sources: [...sources],
      type: "connector",
      family: "D",
      contacts: 2,
      half: "plug",
      face: [
        { contact: "1", x_mm: -1.4, y_mm: 0 },
        { contact: "2", x_mm: 1.4, y_mm: 0 },
      ],
      hole: { round_mm: 8 },
      panel: true,
    },
    { id: "t-cable", name: "Cable", sources: [...sources], type: "cable", conductors: 8, awg: 26, stranded: true },
    { id: "t-r", name: "10k", sources: [...sources], type: "resistor", ohms: 10000 },
    { id: "t-sleeve", name: "Sleeve", sources: [...sources], type: "sundry", what: "Heat-shrink." },
  ],
};

/** Fresh copies: a test may change what it gets. */
export function sample<K extends Kind>(kind: K): RecordOf[K][] {
  return structuredClone(samples[kind]) as RecordOf[K][];
}
