// Deletion: over random worlds a fact, a field or a file goes, or a file is spoilt. No verdict gets better by it, no way is gained, and no
// evidence gets higher: what nobody wrote down is not known. Where errors stop every command, there is no answer to compare.
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { link } from "../../src/catalogue/index.js";
import { type Answer, plan } from "../../src/planning/index.js";
import { type Build, kinds, readRecords, writeRecord } from "../../src/records/index.js";
import { type Evidence, evidenceOrder, type Verdict } from "../../src/words/index.js";
import { Random } from "../support/solver/random.js";
import { judge } from "./support/checker/index.js";
import { filesOf, spoil, type TextFile } from "./support/files.js";
import { machines, pinnedTo, size } from "./support/twin.js";
import { randomSetup, type Setup } from "./support/world.js";

const worlds = process.env.LONG ? 10_000 : 500;
const first = Number(process.env.SEED ?? 200_001);

/**
 * Fields that may go unnoticed, by the folder of their record. What is left out there is no figure that a rule lacks but a statement that
 * nobody made, or a limit to one that was made; the field guide says what it then means.
 */
const statements: readonly { readonly field: RegExp; readonly because: string }[] = [
  { field: /slot_step$/, because: "a window that lies at one place in every slot" },
  { field: /^cards needs/, because: "a need nobody wrote down is none; evidence stays inferred" },
  { field: /^cards impossible/, because: "positions that exclude each other are told, like needs" },
  { field: /^cards room\.(slots|opening)$/, because: "one slot and no rear opening, as cards are built" },
  { field: /decoded_bits$/, because: "all address bits, unless the record says otherwise" },
  { field: /interrupts\[\]\.mode$/, because: "as the bus triggers" },
  { field: /\.(revisions|when|when_memory)$/, because: "a limit to a statement; without it the record says more, not less" },
  { field: /^cards enable\.revisions$/, because: "a limit to a statement" },
  { field: /^buses (chain|edges\[\]\.(interrupts|dma)|dma|interrupts\[\]\.also)/, because: "a bus without a chain; all lines on an edge" },
  { field: /^boards slots\[\]\.(opening|interrupts|dma)/, because: "an opening of its own; all lines" },
  { field: /^boards (total_derate|rails\[\]\.derate)/, because: "all of what the supply gives" },
  { field: /^firmware versions\[\]\.(removes|boards|memory_at_least)/, because: "a limit to where the version runs, like needs" },
  { field: /^builds (result|memory|name|as)/, because: "another test was made, not less told of this one" },
];

interface Outcome {
  readonly answer?: Answer;
  /** Findings against what could be read that stop every command. */
  readonly errors: readonly string[];
}

function outcome(files: readonly TextFile[], build: Build, counted: boolean): Outcome {
  const reading = readRecords(files);
  const { catalogue, findings } = link(reading.records, { failed: reading.failed, findings: reading.findings });
  const given = plan(catalogue, build, { brief: !counted });
  // A record that failed to read is judged by the answer, not by the command's refusal.
  const errors = findings.filter((f) => f.level === "error" && f.code.startsWith("rule-")).map((f) => `${f.code} ${f.says}`);
  return given.kind === "answer" ? { answer: given, errors } : { errors };
}

/** The world's files, with a bench's report of one of its machines in most of them. */
function filesWithTest(setup: Setup, random: Random): TextFile[] {
  const files = filesOf(setup);
  const { world, build } = setup;
  if (random.next() < 0.3) return files;
  const machine = random.pick([...machines(world, build)]);
  // A bench that had a machine work which the records rule out is a finding against the records, told as one: without the figure that is
  // wrong, the bench stands alone, and rightly so. Such worlds are left to the tests of that finding.
  const outcome = judge(world, build, machine).bad.length > 0 ? "failed" : random.pick(["worked", "worked", "failed"] as const);
  const { modes, ...pinned } = pinnedTo(world, build, machine);
  const test: Build = { ...pinned, modes: modes!, id: "test", name: "Test", result: { by: "Ada", date: "2019-05", outcome } };
  return [...files, { file: `${kinds.build.folder}/test.yaml`, content: writeRecord("build", test) }];
}

type Path = readonly (string | number)[];

function* fields(value: unknown, path: Path = []): Generator<Path> {
  if (typeof value !== "object" || value === null) return;
  for (const [name, inner] of Object.entries(value)) {
    const here = [...path, Array.isArray(value) ? Number(name) : name];
    if (!Array.isArray(value)) yield here;
    yield* fields(inner, here);
  }
}

const label = (file: string, path: Path) =>
  `${file.split("/")[0]} ${path
    .map((step) => (typeof step === "number" ? "[]" : `.${step}`))
    .join("")
    .slice(1)}`;

interface Change {
  readonly how: string;
  readonly files: readonly TextFile[];
}

/** What is taken away, and what is left of the files; undefined where nothing can be. */
function taken(files: readonly TextFile[], random: Random): Change | undefined {
  const how = random.pick(["field", "field", "field", "fact", "file", "spoil"] as const);
  const things = files.filter(({ file }) => !file.startsWith("conflicts/"));
  if (how === "spoil") {
    const victim = random.pick(files);
    return { how: `spoil ${victim.file.split("/")[0]}`, files: swap(files, victim, spoil(victim.content, random)) };
  }
  if (how === "file") {
    // A problem or a failed test that nobody ever wrote down cannot be missed.
    const victim = random.pick(things.filter(({ content }) => !content.includes("outcome: failed")));
    return { how: `file ${victim.file.split("/")[0]}`, files: files.filter((f) => f !== victim) };
  }
  return without(files, random.pick(things), how, random);
}

/** One of the very facts that the answer rests on is taken away: a clash that can be forgotten is the worst of losses. */
function takenFromReasons(files: readonly TextFile[], answer: Answer, random: Random): Change | undefined {
  const facts = [...answer.reasons.flatMap((r) => r.facts), ...answer.combinations.slice(0, 1).flatMap((c) => c.unknowns)];
  const refs = facts.flatMap((fact) => fact.refs).filter(({ kind }) => kind !== "conflict");
  if (refs.length === 0) return undefined;
  const { kind, id, pointer } = random.pick(refs);
  const victim = files.find(({ file }) => file === `${kinds[kind].folder}/${id}.yaml`);
  return victim && without(files, victim, random.next() < 0.8 ? "field" : "fact", random, pointer);
}

/** The victim without one field at, in or above a place of it; above it only where nothing lies in it. */
function without(files: readonly TextFile[], victim: TextFile, how: "field" | "fact", random: Random, pointer = ""): Change | undefined {
  const record = parse(victim.content) as object;
  const at = (path: Path) => `/${path.join("/")}/`;
  const all = [...fields(record)].filter((path) => !statements.some(({ field }) => field.test(label(victim.file, path))));
  const inside = all.filter((path) => at(path).startsWith(`${pointer}/`));
  const path = random.pick(inside.length > 0 ? inside : all.filter((path) => pointer.startsWith(at(path).slice(0, -1))));
  if (!path) return undefined;
  const holder = path.slice(0, -1).reduce<unknown>((step, name) => (step as Holder)[name], record) as Holder;
  const last = path.at(-1)!;
  if (how === "fact") holder[last] = "unknown";
  else delete holder[last];
  return { how: `${how} ${label(victim.file, path)}`, files: swap(files, victim, stringify(record)) };
}

type Holder = Record<string | number, unknown>;

const swap = (files: readonly TextFile[], victim: TextFile, content: string) => files.map((f) => (f === victim ? { ...f, content } : f));

const rank = (verdict: Verdict) => (verdict === "workable" ? 2 : verdict === "conditional" ? 1 : 0);
const height = (evidence: Evidence) => -evidenceOrder.indexOf(evidence);

function compare(before: Answer, after: Answer, change: string, counted: boolean): void {
  const told = `${change}: ${before.verdict} became ${after.verdict}`;
  expect(rank(after.verdict), told).toBeLessThanOrEqual(rank(before.verdict));
  if (counted && before.exact && after.exact) expect(BigInt(after.count) <= BigInt(before.count), `${told}: more ways`).toBe(true);
  const [was, is] = [before.combinations[0], after.combinations[0]];
  if (was && is && was.verdict === is.verdict)
    expect(height(is.evidence), `${told}: ${was.evidence} became ${is.evidence}`).toBeLessThanOrEqual(height(was.evidence));
}

const misnamed = ({ errors }: Outcome) => errors.filter((e) => e.startsWith("rule-bus-names")).length;

describe("what is taken away", () => {
  it(`makes no answer better in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    const count = (what: string) => {
      seen[what] = (seen[what] ?? 0) + 1;
    };
    for (let seed = first; seed < first + worlds; seed++) {
      const setup = randomSetup(seed);
      if (size(setup.world, setup.build) > 2_000) continue;
      const random = new Random(seed);
      const files = filesWithTest(setup, random);
      // Ways are counted in one world of five: it takes the longest.
      const counted = seed % 5 === 0;
      const before = outcome(files, setup.build, counted);
      const { answer } = before;
      if (!answer) continue;
      // Where the answer is "workable" nothing can get better; where it is not, what stands against it is taken away.
      const changes = [taken(files, random), ...[1, 2, 3].map(() => takenFromReasons(files, answer, random))];
      for (const change of changes) {
        if (!change) continue;
        const after = outcome(change.files, setup.build, counted);
        count(change.how.split(" ")[0]!);
        if (/claims|positions\[\]\.(io|memory|interrupts|dma)|fixed\[\]\.(io|memory|interrupts|dma)/.test(change.how)) count("claims");
        if (!after.answer || after.errors.some((e) => !before.errors.includes(e))) {
          count("stopped");
          continue;
        }
        // A claim of what the bus does not have stops every command; without it the record is put right, not less told.
        if (misnamed(after) < misnamed(before)) {
          count("put right");
          continue;
        }
        compare(answer, after.answer, `seed ${seed}: ${change.how}`, counted);
        if (answer.verdict !== after.answer.verdict) count(`${answer.verdict} became ${after.answer.verdict}`);
        if (answer.combinations[0]?.evidence === "bench") count("tested");
      }
    }
    if (process.env.SHOW) console.log(seen);
    const wanted = ["field", "fact", "file", "spoil", "claims", "tested", "workable became unknown", "ruled-out became unknown"];
    for (const what of wanted) expect(seen[what] ?? 0, what).toBeGreaterThan(worlds / 100);
  });
});
