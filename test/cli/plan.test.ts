// slotwright plan on the demo club: the headline machine, the impossible wish, questions without a file, wrong use.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Answer } from "../../src/planning/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const headline = "saltmarsh-three-mode-skerry";
const impossible = "tracer-and-disk-one-mode";

describe("an answer", () => {
  it("for the headline machine names its three modes and exits 0", async () => {
    const { code, out } = await slotwright(["plan", headline]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Yes/);
    for (const mode of ["daily", "trace", "tape"]) expect(out).toMatch(new RegExp(`mode ${mode}.*: firmware R`));
    expect(out).toContain("needs a switch");
    expect(out).toContain("How it is switched");
    for (const [mode, version] of [
      ["daily", "R6"],
      ["trace", "R4A"],
      ["tape", "R5\\.1"],
    ])
      expect(out).toMatch(new RegExp(`position \\d: ${mode}, firmware ${version};`));
    expect(out).toMatch(/data\/cards\/[a-z-]+\.yaml:\d+:\d+/);
  });

  it("for a board without a card counts no ways, and asks for cards", async () => {
    const { code, out } = await slotwright(["plan", "--board", "skerry-16t"]);
    expect(code).toBe(0);
    expect(out.split("\n")[0]).toBe("Yes: nothing is known against the board by itself. Choose cards to see whether they work in it.");
  });

  it("as JSON has the fields other programs rely on", async () => {
    const { code, out } = await slotwright(["plan", headline, "--json"]);
    const answer = JSON.parse(out) as Answer;
    expect(code).toBe(0);
    expect(answer.verdict).toMatch(/^(workable|conditional)$/);
    expect(answer.count).toMatch(/^[1-9][0-9]*$/);
    expect(answer.exact).toBe(true);
    const best = answer.combinations[0];
    expect(best?.revision).toBe("D1");
    expect(best?.modes.map((mode) => [mode.id, mode.firmware])).toEqual([
      ["daily", "R6"],
      ["trace", "R4A"],
      ["tape", "R5.1"],
    ]);
    for (const mode of best?.modes ?? []) expect(mode.enabled.length).toBeGreaterThan(0);
    for (const card of best?.cards ?? [])
      expect(card).toMatchObject({ slot: expect.stringMatching(/^S\d$/), settings: expect.any(Object) });
    expect(best).toHaveProperty("evidence");
    expect(best).toHaveProperty("conditions");
    expect(answer.possible.length).toBeGreaterThan(0);
    expect(JSON.parse(out).wiring.kind).toBe("wiring");
    expect(answer.reasons).toEqual([]);
    expect(answer.repairs).toEqual([]);
  });

  it("tells what else the cards need, with its place, in text and in JSON", async () => {
    const asked = ["plan", "--board", "skerry-16t", "--card", "gannet-fixed-disk-controller"];
    const { out } = await slotwright(asked);
    expect(out.replaceAll(/\s+/g, " ")).toMatch(
      /needed besides, for gannet-fixed-disk-controller: A fixed disk with the two-cable interface, and both cables\. \(data\/cards\/gannet-fixed-disk-controller\.yaml:\d+:\d+\)/,
    );
    const answer = JSON.parse((await slotwright([...asked, "--json"])).out) as Answer;
    for (const { alsoNeeded } of answer.combinations)
      expect(alsoNeeded.map((n) => [n.as, n.refs[0]?.pointer])).toEqual([
        ["gannet-fixed-disk-controller", "/needs/other/0"],
        ["gannet-fixed-disk-controller", "/needs/other/1"],
      ]);
  });

  it("claims no list complete that was not searched to its end", async () => {
    const cards = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"].flatMap((card) => ["--card", card]);
    const { out } = await slotwright(["plan", "--board", "skerry-16t", ...cards]);
    const text = out.replaceAll(/\s+/g, " ");
    expect(text).toContain("Two ways and one switch: R4 or R4A with Tallow bus tracer; R5.1 with Gannet fixed-disk controller and Plover");
    expect(text).toContain("No fewer ways with a switch would do.");
    expect(text).not.toContain("These are all the smallest changes");
    // Each pair is excluded by more than the two facts named.
    expect(text).toContain("Other facts rule this out as well.");
    expect(text).not.toContain("These are all the reasons");
  });

  it("for tracer and disk in one mode says why not and what would help, and exits 1", async () => {
    const { code, out } = await slotwright(["plan", impossible]);
    expect(code).toBe(1);
    expect(out).toMatch(/^No\./);
    expect(out).toMatch(/because Tallow bus tracer needs .* up to R4A.* \(data\/cards\/tallow-bus-tracer\.yaml:\d+:\d+\)/s);
    expect(out).toMatch(/because Gannet fixed-disk controller needs .* from R5/);
    expect(out).toContain("Two ways and one switch");
    expect(out).toContain("Leave out Tallow bus tracer");
    const { out: asJson } = await slotwright(["plan", impossible, "--json"]);
    const answer = JSON.parse(asJson) as Answer;
    expect(answer).toMatchObject({ verdict: "ruled-out", count: "0", exact: true });
    expect(answer.reasons.length).toBeGreaterThan(0);
    expect(answer.repairs.map((repair) => repair.kind)).toContain("ways");
  });

  it("tells further combinations by what differs, and in full when asked", async () => {
    const short = await slotwright(["plan", headline]);
    const full = await slotwright(["plan", headline, "--full"]);
    expect(short.out).toMatch(/2\. As 1[^\n]*\n {3}but /);
    expect(full.out).not.toContain("As 1");
    expect(full.out.length).toBeGreaterThan(2 * short.out.length);
  });
});

describe("a question without a file", () => {
  const ask = async (...args: string[]) => JSON.parse((await slotwright(["plan", "--json", ...args])).out) as Answer;

  it("names board and cards", async () => {
    const answer = await ask("--board", "skerry-16t", "--card", "gannet-fixed-disk-controller");
    expect(answer.verdict).not.toBe("ruled-out");
    expect(answer.combinations[0]?.cards.map((card) => card.card)).toEqual(["gannet-fixed-disk-controller"]);
  });

  it("may fix firmware, slot, setting, revision and memory", async () => {
    const card = "gannet-fixed-disk-controller@S4,SW1=CC000";
    const answer = await ask("--board", "skerry-16t", "--revision", "D1", "--memory", "640K", "--firmware", "R6", "--card", card);
    const best = answer.combinations[0];
    expect(best).toMatchObject({ revision: "D1", memory: 640 * 1024 });
    expect(best?.modes[0]?.firmware).toBe("R6");
    expect(best?.cards[0]).toMatchObject({ slot: "S4", slots: ["S4"], settings: { SW1: "CC000" } });
  });

  it("agrees with the same question asked with a file", async () => {
    const folder = freshFolder();
    const file = join(folder, "mine.yaml");
    writeFileSync(
      file,
      "id: mine\nname: Mine\nboard: skerry-16t\ncards:\n  - {card: gannet-fixed-disk-controller}\n  - {card: tallow-bus-tracer}\nmodes:\n  - {id: a, firmware: R4A, cards: [tallow-bus-tracer]}\n  - {id: b, cards: [gannet-fixed-disk-controller]}\n",
    );
    const byFile = await ask(file);
    const byOptions = await ask(
      "--board",
      "skerry-16t",
      "--card",
      "gannet-fixed-disk-controller",
      "--card",
      "tallow-bus-tracer",
      "--mode",
      "a@R4A:tallow-bus-tracer",
      "--mode",
      "b:gannet-fixed-disk-controller",
    );
    expect(byOptions).toEqual(byFile);
    expect(byFile.combinations[0]?.switched).toBe(true);
  });

  it("takes a card with a question mark as on or off, whichever works, and says which", async () => {
    const cards = ["--card", "gannet-fixed-disk-controller", "--card", "tallow-bus-tracer"];
    const modes = ["--mode", "trace@R4A:tallow-bus-tracer,gannet-fixed-disk-controller?", "--mode", "work:gannet-fixed-disk-controller"];
    const answer = await ask("--board", "skerry-16t", ...cards, ...modes);
    expect(answer.taken).toEqual([{ mode: "trace", card: "gannet-fixed-disk-controller", on: false }]);
    const { out } = await slotwright(["plan", "--board", "skerry-16t", ...cards, ...modes]);
    expect(out).toContain("Where it does not matter: gannet-fixed-disk-controller is taken as off in trace.");
  });

  it("counts versions at hand as free", async () => {
    const with4A = await ask("--board", "skerry-16t", "--card", "tallow-bus-tracer", "--have", "R2,R4A");
    expect(["R2", "R4A"]).toContain(with4A.combinations[0]?.modes[0]?.firmware);
  });

  it("may hold two cards of one kind", async () => {
    const answer = await ask("--board", "skerry-16t", "--card", "tallow-bus-tracer", "--card", "tallow-bus-tracer");
    const names =
      answer.verdict === "ruled-out"
        ? answer.reasons.flatMap((r) => r.choices.map((c) => c.id))
        : answer.combinations[0]?.cards.map((c) => c.as);
    expect(JSON.stringify(names)).toContain("tallow-bus-tracer-2");
  });
});

describe("wrong use", () => {
  const wrong = async (args: string[], folder?: string) => {
    const { code, err, out } = await slotwright(["plan", ...args], folder === undefined ? {} : { folder });
    expect(code).toBe(2);
    expect(out).toBe("");
    return err;
  };

  it.each<[string[], RegExp]>([
    [[], /neither a build file nor a board/],
    [["nothing.yaml"], /There is no file nothing\.yaml/],
    [["saltmarsh-three-mode-skery"], /Did you mean saltmarsh-three-mode-skerry\?/],
    [["src"], /src is a folder/],
    [["--board", "skerry-61"], /Did you mean "skerry-16"\?/],
    [["--board", "skerry-16t", "--card", "gannet"], /Did you mean gannet-fixed-disk-controller\?/],
    [["--board", "skerry-16t", "--card", "a@b@c"], /--card a@b@c cannot be read/],
    [["--board", "skerry-16t", "--card", "Gannet"], /The options do not make a build/],
    [["--board", "skerry-16t", "--card", "gannet-fixed-disk-controller@S99"], /S99/],
    [["--board", "skerry-16t", "--firmware", "R9"], /R9/],
    [["--board", "skerry-16t", "--firmware", "R6", "--mode", "a"], /--firmware and --mode were both given/],
    [["--board", "skerry-16t", "--mode", "@R6"], /--mode @R6 cannot be read/],
    [["--board", "skerry-16t", "--memory", "lots"], /The options do not make a build/],
    [[headline, "--board", "skerry-16t"], /--board and a build file were both given/],
    [["--bord", "skerry-16t"], /unknown option '--bord'/],
    [[headline, "--data", "nowhere"], /There is no folder nowhere/],
  ])("%j is told", async (args, says) => {
    expect(await wrong(args)).toMatch(says);
  });

  it("in a build file points at the place", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "bad.yaml"), "id: bad\nname: Bad\nboard: skerry-16t\ncards:\n  - {crd: tallow-bus-tracer}\n");
    const err = await wrong(["bad.yaml"], folder);
    expect(err).toMatch(/bad\.yaml:5:\d+: error: /);
    expect(err).toContain("^");
    writeFileSync(join(folder, "unknown.yaml"), "id: unknown\nname: Unknown\nboard: skerry-16t\ncards:\n  - {card: tallow-bus-trace}\n");
    expect(await wrong(["unknown.yaml"], folder)).toMatch(
      /unknown\.yaml:5:\d+: error: .*tallow-bus-trace.*\n(.*\n)*.*Did you mean "tallow-bus-tracer"\?/,
    );
  });

  it("with --json is told as JSON", async () => {
    const { code, out, err } = await slotwright(["plan", "--json"]);
    expect({ code, err }).toEqual({ code: 2, err: "" });
    expect(JSON.parse(out).error).toHaveProperty("next");
    const mistyped = await slotwright(["plan", "--bord", "x", "--json"]);
    expect(mistyped.code).toBe(2);
    expect(JSON.parse(mistyped.out).error.says).toContain("--bord");
  });

  it("in an empty folder answers from the demo club and says so", async () => {
    const folder = freshFolder();
    mkdirSync(join(folder, "data"));
    const { code, err } = await slotwright(["plan", headline], { folder });
    expect(code).toBe(0);
    expect(err).toContain("the demo club's data");
  });
});
