// How sure an answer is: the weakest link of cards, pairs and the whole; testers and dates; what comes near and is never counted.
import { describe, expect, it } from "vitest";
import { cell, cellAnswer, plan } from "../../src/planning/index.js";
import type { Build, Source } from "../../src/records/index.js";
import { asked, board, card, type Records, smallClub, tested } from "./support/small-club.js";

const a = { card: "a", slot: "S1" } as const;
const b = { card: "b", slot: "S2" } as const;
const c = { card: "c", slot: "S3" } as const;
const best = (records: Records, cards: Parameters<typeof asked>[1], more?: Partial<Build>) =>
  asked(smallClub(records), cards, more).combinations[0]!;
const links = (x: ReturnType<typeof best>) => x.rests.map((r) => `${r.link} ${r.grade}`);

describe("the weakest link", () => {
  it("is a card nobody tested", () => {
    const x = best({ builds: [tested("one", [a])] }, [a, b]);
    expect([x.verdict, x.evidence]).toEqual(["workable", "inferred"]);
    expect(links(x)).toEqual(["card inferred", "pair inferred", "card bench"]);
  });
  it("is a pair that never ran together, though each card was tested", () => {
    const x = best({ builds: [tested("one", [a]), tested("two", [b])] }, [a, b]);
    expect([x.evidence, links(x)]).toEqual(["inferred", ["pair inferred", "card bench", "card bench"]]);
  });
  it("is the whole, though every pair was tested", () => {
    const x = best({ builds: [tested("ab", [a, b]), tested("ac", [a, c]), tested("bc", [b, c])] }, [a, b, c]);
    expect(links(x)).toEqual(["whole inferred", ...Array(3).fill("card bench"), ...Array(3).fill("pair bench")].sort(byGrade));
    expect(x.evidence).toBe("inferred");
  });
  it("is the bench itself when one build had it all", () => {
    const x = best({ builds: [tested("abc", [a, b, c])] }, [a, b, c]);
    expect(x.evidence).toBe("bench");
    expect(new Set(x.rests.flatMap((r) => r.refs.map((q) => q.id)))).toEqual(new Set(["abc"]));
  });
  it("of two copies is judged copy by copy", () => {
    const [first, second] = [
      { card: "a", as: "a1", slot: "S1" },
      { card: "a", as: "a2", slot: "S2" },
    ] as const;
    expect(best({ builds: [tested("one", [a])] }, [first, second]).evidence).toBe("inferred");
    expect(best({ builds: [tested("both", [first, second])] }, [first, second]).evidence).toBe("bench");
  });
  it("over several modes is the weakest mode", () => {
    const modes = [
      { id: "m1", firmware: "V1" },
      { id: "m2", firmware: "V2" },
    ];
    const x = best({ builds: [tested("one", [a])] }, [a], { modes });
    expect([x.evidence, links(x)]).toEqual(["inferred", ["card inferred", "card bench"]]);
    expect(x.rests[0]!.says).toContain("(m1)");
    expect(best({ builds: [tested("both", [a], { modes })] }, [a], { modes }).evidence).toBe("bench");
  });
});

describe("a way that several tests prove together", () => {
  it("comes first, though a newer test puts the card into another slot", () => {
    const modes = [
      { id: "m1", firmware: "V1" },
      { id: "m2", firmware: "V2" },
    ];
    const under = (id: string, slot: string, firmware: string, date: string) =>
      tested(id, [{ card: "a", slot }], { modes: [{ id: "always", firmware }], result: { by: "Ada", date, outcome: "worked" } });
    const builds = [under("one", "S2", "V1", "2019-05"), under("two", "S2", "V2", "2019-06"), under("newer", "S1", "V1", "2024-01")];
    const x = best({ builds }, [{ card: "a" } as { card: string; slot: string }], { modes });
    expect([x.evidence, x.cards[0]!.slot]).toEqual(["bench", "S2"]);
  });
});

describe("the one test of a machine among many of others", () => {
  const revisions = [
    { id: "1", tell: "t" },
    { id: "2", tell: "t" },
  ];
  const settings = [{ id: "J1", name: "n", by: "jumper" as const, positions: Array.from({ length: 12 }, (_, i) => ({ id: `p${i}` })) }];
  const many = card("a", { revisions, settings });
  const at = (id: string, revision: string, position: string, date: string) =>
    tested(id, [{ card: "a", slot: "S2", revision, settings: { J1: position } } as never], {
      result: { by: "Ada", date, outcome: "worked" },
    });
  const newer = settings[0]!.positions.map(({ id }, i) => at(`newer-${i}`, "2", id, `2024-01-${10 + i}`));
  const question = (revision: string): Build => ({
    id: "q",
    name: "q",
    board: "board",
    cards: [{ card: "a", revision }],
    modes: [{ id: "always", firmware: "V2" }],
  });

  it.each(["1", "2"])("is found, however many newer ones there are of another revision (%s asked)", (revision) => {
    const catalogue = smallClub({ cards: [many], builds: [...newer, at("older", "1", "p7", "2009-05")] });
    const answer = plan(catalogue, question(revision));
    expect(answer.kind === "answer" && answer.combinations[0]?.evidence).toBe("bench");
  });
});

function byGrade(x: string, y: string): number {
  return Number(x.endsWith("bench")) - Number(y.endsWith("bench"));
}

describe("a tested build covers exactly what it had", () => {
  const one = (more: Partial<Build>, cards: Parameters<typeof tested>[1] = [a]) => ({ builds: [tested("one", cards, more)] });
  it.each([
    ["another board revision", one({ revision: "C" }), "tested with revision C, this is D1"],
    ["another firmware", one({ modes: [{ id: "always", firmware: "V3" }] }), "tested with V3"],
    ["another slot", one({}, [{ ...a, slot: "S4" }]), "Card A in S4"],
    ["another setting", one({ cards: [{ ...a, settings: { J1: "y" } }] }), "Card A set otherwise"],
    ["no word on a setting", one({ cards: [{ ...a }] }), "Card A set otherwise"],
  ])("%s is near, and never counted", (_, records, differs) => {
    const x = best(records, [a]);
    expect(x.evidence).toBe("inferred");
    expect(x.nearMatches).toEqual([{ build: "one", differs }]);
  });
  it("another revision of the card is near, and never counted", () => {
    const cards = [card("a", { revisions: ["1", "2"].map((id) => ({ id, tell: "t" })) })];
    const records = { cards, builds: [tested("one", [{ ...a, revision: "1" }])] };
    const x = best(records, [{ ...a, revision: "2" }]);
    expect([x.evidence, x.nearMatches]).toEqual(["inferred", [{ build: "one", differs: "Card A of revision 1" }]]);
    expect(best(records, [{ ...a, revision: "1" }]).evidence).toBe("bench");
  });
  it("as a whole, another amount of memory is near, and never counted", () => {
    const memory = { board: { memory: { options: ["256K", "512K"] } } };
    const records = { ...memory, builds: [tested("one", [a, b, c], { memory: "256K" })] };
    const x = best(records, [a, b, c], { memory: "512K" });
    expect([x.evidence, x.nearMatches]).toEqual(["inferred", [{ build: "one", differs: "tested with 256K of memory" }]]);
    expect(best(records, [a, b, c], { memory: "256K" }).evidence).toBe("bench");
    // Left open, the proven amount is offered first.
    expect(best(records, [a, b, c])).toMatchObject({ evidence: "bench", memory: 256 * 1024 });
  });
  it.each(["failed", "partly"] as const)("that %s proves nothing", (outcome) => {
    const result = { by: "Ada", date: "2019-05", outcome };
    expect(best({ builds: [tested("one", [a], { result })] }, [a])).toMatchObject({ evidence: "inferred", nearMatches: [] });
  });
  it("counts mode by mode: a mode that failed proves nothing, the one that worked does", () => {
    const modes = [
      { id: "m1", firmware: "V1" },
      { id: "m2", firmware: "V2" },
    ];
    const result = {
      by: "Ada",
      date: "2019-05",
      outcome: "partly" as const,
      modes: [
        { mode: "m1", outcome: "failed" as const },
        { mode: "m2", outcome: "worked" as const },
      ],
    };
    const records = { builds: [tested("one", [a], { modes, result })] };
    const under = (v: string) => best(records, [a], { modes: [{ id: "always", firmware: v }] }).evidence;
    expect([under("V1"), under("V2")]).toEqual(["inferred", "bench"]);
  });
});

describe("testers and dates", () => {
  const by = (id: string, who: string, date: string) => tested(id, [a], { result: { by: who, date, outcome: "worked" } });
  const says = (...builds: Build[]) => best({ builds }, [a]).rests[0]!.says;
  it("says who many and when", () => {
    expect(says(by("one", "Ada", "2019-05"))).toContain("by one person, in 2019-05");
    expect(says(by("one", "Ada", "2019-05"), by("two", "Ada", "2021"))).toContain("by one person, last in 2021");
    expect(says(by("one", "Ada", "2019-05"), by("two", "Bea", "2018-01"))).toContain("by 2 people, last in 2019-05");
  });
});

describe("papers", () => {
  const withSource = (kind: Source["kind"], needs: NonNullable<Parameters<typeof card>[1]>["needs"]) =>
    best({ cards: [card("a", { sources: [{ id: "s", kind, says: "Paper" }], ...(needs ? { needs } : {}) })] }, [a]).evidence;
  const span = { firmware: [{ family: "line", from: "V2" }] };
  it.each(["manual", "schematic", "data-sheet", "standard"] as const)("a %s that names the firmware documents it", (kind) => {
    expect(withSource(kind, span)).toBe("documented");
  });
  it.each(["hearsay", "letter", "club-night", "memory"] as const)("%s that names the firmware is a report", (kind) => {
    expect(withSource(kind, span)).toBe("reported");
  });
  it("a paper that names the board documents it; one that names neither says nothing", () => {
    expect(withSource("manual", { boards: [{ board: "board" }] })).toBe("documented");
    expect(withSource("manual", undefined)).toBe("inferred");
  });
  it("the bench weighs more than a paper", () => {
    const cards = [card("a", { sources: [{ id: "s", kind: "manual", says: "Paper" }], needs: span })];
    expect(best({ cards, builds: [tested("one", [a])] }, [a]).evidence).toBe("bench");
  });
});

describe("one function decides", () => {
  it("a cell has the evidence of the best combination, and its answer is the one pages show", () => {
    const catalogue = smallClub({ builds: [tested("one", [a])] });
    for (const revision of board.revisions.map((r) => r.id))
      for (const firmware of ["V1", "V2", "V3"]) {
        const q = { board: "board", revision, family: "line", firmware, card: "a" };
        const [short, long] = [cell(catalogue, q), cellAnswer(catalogue, q)];
        if (long.kind !== "answer") throw new Error("misasked");
        expect([short.verdict, short.evidence, short.says]).toEqual([long.verdict, long.combinations[0]!.evidence, long.says]);
        expect(short.evidence).toBe(revision === "D1" && firmware === "V2" ? "bench" : "inferred");
      }
  });
});

describe("a machine whose modes ran on the bench", () => {
  const versions = Array.from({ length: 24 }, (_, i) => ({ id: `W${i}`, image: { size: "64K", crc32: "unknown" as const } }));
  const off = { enable: { by: "contacts", releases: ["firmware"] } } as const;
  const cards = [
    card("a", { needs: { firmware: [{ family: "line", upTo: "W11" }] }, ...off } as never),
    card("b", { needs: { firmware: [{ family: "line", from: "W12" }] }, ...off } as never),
  ];
  const modes = (first: string | undefined, second: string | undefined) => [
    { id: "m1", cards: ["a"], ...(first ? { firmware: first } : {}) },
    { id: "m2", cards: ["b"], ...(second ? { firmware: second } : {}) },
  ];
  const inSlots = [
    { card: "a", slot: "S1" },
    { card: "b", slot: "S2" },
  ] as const;
  const said = (builds: readonly Build[], first?: string, second?: string) => {
    const answer = plan(smallClub({ firmware: { versions }, cards, builds }), {
      id: "q",
      name: "q",
      board: "board",
      revision: "D1",
      cards: [{ card: "a" }, { card: "b" }],
      modes: modes(first, second),
    });
    if (answer.kind !== "answer") throw new Error("misasked");
    const [best] = answer.combinations;
    return [best?.evidence, best?.modes.map((m) => m.firmware).join()];
  };

  it("is shown first, whichever of its modes the question pins to a version", () => {
    const whole = tested("both", inSlots, { modes: modes("W7", "W19") });
    expect(said([whole], "W7")).toEqual(["bench", "W7,W19"]);
    expect(said([whole], undefined, "W19")).toEqual(["bench", "W7,W19"]);
    expect(said([whole])).toEqual(["bench", "W7,W19"]);
    expect(said([whole], "W3")[0]).toBe("inferred");
  });

  it("is also one whose modes two people tested, each one of them", () => {
    const alone = (id: string, on: string, firmware: string) => tested(id, inSlots, { modes: [{ id: "always", firmware, cards: [on] }] });
    expect(said([alone("one", "a", "W7"), alone("two", "b", "W19")])).toEqual(["bench", "W7,W19"]);
    expect(said([alone("one", "a", "W7"), alone("two", "b", "W19")], "W7")).toEqual(["bench", "W7,W19"]);
  });
});
