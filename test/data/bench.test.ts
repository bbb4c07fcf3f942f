// The club's bench against the rules: where they disagree, somebody has said why, and nobody says so without need.

import { describe, expect, it } from "vitest";
import { auditBench, plan } from "../../src/planning/index.js";
import { type Build, definedFields } from "../../src/records/index.js";
import { planWiring } from "../../src/wiring/index.js";
import { demo } from "../support/demo.js";

const catalogue = demo();

const tested = [...catalogue.builds.values()].filter((b): b is Build & Required<Pick<Build, "result">> => b.result !== undefined);
const audit = auditBench(catalogue);

describe("bench against rules", () => {
  it("disagrees in these machines only, and each says why", () => {
    expect(audit.map((d) => `${d.build}: ${d.kind}${d.declared ? "" : ", undeclared"}`).sort()).toEqual([
      "alias-that-was-not-16t-d2: worked-but-ruled-out",
      "bittern-24-d1: worked-but-ruled-out",
      "plover-under-r5-marrack: worked-but-ruled-out",
      "sprat-start-r2-16-b: failed-but-allowed",
      "ternlet-r6-16t-d2: failed-but-allowed",
      "three-memories-16-c-other-supply: worked-but-ruled-out",
    ]);
  });

  it("keeps no open question that is answered", () => {
    const open = tested.filter((b) => b.result.open_question !== undefined).map((b) => b.id);
    expect(open.filter((id) => !audit.some((d) => d.build === id))).toEqual([]);
  });

  it("never rules out a machine that worked in part", () => {
    const ruledOut = tested
      .filter((b) => b.result.outcome === "partly")
      .filter((b) => {
        const answer = plan(catalogue, b, { brief: true, most: 1 });
        return answer.kind === "misasked" || answer.verdict === "ruled-out";
      });
    expect(ruledOut.map((b) => b.id)).toEqual([]);
  });

  it("calls no machine that failed plainly workable, unless a record or a question explains it", () => {
    const bare = tested.filter((b) => b.result.outcome === "failed" && !b.result.conflicts && !b.result.open_question);
    const workable = bare.filter((b) => {
      const answer = plan(catalogue, b, { brief: true, most: 1 });
      return answer.kind === "misasked" || answer.verdict !== "ruled-out";
    });
    expect(bare.length).toBeGreaterThan(20);
    expect(workable.map((b) => b.id)).toEqual([]);
  });
});

describe("tested builds", () => {
  it("say everything they cover: revision, memory, firmware, slot and every setting", () => {
    const holes = tested.flatMap((b) => {
      const missing = [b.revision === undefined || Array.isArray(b.revision), b.memory === undefined, !b.modes?.every((m) => m.firmware)];
      const cards = b.cards.filter(({ card, revision, slot, settings }) => {
        const record = catalogue.cards.get(card);
        const theirs = (record?.settings ?? []).filter((s) => !s.revisions || (revision !== undefined && s.revisions.includes(revision)));
        return slot === undefined || (record?.revisions && !revision) || theirs.some((s) => settings?.[s.id] === undefined);
      });
      return missing.includes(true) || cards.length > 0 ? [b.id] : [];
    });
    expect(holes).toEqual([]);
  });

  it("come in every outcome, some with faults left open, some from two testers of the same thing", () => {
    const outcomes = tested.map((b) => b.result.outcome);
    for (const outcome of ["worked", "failed", "partly"] as const)
      expect(outcomes.filter((o) => o === outcome).length).toBeGreaterThanOrEqual(5);
    expect(tested.filter((b) => b.result.faults_open).length).toBeGreaterThanOrEqual(10);
    const what = (b: Build) => [b.board, b.revision, b.modes?.map((m) => m.firmware), b.cards.map((c) => c.card).sort()].join(" ");
    const twice = tested.filter((b) => tested.some((o) => o.result.by !== b.result.by && what(o) === what(b)));
    expect(twice.length).toBeGreaterThanOrEqual(4);
  });

  const switched = tested.filter((b) => (b.modes?.length ?? 1) > 1);
  it.each(switched.map((b) => [b.id, b] as const))("%s can be wired as it was built, and the simulation agrees", (_, build) => {
    const answer = plan(catalogue, build);
    const best = answer.kind === "answer" ? answer.combinations[0] : undefined;
    expect(best).toBeDefined();
    const wiring = planWiring(catalogue, best!, definedFields({ switch: build.switch, safest: build.modes?.find((m) => m.safest)?.id }));
    expect(wiring.kind).toBe("wiring");
    if (wiring.kind !== "wiring") return;
    expect(wiring.plan.proof.holds).toBe(true);
    if (build.switch?.device) expect(wiring.plan.device?.part).toBe(build.switch.device);
    if (build.switch?.switch) expect(wiring.plan.switch?.part).toBe(build.switch.switch);
  });
});
