// One build is read alike by every command: a name that nobody knows is refused everywhere, at the same line and column, with the name
// that was probably meant; a build that names only what there is is refused nowhere for its names.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Kind, kinds, type RecordOf, writeRecord } from "../../src/records/index.js";
import { testClub } from "../support/club.js";
import { freshFolder, slotwright } from "../support/recorder.js";

/** A tested build that says everything a build can say; each line can be spoilt. */
const sound = `# yaml-language-server: $schema=../schema/build.json
id: mine
name: Mine
board: tb-1
revision: B
memory: 512K
firmware: tm
cards:
  - card: tc
    as: left
    revision: "1"
    slot: S1
    settings: {J1: "300"}
modes:
  - {id: day, firmware: R1A, cards: [left]}
at_hand:
  firmware: [R1]
  cards: [tc]
  parts: [t-sleeve]
stands:
  revision: A
  memory: 256K
  firmware: R1A
  cards:
    - card: tc
      slot: S2
switch:
  device: t-27c256
  switch: t-switch
  connector: t-plug
  cable: t-cable
result:
  by: Ann
  date: 1990-03-04
  outcome: partly
  modes:
    - {mode: day, outcome: partly, symptoms: [slow]}
  conflicts: [tx]
`;

/** What is written instead of what, and the name that should be offered; "" when none is near. */
const slips: readonly (readonly [title: string, from: string, to: string, meant: string])[] = [
  ["a board", "board: tb-1", "board: tb1", "tb-1"],
  ["a board revision", "\nrevision: B", "\nrevision: D7", ""],
  ["an amount of memory", "\nmemory: 512K", "\nmemory: 1M", ""],
  ["a firmware family", "firmware: tm", "firmware: tmx", "tm"],
  ["a card", "  - card: tc\n    as", "  - card: tcc\n    as", "tc"],
  ["a card revision", 'revision: "1"', "revision: Q", ""],
  ["a slot", "slot: S1", "slot: S11", "S1"],
  ["a setting", 'J1: "300"', 'J77: "300"', ""],
  ["a position", '"300"', '"301"', ""],
  ["a version in a mode", "firmware: R1A, cards", "firmware: R1AA, cards", "R1A"],
  ["a copy in a mode", "R1A, cards: [left]", "R1A, cards: [leff]", "left"],
  ["a version at hand", "firmware: [R1]", "firmware: [R7]", ""],
  ["a card at hand", "cards: [tc]", "cards: [tcc]", "tc"],
  ["one of several cards at hand", "cards: [tc]", "cards: [{card: tcc, count: 2}]", "tc"],
  ["a part at hand", "parts: [t-sleeve]", "parts: [t-sleve]", "t-sleeve"],
  ["the revision that stands", "  revision: A", "  revision: D8", ""],
  ["the memory that stands", "  memory: 256K", "  memory: 1M", ""],
  ["the version that stands", "firmware: R1A\n", "firmware: R7\n", ""],
  ["a card that stands", "    - card: tc\n      slot", "    - card: tcc\n      slot", "tc"],
  ["the slot of a card that stands", "slot: S2", "slot: S22", "S2"],
  ["a memory device", "device: t-27c256", "device: t-27c265", "t-27c256"],
  ["a switch", "switch: t-switch", "switch: t-swtich", "t-switch"],
  ["a connector", "connector: t-plug", "connector: t-plgu", "t-plug"],
  ["a cable", "cable: t-cable", "cable: t-cabel", "t-cable"],
  ["a switch as memory device", "device: t-27c256", "device: t-switch", ""],
  ["the mode of a result", "{mode: day,", "{mode: days,", "day"],
  ["a second mode of one id", "[left]}\nat_hand", "[left]}\n  - {id: day, cards: []}\nat_hand", ""],
  ["a second copy of one name", '{J1: "300"}\n', '{J1: "300"}\n  - {card: tc, as: left}\n', ""],
  ["a conflict of a result", "conflicts: [tx]", "conflicts: [zz-1]", ""],
];

/** Every command that takes a build, with what it takes besides. */
const commands: readonly (readonly string[])[] = [
  ["plan"],
  ["plan", "--buy", "tc"],
  ["plan", "--fits", "0"],
  ["plan", "--sheet", "sheet.html"],
  ["burn", "--dump", "dump.bin"],
  ["result", "--by", "Ann", "--outcome", "worked", "--replace"],
];

/** The small club in a folder, and beside it the build to ask about. */
function folderWith(text: string): string {
  const folder = freshFolder();
  const club = testClub();
  for (const kind of Object.keys(kinds) as Kind[]) {
    mkdirSync(join(folder, "data", kinds[kind].folder), { recursive: true });
    for (const record of Object.values(club[kind]))
      writeFileSync(join(folder, "data", kinds[kind].folder, `${record.id}.yaml`), writeRecord(kind, record as RecordOf[typeof kind]));
  }
  writeFileSync(join(folder, "mine.yaml"), text);
  writeFileSync(join(folder, "dump.bin"), new Uint8Array(16));
  return folder;
}

test.each(slips)("%s that is not known stops every command at its place", async (_, from, to, meant) => {
  expect(sound.split(from)).toHaveLength(2);
  const text = sound.replace(from, to);
  const folder = folderWith(text);
  let changed = 0;
  while (text[changed] === sound[changed]) changed += 1;
  const line = text.slice(0, changed).split("\n").length;
  const at = new RegExp(`mine\\.yaml:${line}:\\d+: error: `);
  for (const [command = "", ...more] of commands) {
    const { code, out, err } = await slotwright([command, "mine.yaml", ...more], { folder });
    expect(code, `${command} ${more.join(" ")}: ${out}`).toBe(2);
    expect(err, command).toMatch(at);
    if (meant !== "") expect(err, command).toContain(`Did you mean "${meant}"?`);
  }
  const check = await slotwright(["check", "mine.yaml", "--no-bench"], { folder });
  expect(check.code).toBe(1);
  expect(check.out).toMatch(at);
  if (meant !== "") expect(check.out).toContain(`Did you mean ${meant}?`);
});

test("the sound build is refused by none of them", async () => {
  const folder = folderWith(sound);
  for (const [command = "", ...more] of commands) {
    const { out, err } = await slotwright([command, "mine.yaml", ...more], { folder });
    expect(`${out}${err}`, "it says something").toMatch(/\w/);
    expect(err, `${command} ${more.join(" ")}`).not.toMatch(/names something|is called/);
  }
  expect((await slotwright(["check", "mine.yaml", "--no-bench"], { folder })).out).toContain("would hold");
});

test("the same names in options, and the card one thinks of buying, are looked up alike", async () => {
  const cases: readonly (readonly [readonly string[], string])[] = [
    [["--board", "skery-16t"], 'Did you mean "skerry-16t"?'],
    [["--board", "16t"], "Did you mean skerry-16t?"],
    [["--board", "skerry-16t", "--card", "tracer"], "Did you mean tallow-bus-tracer?"],
    [["--board", "skerry-16t", "--have", "R44A"], 'Did you mean "R4A"?'],
    [["--board", "skerry-16t", "--mode", "a", "--mode", "a"], 'Two modes are called "a".'],
    [["--board", "skerry-16t", "--buy", "plover-tape-interfcae"], 'Did you mean "plover-tape-interface"?'],
    [["--board", "skerry-16t", "--fits", "--card", "plover"], "Did you mean plover-tape-interface?"],
  ];
  for (const [args, hint] of cases) {
    const { code, err } = await slotwright(["plan", ...args]);
    expect(code, args.join(" ")).toBe(2);
    expect(err).toContain(hint);
  }
});

/** The small club with the record of one file spoilt. */
function folderWithSpoilt(file: string): string {
  const folder = folderWith(sound);
  const path = join(folder, "data", file);
  writeFileSync(path, readFileSync(path, "utf8").replace("\nname: ", "\nnaem: "));
  return folder;
}

test.each(["boards/tb-1.yaml", "firmware/tm.yaml", "cards/tc.yaml", "parts/t-cable.yaml", "parts/t-sleeve.yaml", "buses/tb.yaml"])(
  "%s that is there and cannot be read is not called missing: the answer is not known, and nothing is burned",
  async (file) => {
    const folder = folderWithSpoilt(file);
    const answer = await slotwright(["plan", "mine.yaml", "--even-so", "--json"], { folder });
    expect(answer.err).not.toContain("is called");
    expect(JSON.parse(answer.out)).toMatchObject({ verdict: "unknown", says: expect.stringContaining(file) });
    const burned = await slotwright(["burn", "mine.yaml", "--dump", "dump.bin", "--even-so"], { folder });
    expect(burned.code).not.toBe(0);
    expect(burned.err).toContain(file);
    expect(burned.err).not.toContain("is called");
  },
);

test("a problem that only a result names and that cannot be read is not called missing", async () => {
  const folder = folderWithSpoilt("conflicts/tx.yaml");
  const { err, out } = await slotwright(["plan", "mine.yaml", "--even-so", "--json"], { folder });
  expect(err).not.toContain("is called");
  expect(JSON.parse(out).kind).toBe("answer");
});
