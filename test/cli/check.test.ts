// slotwright check and the commands that make records: what they say, where they point, and how they exit.
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse, parseDocument } from "yaml";
import { recordForm, typesOf } from "../../src/cli/reading/record-form.js";
import { type Finding, type Kind, kinds } from "../../src/records/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

/** A club of its own, begun by the command itself. */
async function club(...more: string[]): Promise<string> {
  const folder = join(freshFolder(), "club");
  const { code, err } = await slotwright(["start-club", folder, "--no-parts", ...more]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return folder;
}

async function findings(folder: string): Promise<{ code: number; findings: Finding[]; holds: boolean; records: Record<string, number> }> {
  const { code, out } = await slotwright(["check", "--json"], { folder });
  return { code, ...JSON.parse(out) };
}

describe("check", () => {
  it("holds for a new club, with the generic parts and without", async () => {
    const bare = await club();
    const told = await findings(bare);
    expect(told).toMatchObject({ code: 0, holds: true, findings: [] });
    expect(told.records).toMatchObject({ club: 1, board: 1, card: 1, part: 0 });
    const whole = join(freshFolder(), "whole");
    await slotwright(["start-club", whole]);
    const all = await findings(whole);
    expect(all.findings).toEqual([]);
    expect(all.records.part).toBeGreaterThan(25);
    expect(existsSync(join(whole, "data", "parts", "LICENSE.md"))).toBe(true);
  });

  it("points at file, line and column, shows the line with a caret, and says what to do", async () => {
    const folder = await club();
    const card = join(folder, "data", "cards", "example-disk-card.yaml");
    writeFileSync(card, readFileSync(card, "utf8").replace("bus: example-bus", "bus: exampel-bus"));
    const { code, out } = await slotwright(["check"], { folder });
    expect(code).toBe(1);
    expect(out).toMatch(/^data\/cards\/example-disk-card\.yaml:10:6: error: .*exampel-bus/m);
    expect(out).toMatch(/10 \| bus: exampel-bus\n +\| {6}\^+/);
    expect(out).toMatch(/example-bus/);
    expect(out).toMatch(/\d+ records in data: [1-9]\d* errors?, /);
  });

  it("finds a record that names a picture which is not there, or lies elsewhere, at its line", async () => {
    const folder = await club();
    const build = join(folder, "data", "builds", "example-machine.yaml");
    const bare = readFileSync(build, "utf8").replace("  - {card: example-disk-card}", "  - {card: example-disk-card, slot: S1}");
    const told = async (photo: string) => {
      const text = `${bare}revision: A\nresult:\n  by: A member\n  date: 2020-01-01\n  outcome: worked\n  photo: ${photo}\n`;
      writeFileSync(build, text);
      const { code, findings: all } = await findings(folder);
      const line = text.split("\n").findIndex((l) => l.startsWith("  photo:")) + 1;
      return { code, all: all.filter((f) => f.code === "rule-picture-there"), line };
    };
    const missing = await told("photos/lever.png, Maud Stellick");
    expect(missing.code).toBe(1);
    expect(missing.all).toMatchObject([
      {
        says: "There is no file photos/lever.png in the data folder.",
        at: { file: "data/builds/example-machine.yaml", line: missing.line, column: 10 },
        hint: expect.stringContaining("say in words"),
      },
    ]);
    for (const elsewhere of ["pictures/lever.png", "photos/../club.png", "../lever.jpg"])
      expect((await told(elsewhere)).all.map((f) => f.says)).toEqual([`Pictures lie in photos/, and ${elsewhere} does not.`]);
    mkdirSync(join(folder, "data", "photos"));
    writeFileSync(join(folder, "data", "photos", "lever.png"), "");
    for (const fine of ["photos/lever.png", '"Print 12 in the book, Maud Stellick"', "https://example.org/a.png, Maud Stellick"])
      expect((await told(fine)).all).toEqual([]);
  });

  it("reads on after a file that cannot be read, and blames nobody for it", async () => {
    const folder = await club();
    writeFileSync(join(folder, "data", "buses", "example-bus.yaml"), "\u0000\u0001 nonsense");
    const told = await findings(folder);
    expect(told.findings.map((f) => f.at.file)).toEqual(["data/buses/example-bus.yaml"]);
    expect(told.code).toBe(1);
  });

  it("names the places of a club elsewhere as one would open them from here", async () => {
    const folder = await club();
    appendFileSync(join(folder, "data", "cards", "example-disk-card.yaml"), "colour: red\n");
    const { out } = await slotwright(["check", "--data", "club"], { folder: join(folder, "..") });
    expect(out).toMatch(/^club\/data\/cards\/example-disk-card\.yaml:\d+:1: error/m);
  });

  it("reports a test that worked although the rules rule it out, with both places", async () => {
    const folder = await club();
    const build = [
      "# yaml-language-server: $schema=../schema/build.json",
      "id: odd-one",
      "name: The odd one",
      "board: example-board",
      "revision: A",
      "cards:",
      '  - {card: example-disk-card, slot: S1, settings: {J1: "300"}}',
      "modes:",
      '  - {id: only, firmware: "1.0"}',
      "result: {by: Somebody, date: 2024-01-01, outcome: worked}",
      "",
    ].join("\n");
    writeFileSync(join(folder, "data", "builds", "odd-one.yaml"), build);
    const told = await findings(folder);
    const audit = told.findings.find((finding) => finding.code === "rule-bench-against-rules");
    expect(audit).toMatchObject({ level: "warning", at: { file: "data/builds/odd-one.yaml", line: 10 } });
    expect(audit?.related?.map((other) => other.at.file)).toContain("data/cards/example-disk-card.yaml");
    expect(told.code).toBe(1);
    expect((await slotwright(["check", "--no-bench"], { folder })).code).toBe(0);
    writeFileSync(
      join(folder, "data", "builds", "odd-one.yaml"),
      build.replace("outcome: worked", "outcome: worked, open_question: Nobody knows why"),
    );
    expect(await findings(folder)).toMatchObject({ code: 0, holds: true, findings: [{ code: "rule-bench-against-rules", level: "note" }] });
  });

  it("judges a build from elsewhere as if it were among the club's own", async () => {
    const folder = await club();
    const text =
      "# yaml-language-server: $schema=../schema/build.json\nid: sent-in\nname: Sent in\nboard: example-board\ncards:\n  - {card: example-disk-card}\n";
    writeFileSync(join(folder, "sent-in.yaml"), text);
    const good = await slotwright(["check", "sent-in.yaml"], { folder });
    expect(good).toMatchObject({ code: 0, out: "sent-in.yaml: would hold among the builds of data." });
    writeFileSync(join(folder, "sent-in.yaml"), text.replace("disk-card", "dusk-card"));
    const bad = await slotwright(["check", "sent-in.yaml"], { folder });
    expect(bad.code).toBe(1);
    expect(bad.out).toMatch(/^sent-in\.yaml:6:\d+: error: .*example-dusk-card/);
    expect(await slotwright(["check", "gone.yaml"], { folder })).toMatchObject({
      code: 2,
      err: expect.stringContaining("no file gone.yaml"),
    });
  });

  it("follows a link to a file, but not to a folder", async () => {
    const folder = await club();
    const data = join(folder, "data");
    symlinkSync(data, join(data, "cards", "loop"));
    expect((await findings(folder)).code).toBe(0);
  });

  it.each<[string, RegExp]>([
    ["nowhere", /There is no folder nowhere\.[\s\S]*start-club/],
    ["file", /file is a file/],
    ["empty", /empty holds no records/],
  ])("refuses --data %s", async (name, says) => {
    const folder = freshFolder();
    mkdirSync(join(folder, "empty"));
    writeFileSync(join(folder, "file"), "");
    const { code, err } = await slotwright(["check", "--data", name], { folder });
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });
});

describe("start-club", () => {
  it("gives an example machine that the planner answers", async () => {
    const folder = await club("--name", 'The "Old" Irons');
    const { code, out } = await slotwright(["plan", "example-machine", "--json"], { folder });
    expect(code).toBe(0);
    // By hand: release 1.1 alone, two slots, two positions of J1.
    expect(JSON.parse(out)).toMatchObject({ verdict: "workable", count: "4" });
    expect(readdirSync(join(folder, "data", "clubs"))).toEqual(["the-old-irons.yaml"]);
  });

  it("writes over nothing", async () => {
    const folder = await club();
    const { code, err } = await slotwright(["start-club", folder]);
    expect(code).toBe(2);
    expect(err).toContain("not empty");
  });
});

describe("new", () => {
  const forms = (Object.keys(kinds) as Kind[]).flatMap((kind) =>
    (typesOf(kind).length > 0 ? typesOf(kind) : [undefined]).map((type) => [kind, type] as const),
  );

  it.each(forms)("%s %s is a form whose open questions are all that check finds", async (kind, type) => {
    const folder = await club();
    const { code, out } = await slotwright(["new", kind, "first-one", ...(type ? ["--type", type] : [])], { folder });
    expect(code).toBe(0);
    const file = `data/${kinds[kind].folder}/first-one.yaml`;
    expect(out).toContain(file);
    const told = await findings(folder);
    expect(told.code).toBe(1);
    expect(new Set(told.findings.map((finding) => finding.at.file))).toEqual(new Set([file]));
    for (const finding of told.findings) expect(finding.code).toMatch(/^shape-/);
  });

  it.each(forms)("%s %s stays readable when every optional line is opened", (kind, type) => {
    const text = recordForm(kind, "x", type).replace(/#: /g, "");
    expect(parseDocument(text).errors).toEqual([]);
    expect(recordForm(kind, "x", type)).not.toMatch(/undefined|null/);
  });

  it.each(["1234", "0300", "1e5", "true", "null", "plain-one"])("writes the id %s so that it is read as that text", (id) => {
    for (const [kind, type] of forms) expect((parse(recordForm(kind, id, type)) as { id: unknown }).id).toBe(id);
  });

  it("leaves a record that is there alone, and asks for what is missing", async () => {
    const folder = await club();
    const wrong = async (...args: string[]) => {
      const { code, err } = await slotwright(["new", ...args], { folder });
      expect(code).toBe(2);
      return err;
    };
    expect(await wrong("card", "example-disk-card")).toContain("is there already");
    expect(await wrong("card", "Big Card")).toContain("big-card");
    expect(await wrong("crad", "x")).toContain("Did you mean card?");
    expect(await wrong("part", "x")).toContain("--type");
    expect(await wrong("part", "x", "--type", "spring")).toContain("memory");
    expect(await wrong("card", "x", "--type", "switch")).toContain("no types");
    expect(await wrong("card")).toContain("needs an id");
  });

  it("brings the schemas up to date, and will not write into the packaged demo", async () => {
    const folder = await club();
    rmSync(join(folder, "data", "schema"), { recursive: true });
    await slotwright(["new", "card", "x"], { folder });
    expect(readdirSync(join(folder, "data", "schema")).length).toBe(Object.keys(kinds).length);
    const { code, err } = await slotwright(["new", "card", "x"], { folder: freshFolder() });
    expect(code).toBe(2);
    expect(err).toContain("start-club");
  });
});
