// Records with errors: what would answer or publish from them stops, unless it is told to go on even so; and a conflict nobody can read
// makes what it could bear on not known, never better.
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { runInNewContext } from "node:vm";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { openRecords } from "../../src/planner/worker/serve.js";
import type { Answer } from "../../src/planning/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const demo = fileURLToPath(new URL("../../data", import.meta.url));
const question = ["plan", "--board", "skerry-16t", "--revision", "D1", "--firmware", "R6"];
const gannet = ["--card", "gannet-fixed-disk-controller"];

/** As much of the demo club as the questions here are about: its site holds a page of each kind, and is built in seconds. */
const part: Readonly<Record<string, readonly string[]>> = {
  clubs: readdirSync(join(demo, "clubs")),
  buses: ["skb.yaml"],
  boards: ["skerry-16.yaml", "skerry-16t.yaml", "skerry-24.yaml"],
  firmware: ["harbourlight-monitor.yaml", "skerry-monitor.yaml"],
  cards: [
    "avocet-printer-port.yaml",
    "gannet-fixed-disk-controller.yaml",
    "plover-tape-interface.yaml",
    "razorbill-disk-controller.yaml",
    "samphire-network-card.yaml",
    "sandglass-clock.yaml",
  ],
  conflicts: ["gannet-a-hangs-under-r6.yaml"],
  builds: ["everyday-office.yaml", "gannet-a-under-r6.yaml"],
};

function partOfDemo(): string {
  const folder = freshFolder();
  for (const [kind, files] of Object.entries(part))
    for (const file of files) cpSync(join(demo, kind, file), join(folder, "data", kind, file));
  return folder;
}

/** That part with one word of one record changed. */
function spoiled(record: string, from: string, to: string): string {
  const folder = partOfDemo();
  const file = join(folder, "data", record);
  const text = readFileSync(file, "utf8");
  expect(text).toContain(from);
  writeFileSync(file, text.replace(from, to));
  return folder;
}

const conflict = () => spoiled("conflicts/gannet-a-hangs-under-r6.yaml", "effect: blocks", "effect: block");

describe("a confirmed conflict with a typing error", () => {
  it("is all that is wrong", async () => {
    expect((await slotwright(["check"], { folder: partOfDemo() })).code).toBe(0);
  });

  it("stops the answer, with the place and the word that was meant", async () => {
    const { code, out, err } = await slotwright([...question, ...gannet], { folder: conflict() });
    expect([code, out]).toEqual([1, ""]);
    expect(err).toContain("data/conflicts/gannet-a-hangs-under-r6.yaml:10:9");
    expect(err).toContain("--even-so");
  });

  it("leaves the answer not known when told to go on, and names the file", async () => {
    const { code, out } = await slotwright([...question, ...gannet, "--even-so", "--json"], { folder: conflict() });
    const answer = JSON.parse(out) as Answer;
    expect([code, answer.verdict, answer.count]).toEqual([1, "unknown", "0"]);
    expect(answer.unknowns.map((u) => u.says).join()).toContain("conflicts/gannet-a-hangs-under-r6.yaml:10:9");
  });

  it("says nothing of a machine that has not the card it speaks of", async () => {
    const { out } = await slotwright([...question, "--card", "plover-tape-interface", "--even-so", "--json"], { folder: conflict() });
    const { out: before } = await slotwright([...question, "--card", "plover-tape-interface", "--json"], { folder: partOfDemo() });
    expect((JSON.parse(out) as Answer).verdict).toBe((JSON.parse(before) as Answer).verdict);
  });

  it("may speak of any machine when it cannot even be read as YAML", async () => {
    const folder = spoiled("conflicts/gannet-a-hangs-under-r6.yaml", "effect: blocks", "effect: [blocks");
    const { out } = await slotwright([...question, "--card", "plover-tape-interface", "--even-so", "--json"], { folder });
    expect(["unknown", "ruled-out"]).toContain((JSON.parse(out) as Answer).verdict);
  });

  it.each([
    ["site", "_site"],
    ["pocket", "slotwright-pocket.html"],
  ])("stops %s before anything is written", async (command, file) => {
    const folder = conflict();
    const { code, err } = await slotwright([command], { folder });
    expect(code).toBe(1);
    expect(err).toContain("gannet-a-hangs-under-r6.yaml:10:9");
    expect(existsSync(join(folder, file))).toBe(false);
  });
});

describe("a site made even so", () => {
  it("says on every page what could not be read, and gives it to the planner", async () => {
    const folder = conflict();
    const { code } = await slotwright(["site", "--even-so"], { folder });
    expect(code).toBe(0);
    for (const page of ["index.html", "boards/skerry-16t.html", "cards/gannet-fixed-disk-controller.html", "planner.html"])
      expect(readFileSync(join(folder, "_site", page), "utf8"), page).toContain("conflicts/gannet-a-hangs-under-r6.yaml:10");
    const packed = readFileSync(join(folder, "_site", "data", "planner.pack"));
    const catalogue = await openRecords({ url: `data:application/octet-stream;base64,${packed.toString("base64")}` });
    for (const name of ["records", "verdicts"])
      expect(JSON.parse(readFileSync(join(folder, "_site", "data", `${name}.json`), "utf8")).unread, name).toEqual([
        expect.objectContaining({ kind: "conflict", id: "gannet-a-hangs-under-r6", line: 10, column: 9 }),
      ]);
    for (const name of ["records", "verdicts"])
      expect(JSON.parse(readFileSync(join(folder, "_site", "data", `${name}.json`), "utf8")).errors, name).toEqual([
        { file: "conflicts/gannet-a-hangs-under-r6.yaml", line: 10, column: 9, says: expect.any(String) },
      ]);
    for (const name of ["verdicts", "cards", "problems", "tested"]) {
      const [head, ...rows] = readFileSync(join(folder, "_site", "data", `${name}.csv`), "utf8")
        .trimEnd()
        .split("\r\n");
      expect(head, name).toMatch(/,notice$/);
      expect(rows.length, name).toBeGreaterThan(0);
      const untold = rows.filter(
        (row) => !/,"?Made although one record could not be read: conflicts\/gannet-a-hangs-under-r6\.yaml:10:9/.test(row),
      );
      expect(untold, name).toEqual([]);
    }
    expect(readFileSync(join(folder, "_site", "data", "results.atom"), "utf8")).toContain("<subtitle>Made although one record");
    const htmls = readdirSync(join(folder, "_site"), { recursive: true, encoding: "utf8" }).filter(
      (name) => name.endsWith(".html") && !name.startsWith("pagefind"),
    );
    const silent = htmls.filter((name) => !readFileSync(join(folder, "_site", name), "utf8").includes('class="notice"'));
    const folders = new Set(htmls.map((name) => name.split(sep)[0]));
    expect([...folders]).toEqual(expect.arrayContaining([...Object.keys(part).filter((kind) => kind !== "clubs"), "matrix", "index.html"]));
    expect(silent).toEqual([]);
    expect(catalogue.unread.map((f) => f.id)).toEqual(["gannet-a-hangs-under-r6"]);
  });
});

describe("the single file made even so", () => {
  it("says so above every page, and its solving worker answers what the file could bear on with: not known", async () => {
    const folder = conflict();
    const { code } = await slotwright(["pocket", "--even-so"], { folder });
    expect(code).toBe(0);
    const html = readFileSync(join(folder, "slotwright-pocket.html"), "utf8");
    expect(html).toMatch(/<p class="notice" role="note">Made although one record [^<]*gannet-a-hangs-under-r6\.yaml:10:9[^<]*<\/p><main/);
    const piece = (name: string) =>
      gunzipSync(Buffer.from(new RegExp(`id="piece-${name}">([^<]*)<`).exec(html)?.[1] ?? "", "base64")).toString();
    const ask = workerOf(piece("workers"));
    await ask("open", { records: { text: piece("records") } });
    const card = "gannet-fixed-disk-controller";
    const build = { id: "q", name: "q", board: "skerry-16t", revision: "D1", cards: [{ card }], modes: [{ id: "only", firmware: "R6" }] };
    const { answer } = (await ask("answer", { build, most_ms: 20_000 })) as { answer: Answer };
    expect([answer.verdict, answer.count, answer.unread.map((u) => [u.id, u.bears])]).toEqual([
      "unknown",
      "0",
      [["gannet-a-hangs-under-r6", true]],
    ]);
  });
});

/** The bundled worker as a browser runs it, asked one thing after another. */
function workerOf(script: string): (task: string, asks: unknown) => Promise<unknown> {
  const replies: ((reply: { gives?: unknown; failed?: string }) => void)[] = [];
  const self = {
    onmessage: undefined as undefined | ((event: { data: unknown }) => void),
    postMessage: (reply: object) => replies.shift()?.(reply),
  };
  runInNewContext(script, { self, performance, TextDecoder, TextEncoder, URL, structuredClone });
  return (task, asks) =>
    new Promise((done, fail) => {
      replies.push(({ gives, failed }) => (failed === undefined ? done(gives) : fail(new Error(failed))));
      self.onmessage?.({ data: { number: 1, task, asks } });
    });
}

describe("answers given even so", () => {
  it("carry the notice in text and JSON, whatever is asked", async () => {
    const folder = conflict();
    const asked = ["--board", "skerry-16t", "--revision", "D1", "--even-so"];
    for (const more of [
      ["--card", "plover-tape-interface"],
      ["--buy", "plover-tape-interface"],
      ["--fits", "0"],
    ]) {
      const { out } = await slotwright(["plan", ...asked, ...more], { folder });
      expect(out, more.join(" ")).toMatch(/^Made although one record could not be read: conflicts\/gannet-a-hangs-under-r6\.yaml:10:9\./);
      const told = JSON.parse((await slotwright(["plan", ...asked, ...more, "--json"], { folder })).out);
      expect([told.unread.length, told.errors.length], more.join(" ")).toEqual([1, 1]);
    }
  });

  it("are not known where a problem names a card that no record has, and say where", async () => {
    const folder = spoiled("conflicts/gannet-a-hangs-under-r6.yaml", "card: gannet-fixed", "card: ganet-fixed");
    const { code, out } = await slotwright([...question, ...gannet, "--even-so", "--json"], { folder });
    const answer = JSON.parse(out) as Answer;
    expect([code, answer.verdict, answer.count]).toEqual([1, "unknown", "0"]);
    expect(answer.unknowns.map((u) => u.says).join(" ")).toMatch(/conflicts\/gannet-a-hangs-under-r6\.yaml:9:\d+ could not be read/);
  });

  it("tell of errors in records that were read all the same", async () => {
    const folder = spoiled("builds/everyday-office.yaml", "board: skerry-16t", "board: skerry-61t");
    const { out } = await slotwright([...question, ...gannet, "--even-so"], { folder });
    expect(out).toMatch(/^The records have [a-z]+ errors?: builds\/everyday-office\.yaml:\d+:\d+/);
  });

  it("names a build that could not be read, and does not say that there is none", async () => {
    const folder = spoiled("builds/everyday-office.yaml", "board:", "bord:");
    const { code, err } = await slotwright(["plan", "everyday-office", "--even-so"], { folder });
    expect([code, err.includes("no build of that id")]).toEqual([2, false]);
    expect(err).toMatch(/The build everyday-office could not be read \(builds\/everyday-office\.yaml:\d+:\d+\)/);
  });
});

describe("a card with a typing error", () => {
  it("is not said to be missing", async () => {
    const folder = spoiled("cards/gannet-fixed-disk-controller.yaml", "edge: ", "egde: ");
    const stopped = await slotwright([...question, ...gannet], { folder });
    expect([stopped.code, stopped.out]).toEqual([1, ""]);
    const even = [...question, ...gannet, "--even-so"];
    const { code, out, err } = await slotwright(even, { folder });
    expect([code, err.includes("No card is called")]).toEqual([1, false]);
    expect(out).toMatch(
      /^Made although one record could not be read.*Not known\..* cards\/gannet-fixed-disk-controller\.yaml:\d+:\d+ could not be read/s,
    );
    expect(out.replaceAll(/\s+/g, " ")).toContain("Did you mean edge?");
    const answer = JSON.parse((await slotwright([...even, "--json"], { folder })).out) as Answer;
    expect([answer.verdict, answer.unread.map((u) => [u.kind, u.id, u.bears])]).toEqual([
      "unknown",
      [["card", "gannet-fixed-disk-controller", true]],
    ]);
  });
});
