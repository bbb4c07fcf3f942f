// What `check` passes, `site` builds: ids, revisions and versions whose addresses would meet each other or a page of ours.
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { matrixOf, pageOf, slug } from "../../src/pages/links.js";
import { freshFolder } from "../support/recorder.js";

const main = fileURLToPath(new URL("../../dist/src/cli/main.js", import.meta.url));

it("gives every mark an address of its own, and keeps the plain ones", () => {
  const marks = ["A", "a", "A 1", "A-1", "A  1", "a-1", "+5", "P5", "R/5", "RN5", "R 5 beta", "\u00c4", "\u{1f600}", "\ud83d", "-"];
  expect(new Set(marks.map((mark) => slug(mark).toLowerCase())).size).toBe(marks.length);
  for (const mark of marks) expect(slug(mark)).toMatch(/^[a-z0-9._~-]+$/);
  expect(["R5.1", "D1", "R4A"].map(slug)).toEqual(["r5.1", "d1", "r4a"]);
  expect(matrixOf("skerry-16t", "D1")).toBe("matrix/skerry-16t--d1.html");
});

it("puts no record where a list or a build sheet stands", () => {
  expect(pageOf("card", "index")).not.toBe("cards/index.html");
  expect(pageOf("build", "one-sheet")).not.toBe("builds/one-sheet.html");
  expect(pageOf("card", "tallow")).toBe("cards/tallow.html");
});

it("builds a club that has them all", () => {
  if (!existsSync(main)) throw new Error("Nothing is built: run npm run build first.");
  const folder = freshFolder();
  const slotwright = (...args: string[]) =>
    execFileSync(process.execPath, [main, ...args], { cwd: folder, encoding: "utf8", stdio: "pipe" });
  slotwright("start-club", "club", "--no-parts");
  const data = join(folder, "club", "data");
  const change = (from: string, to: string, changes: Readonly<Record<string, string>>) => {
    let text = readFileSync(join(data, from), "utf8");
    for (const [old, anew] of Object.entries(changes)) {
      expect(text).toContain(old);
      text = text.replace(old, anew);
    }
    writeFileSync(join(data, to), text);
  };
  const card = "cards/example-disk-card.yaml";
  change(card, "cards/index.yaml", { "id: example-disk-card": "id: index", "model: EX-D": "model: EX-I" });
  change(card, "cards/constructor.yaml", { "id: example-disk-card": "id: constructor", "model: EX-D": "model: EX-C" });
  change("builds/example-machine.yaml", "builds/example-sheet.yaml", {
    "id: example-machine": "id: example-sheet",
    "name: Example machine": "name: Second machine",
  });
  change("boards/example-board.yaml", "boards/example-board.yaml", {
    "  - {id: A,": '  - {id: a, tell: a}\n  - {id: "A 1", tell: b}\n  - {id: A-1, tell: c}\n  - {id: A,',
  });
  change("firmware/example-monitor.yaml", "firmware/example-monitor.yaml", { '{id: "1.1",': '{id: "R 5 beta",' });
  change(card, card, { 'from: "1.1"': 'from: "R 5 beta"' });
  for (const other of ["index", "constructor"]) change(`cards/${other}.yaml`, `cards/${other}.yaml`, { 'from: "1.1"': 'from: "R 5 beta"' });
  slotwright("site", "--data", "club", "--out", "out");
  for (const page of ["cards/index.html", "cards/index~.html", "cards/constructor.html", "builds/example-sheet~.html"])
    expect(existsSync(join(folder, "out", page)), page).toBe(true);
  const shown = readFileSync(join(folder, "out", "cards", "constructor.html"), "utf8");
  const [versions] = [...shown.matchAll(/data-versions="([^"]*)"/g)].map((m) => (m[1] ?? "").replaceAll("&quot;", '"'));
  const options = JSON.parse(versions ?? "") as readonly { readonly value: string; readonly text: string }[];
  expect(options.map(({ text }) => text)).toContain("R 5 beta");
  for (const { value } of options) expect(shown).toContain(`id="${value}"`);
});
