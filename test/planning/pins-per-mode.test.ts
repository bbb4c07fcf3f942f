// A question that pins the firmware of one mode and leaves another open, where benches ran machines of both kinds: counts and verdicts
// against the brute-force twin, and no way left out that is better proven than the first one shown.
import { expect, it } from "vitest";
import { gather } from "../../src/catalogue/index.js";
import { grades, plan } from "../../src/planning/index.js";
import type { Build, Loaded } from "../../src/records/index.js";
import { Random } from "../support/solver/random.js";
import { judge } from "./support/checker/index.js";
import { withTests } from "./support/exactly-tested.js";
import { gradeOf } from "./support/grader.js";
import { loadedOf } from "./support/loaded.js";
import { machines, pinnedTo, size, verdictFor } from "./support/twin.js";
import { randomSetup } from "./support/world.js";

const worlds = process.env.LONG ? 3_000 : 200;
const first = Number(process.env.SEED ?? 1);

/** A random club, what was tested in it, and the question. */
function setup(seed: number) {
  const { world, catalogue, build } = randomSetup(seed);
  const random = new Random(seed + 991);
  const named = (build.modes ?? []).map(({ firmware: _, ...mode }) => mode);
  const open: Build = { ...build, modes: Array.from({ length: 2 }, (_, m) => named[m] ?? { id: `n${m}` }) };
  if (size(world, open) > 4_000) return undefined;
  const sound = [...machines(world, open)].filter((m) => judge(world, open, m).bad.length === 0);
  const tested = Array.from({ length: sound.length === 0 ? 0 : random.int(1, 4) }, (_, i): Build => {
    const outcome = random.next() < 0.85 ? "worked" : "failed";
    return { ...pinnedTo(world, open, random.pick(sound)), id: `tested-${i}`, result: { by: "Ada", date: "2019-05", outcome } };
  });
  const versions = [...tested.flatMap((t) => (t.modes ?? []).flatMap((m) => m.firmware ?? [])), random.pick(world.family.versions).id];
  const at = random.int(0, 1);
  const pinned = random.pick(versions);
  const question: Build = { ...open, modes: (open.modes ?? []).map((m, i) => (i === at ? { ...m, firmware: pinned } : m)) };
  const records = [...loadedOf(catalogue), ...tested.map((record): Loaded => ({ kind: "build", record, file: "" }))];
  const judged = [...machines(world, question)].flatMap((machine) => {
    const plain = judge(world, question, machine);
    if (plain.bad.length > 0) return [];
    const benched = withTests(world, question, machine, plain, tested);
    return [
      {
        verdict: verdictFor(benched),
        evidence: grades.indexOf(gradeOf(world, question, machine, tested)),
        outweighed: benched.open.length < plain.open.length,
      },
    ];
  });
  return { catalogue: gather(records), question, judged };
}

it(`a version pinned in one of two modes: as the twin says, in ${worlds} random worlds`, () => {
  const seen = { outweighed: 0, proven: 0, open: 0, workable: 0, conditional: 0, "ruled-out": 0 };
  for (let seed = first; seed < first + worlds; seed++) {
    const told = setup(seed);
    if (!told) continue;
    const { judged } = told;
    const answer = plan(told.catalogue, told.question);
    if (answer.kind !== "answer") throw new Error(answer.faults[0]?.says);
    const of = (verdict: string) => judged.filter((j) => j.verdict === verdict);
    const certain = judged.length - of("unknown").length;
    expect([answer.count, answer.hanging], `seed ${seed}`).toEqual([String(certain), String(of("unknown").length)]);
    const verdict = (["workable", "conditional", "unknown"] as const).find((v) => of(v).length > 0) ?? "ruled-out";
    expect(answer.verdict, `seed ${seed}`).toBe(verdict);
    if (verdict !== "unknown") seen[verdict] += 1;
    if (of("unknown").length > 0) seen.open += 1;
    if (judged.some((j) => j.outweighed)) seen.outweighed += 1;
    if (verdict !== "workable") continue;
    const best = Math.min(...of("workable").map((j) => j.evidence));
    if (best < 3) seen.proven += 1;
    const shown = plan(told.catalogue, told.question, { most: 1, brief: true });
    expect(shown.kind === "answer" && shown.combinations[0]?.evidence, `seed ${seed}`).toBe(grades[best]);
  }
  if (process.env.SHOW) console.log(seen);
  for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(worlds / 100);
});
