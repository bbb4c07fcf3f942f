// A club whose names are written like markup, formulas and addresses of scripts: its site shows them as words and nothing else.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import { parse } from "../pages/parse.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const nasty = `<img src=x onerror="alert(1)"></script><script>alert(2)</script>' & "`;
const yaml = JSON.stringify(nasty);
let folder: string;
let out: string;

const records: Readonly<Record<string, string>> = {
  "clubs/club.yaml": `id: club\nname: ${yaml}\nabout: ${yaml}\nlicence: ${yaml}`,
  "buses/bus.yaml": `id: bus\nname: ${yaml}\nmemory_address_bits: 20\nio_address_bits: 16\nedges: [{id: short, name: ${yaml}, fits: [short]}]\ninterrupts: [{id: INT2, trigger: edge, share: never}]\nrails: [{id: "+5", volts: 5}]`,
  "firmware/fw.yaml": `id: fw\nname: ${yaml}\nmaker: ${yaml}\nboards: [{board: board}]\nversions:\n  - {id: R1, image: {size: 64K, crc32: unknown}, changes: ${yaml}}`,
  "boards/board.yaml": `id: board\nname: ${yaml}\nmaker: ${yaml}\nmodel: ${yaml}\nbus: bus\nrevisions: [{id: A, tell: ${yaml}}]\nclock_MHz: 8\nslots: [{id: S1, edge: short, position: 1, longest_mm: 300}]\nfixed: [{name: ${yaml}, io: [{base: 0x60, size: 4}]}]\nrails: [{rail: "+5", limit_A: 9, board_A: 1}]\nfirmware: [fw]\nfirmware_sockets: [{id: IC1, pins: 28, data_width: 8, window: {base: 0xF0000, size: 64K}, wired_for: ${yaml}, slowest_ns: 250}]`,
  "cards/card.yaml": `id: card\nname: ${yaml}\nmaker: ${yaml}\nmodel: "=1+2"\ndoes: [disk]\nbus: bus\nedge: short\nroom: {length_mm: 100, height_mm: 100}\npower: [{rail: "+5", worst_A: {is: unknown, find: ${yaml}}}]\nneeds: {other: [${yaml}]}\nnotes: ${yaml}`,
  "conflicts/problem.yaml": `id: problem\nname: ${yaml}\nclass: heat\nwhen: {cards: [{card: card}]}\neffect: degrades\nloss: ${yaml}\nsymptoms: [${yaml}]\ncause: ${yaml}\nremedies: [{says: ${yaml}, leaves: nothing, costs: jumper}]\nstatus: confirmed\nevidence: [{grade: reported, says: ${yaml}}]`,
  "builds/test.yaml": `id: test\nname: ${yaml}\nboard: board\nrevision: A\ncards: [{card: card, slot: S1}]\nresult: {by: ${yaml}, date: "2024", outcome: worked, symptoms: [${yaml}]}`,
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "slotwright-hostile-"));
  out = join(folder, "out");
  for (const [name, text] of Object.entries(records)) {
    mkdirSync(join(folder, "data", name.split("/")[0]!), { recursive: true });
    writeFileSync(join(folder, "data", name), `${text}\n`);
  }
  execFileSync(
    process.execPath,
    [join(top, "dist", "src", "cli", "main.js"), "site", "--even-so", "--data", join(folder, "data"), "--out", out],
    {
      stdio: "pipe",
    },
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const html = () =>
  readdirSync(out, { recursive: true, encoding: "utf8" })
    .filter((f) => f.endsWith(".html") && !f.startsWith("pagefind"))
    .map((f) => parse(f, readFileSync(join(out, f), "utf8")));

it("is built whole, every record on its page", () => {
  const names = html().map((p) => p.name.replaceAll("\\", "/"));
  for (const wanted of [
    "boards/board.html",
    "cards/card.html",
    "conflicts/problem.html",
    "builds/test.html",
    "firmware/fw.html",
    "buses/bus.html",
  ])
    expect(names).toContain(wanted);
});

it("runs nothing and loads nothing that a name asks for", () => {
  for (const page of html()) {
    expect(page.find("img"), page.name).toEqual([]);
    expect(
      page.find("script").filter((s) => s.text !== "" || !/assets\//.test(s.attributes.src ?? "")),
      page.name,
    ).toEqual([]);
    expect(
      page.all.flatMap((e) => Object.keys(e.attributes)).filter((a) => a.startsWith("on")),
      page.name,
    ).toEqual([]);
  }
});

it("shows the name as it was written", () => {
  const card = html().find((p) => p.name.replaceAll("\\", "/") === "cards/card.html")!;
  expect(card.find("h1")[0]!.text).toBe(nasty.replace(/\s+/g, " ").trim());
});

it("keeps scripts of data and tables for spreadsheets whole", () => {
  const data = readFileSync(join(out, "assets", "search-data.js"), "utf8");
  expect(data).toContain("alert(2)");
  expect(() => new Function(data)).not.toThrow();
  expect(readFileSync(join(out, "data", "cards.csv"), "utf8")).toContain("'=1+2");
});
