// The example a new club begins with: one small invented machine, every record as short as a true one may be.
import { type Kind, kinds, schemaLineOf } from "../../records/index.js";

/** Files by their names below the club's folder, with "/". */
export function exampleFiles(clubName: string): Readonly<Record<string, string>> {
  const club =
    clubName
      .normalize("NFKD")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "") || "our-club";
  const record = (kind: Kind, id: string, body: string) => [
    `data/${kinds[kind].folder}/${id}.yaml`,
    `${schemaLineOf(kind)}\nid: ${id}\n${body}`,
  ];
  return Object.fromEntries([
    record("club", club, clubBody(clubName)),
    record("bus", "example-bus", bus),
    record("board", "example-board", board),
    record("firmware", "example-monitor", firmware),
    record("card", "example-disk-card", card),
    record("build", "example-machine", build),
    ["README.md", readme(clubName)],
  ]);
}

const source = 'sources:\n  - {id: example, kind: memory, says: "Invented for the example; replace this record by one of yours."}\n';

const clubBody = (name: string) => `name: ${JSON.stringify(name)}
about: Say in two sentences who you are and which machines you keep.
licence: Say on which terms others may use these records, for example CC0 1.0.
`;

const bus = `name: Example bus
summary: A bus with one kind of slot, to show what a bus record says.
${source}memory_address_bits: 20
io_address_bits: 16
edges:
  - {id: only, name: the only edge, fits: [only], interrupts: [I2, I3], address_bits: 20, data_bits: 8}
interrupts:
  - {id: I2, trigger: edge, share: never}
  - {id: I3, trigger: edge, share: never}
rails:
  - {id: "+5", volts: 5}
`;

const board = `name: Example board
summary: Two slots and one firmware socket.
${source}maker: Example Works
model: EX-1
bus: example-bus
revisions:
  - {id: A, tell: The letter A is etched beside the first slot.}
clock_MHz: 4
slots:
  - {id: S1, edge: only, position: 1, longest_mm: 200, highest_mm: 100}
  - {id: S2, edge: only, position: 2, longest_mm: 200, highest_mm: 100}
fixed:
  - {name: keyboard, io: [{base: 0x60, size: 2}], interrupts: [{line: I2}], memory: none, source: example}
rails:
  - {rail: "+5", limit_A: 5, board_A: 2, per_slot_A: any, source: example}
total_W: any
memory: {options: [256K], base: 0}
firmware: [example-monitor]
firmware_sockets:
  - {id: IC1, pins: 28, data_width: 8, window: {base: 0xF8000, size: 32K}, wired_for: 27C256, slowest_ns: 250}
`;

const firmware = `name: Example monitor
summary: Two releases; the order of the list is their order.
${source}maker: Example Works
boards:
  - {board: example-board}
versions:
  - {id: "1.0", image: {size: 32K, crc32: unknown}, source: example}
  - {id: "1.1", image: {size: 32K, crc32: unknown}, changes: Starts from the disk card., source: example}
`;

const card = `name: Example disk card
summary: Needs the second release, and one jumper for its ports.
${source}maker: Example Works
model: EX-D
does: [disk]
bus: example-bus
edge: only
room: {length_mm: 160, height_mm: 100}
power:
  - {rail: "+5", worst_A: {is: 0.8, source: example}, basis: estimated}
claims:
  - interrupts: [{line: I3}]
    io: settings
    memory: none
    source: example
settings:
  - id: J1
    name: ports
    by: jumper
    positions:
      - {id: "300", how: J1 open, io: [{base: 0x300, size: 8}]}
      - {id: "320", how: J1 closed, io: [{base: 0x320, size: 8}]}
needs:
  firmware:
    - {family: example-monitor, from: "1.1"}
`;

const build = `name: Example machine
summary: The board with the disk card; everything left out is a question.
board: example-board
cards:
  - {card: example-disk-card}
`;

const readme = (name: string) => `# ${name}

The club's records lie in data/, one YAML file each. From this folder:

    slotwright check                  # are the records right, and do the tests agree with the rules?
    slotwright plan example-machine   # what works in one machine
    slotwright new card <id>          # begin a record
    slotwright result <build.yaml>    # tell what a bench test showed
    slotwright start                  # build the pages and look at them

The example machine is invented: replace it by one of yours, then delete its records. The generic parts in data/parts/ come under the
terms in data/parts/LICENSE.md.
`;
