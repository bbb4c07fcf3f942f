// Questions people ask about the demo machines, each answered beforehand with pencil and paper from the records.
// The counts are worked out beside each question; they check the planner and the records together.
import { describe, expect, it } from "vitest";
import type { Answer } from "../../src/planning/index.js";
import { answerTo, catalogue, type Wish } from "./demo.js";

const tracer = { card: "tallow-bus-tracer" };
const disk = { card: "gannet-fixed-disk-controller" };
const tape = { card: "plover-tape-interface" };
const only = (firmware: string) => [{ id: "only", firmware }];
const told = (answer: Answer) => answer.reasons.flatMap((r) => r.facts.map((f) => f.says)).join("\n");
const fixes = (answer: Answer) => answer.repairs.map((r) => `${r.says} ${r.count}`);

describe("counts worked out by hand", () => {
  it("tape on one machine: 6 slots x 2 windows x 2 ports x 2 lines x 2 channels", () => {
    const answer = answerTo({ board: "skerry-16t", revision: "D1", memory: "640K", cards: [tape], modes: only("R5.1") });
    expect(answer).toMatchObject({ verdict: "workable", count: "96", exact: true, hanging: "0" });
  });

  it("tracer and tape in two modes on a 16T C: 9 pairs of slots x 3x3 x 2x2x2x2 settings x 2 firmwares x 3 memories", () => {
    // Tracer in S4: tape in S1, S2, S3, S5, S6. Tracer in S5: tape in S1 to S4, since S6 shares its opening. S3 is barred by the skirt.
    const answer = answerTo({
      board: "skerry-16t",
      revision: "C",
      cards: [tracer, tape],
      modes: [
        { id: "trace", cards: ["tallow-bus-tracer"] },
        { id: "tape", cards: ["plover-tape-interface"] },
      ],
    });
    expect(answer).toMatchObject({ verdict: "conditional", count: String(9 * 9 * 16 * 2 * 3), exact: true });
    expect(answer.combinations[0]?.cards.map((c) => [c.card, c.revision])).toContainEqual(["tallow-bus-tracer", "2"]);
    expect(answer.combinations[0]?.conditions.map((c) => c.kind)).toContain("remedy");
  });

  it("two bus masters on a 16T: C and D1 for certain, D2 hangs on a suspected fault of its grant chain", () => {
    // Two placements x 2 ports x (2x3x2 settings) x 2 revisions of the Skua x 5 memory-and-window pairs x 6 firmware-and-line pairs a revision.
    const answer = answerTo({ board: "skerry-16t", cards: [{ card: "lightship-loop-interface" }, { card: "skua-fast-disk-controller" }] });
    const oneRevision = 2 * 2 * 12 * 2 * 5 * 6;
    expect(answer).toMatchObject({ verdict: "workable", count: String(2 * oneRevision), hanging: String(oneRevision) });
  });

  it("a bus master with two megabytes: only the head of the chain, 3x2x3x2 settings x 3 firmwares x 2 revisions", () => {
    const skua = { card: "skua-fast-disk-controller", revision: "A" };
    const answer = answerTo({ board: "skerry-24", memory: "2M", cards: [skua] });
    expect(answer).toMatchObject({ verdict: "conditional", count: String(36 * 3 * 2) });
    expect(new Set(answer.combinations.map((c) => c.cards[0]?.slot))).toEqual(new Set(["S3"]));
  });

  it("disk controller A under R6: 4 slots, 36 settings, a third of them gone with 768K", () => {
    const answer = answerTo({ board: "skerry-16t", cards: [{ ...disk, revision: "A" }], modes: only("R6") });
    expect(answer).toMatchObject({ verdict: "conditional", count: String(2 * 4 * (36 + 36 + 24)) });
    expect(answerTo({ board: "skerry-16t", cards: [disk], modes: only("R6") })).toMatchObject({ verdict: "workable" });
  });

  it("the club's own firmware and a card too long for S1: 4 slots x 3x2x2 settings", () => {
    const answer = answerTo({
      board: "skerry-16",
      revision: "B",
      memory: "512K",
      firmware: "harbourlight-monitor",
      cards: [{ card: "razorbill-disk-controller" }],
      modes: only("H1"),
    });
    expect(answer).toMatchObject({ verdict: "conditional", count: "48" });
    expect(answer.combinations[0]?.conditions.map((c) => c.says)).toEqual(["A minute's wait at each start."]);
  });

  it("an unknown clock limit leaves all 300 ways open: 10 slots-and-links x 15 firmware-and-memory pairs x 2 revisions", () => {
    const answer = answerTo({ board: "skerry-16", cards: [{ card: "jetty-current-loop" }] });
    expect(answer).toMatchObject({ verdict: "unknown", count: "0", hanging: "300" });
    expect(answer.unknowns[0]?.how).toContain("ten minutes");
  });
});

describe("what cannot be, and what would help", () => {
  it("tracer and disk in one mode: two facts, two modes", () => {
    const answer = answerTo({ board: "skerry-16t", cards: [tracer, disk] });
    expect(answer.verdict).toBe("ruled-out");
    expect(answer.reasons).toHaveLength(1);
    expect(answer.reasons[0]?.facts).toHaveLength(2);
    expect(answer.repairs.map((r) => r.kind)).toContain("second-mode");
  });

  it("the weather card on a board without -5 volts", () => {
    const answer = answerTo({ board: "skerry-16t", revision: "D2", cards: [{ card: "weathervane-sensor-card" }] });
    expect(answer.verdict).toBe("ruled-out");
    expect(told(answer)).toContain("-5 V");
    expect(fixes(answer).join("\n")).toMatch(/choose C or D1/);
  });

  it("the tape with too much memory: 96 ways for each of 3 memories on each of 3 revisions once it is less", () => {
    const answer = answerTo({ board: "skerry-16t", memory: "768K", cards: [tape] });
    expect(answer.verdict).toBe("ruled-out");
    expect(fixes(answer)).toContainEqual(expect.stringMatching(/choose 256K, 512K or 640K\. 864$/));
  });

  it("a chain user behind an empty slot: S5 leaves 2 ports x 2 lines x 19 firmware-and-memory pairs", () => {
    const answer = answerTo({ board: "skerry-16t", revision: "D1", cards: [{ card: "lightship-loop-interface", slot: "S4" }] });
    expect(answer.verdict).toBe("ruled-out");
    expect(told(answer)).toContain("an empty slot breaks the grant chain");
    expect(fixes(answer)).toContainEqual(expect.stringMatching(/choose S5\. 76$/));
  });

  it("two bus masters where one slot takes them", () => {
    const answer = answerTo({ board: "skerry-16", cards: [{ card: "lightship-loop-interface" }, { card: "skua-fast-disk-controller" }] });
    expect(answer.verdict).toBe("ruled-out");
    expect(answer.repairs.map((r) => r.kind)).toEqual(["drop", "drop"]);
  });

  it("a card that needs another which the board shuts out: both must go", () => {
    const answer = answerTo({ board: "skerry-24", cards: [{ card: "spindrift-frame-grabber" }, { card: "beacon-high-resolution" }] });
    expect(answer.verdict).toBe("ruled-out");
    expect(answer.reasons).toHaveLength(2);
    expect(answer.repairs.map((r) => r.gives.length)).toEqual([2]);
  });

  it("a card too hungry for one slot", () => {
    const answer = answerTo({ board: "skerry-16", cards: [{ card: "beacon-high-resolution" }] });
    expect(told(answer)).toMatch(/2\.9 A .* one slot gives 2\.5 A/);
  });

  it("two cards pinned to one edge-triggered line", () => {
    const cards: Wish["cards"] = [
      { card: "kittiwake-cartridge-drive", revision: "2", settings: { SW3: "7" } },
      { card: "shelduck-floppy-controller", settings: { J1: "7" } },
    ];
    const answer = answerTo({ board: "skerry-16t", cards });
    expect(answer.verdict).toBe("ruled-out");
    expect(told(answer)).toContain("INT7");
  });
});

describe("what works with the right jumpers", () => {
  it("the headline machine: three modes, pull-ups, tracer of revision 2", () => {
    const headline = catalogue.builds.get("saltmarsh-three-mode-skerry");
    if (headline === undefined) throw new Error("The headline build is gone.");
    const answer = answerTo(headline);
    expect(["workable", "conditional"]).toContain(answer.verdict);
    const best = answer.combinations[0];
    expect(best?.switched).toBe(true);
    expect(best?.cards.find((c) => c.card === "tallow-bus-tracer")).toMatchObject({ revision: "2" });
    expect(["S3", "S4", "S5"]).toContain(best?.cards.find((c) => c.card === "tallow-bus-tracer")?.slot);
  });

  it("sound, network, disk and serial: the factory jumpers clash, others do not", () => {
    const wish = ["reed-warbler-sound", "samphire-network-card", "gannet-fixed-disk-controller", "knot-serial-pair"];
    const pinned = wish.map((card) => ({
      card,
      settings: Object.fromEntries((catalogue.cards.get(card)?.settings ?? []).map((s) => [s.id, s.default ?? ""])),
    }));
    expect(answerTo({ board: "skerry-16t", revision: "D1", cards: pinned }).verdict).toBe("ruled-out");
    expect(answerTo({ board: "skerry-16t", revision: "D1", cards: wish.map((card) => ({ card })) }).verdict).toBe("workable");
  });

  it("cache and paged memory: the planner keeps the cache off the page", () => {
    const answer = answerTo({ board: "skerry-24", cards: [{ card: "turbot-cache-card" }, { card: "marram-memory-board" }] });
    expect(answer.verdict).toBe("workable");
    for (const c of answer.combinations) {
      const set = (card: string) => c.cards.find((x) => x.card === card)?.settings.SW1;
      expect(set("turbot-cache-card") === "main" || set("marram-memory-board") === "off").toBe(true);
    }
  });
});
