// The problem file and `npm run solve`: the worked example of DEVELOPERS.md, every task on it, and what a bad file is told.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { runSolve } from "../../src/cli/commands/solve.js";
import { readProblemFile } from "../../src/cli/reading/problem-file.js";

const example = fileURLToPath(new URL("fixtures/workshop.json", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "solve-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(args: readonly string[]): { code: number; out: string; err: string } {
  const lines = { out: [] as string[], err: [] as string[] };
  const code = runSolve(
    args,
    (text) => lines.out.push(text),
    (text) => lines.err.push(text),
  );
  return { code, out: lines.out.join("\n"), err: lines.err.join("\n") };
}

const answer = (...args: string[]) => {
  const { code, out } = run([example, "--task", ...args]);
  return { code, ...(JSON.parse(out) as Record<string, unknown>) };
};

describe("the worked example", () => {
  test("stands in DEVELOPERS.md as it stands in the fixture", () => {
    const guide = readFileSync(fileURLToPath(new URL("../../DEVELOPERS.md", import.meta.url)), "utf8");
    const blocks = [...guide.matchAll(/```json\n([\s\S]*?)```/g)].map((m) => m[1]!.trim());
    expect(blocks).toContain(readFileSync(example, "utf8").trim());
  });

  test("all choices together: none; why, and what to give up", () => {
    expect(answer("decide")).toEqual({ code: 1, task: "decide", kind: "none" });
    expect(answer("count")).toEqual({ code: 1, task: "count", count: "0", exact: true });
    expect(answer("reasons")).toEqual({ code: 0, task: "reasons", sets: [["red turns", "late"]], complete: true });
    expect(answer("repairs")).toEqual({ code: 0, task: "repairs", sets: [["red turns"], ["late"]], complete: true });
    expect(answer("explain")).toEqual({
      code: 0,
      task: "explain",
      kind: "found",
      ids: ["lathe needs day 2"],
      minimal: true,
      others: "no",
    });
  });

  test("without the late choice: solutions, possible values, the cheapest", () => {
    const file = JSON.parse(readFileSync(example, "utf8"));
    file.choices = file.choices.filter((c: { id: string }) => c.id !== "late");
    const path = join(folder, "early.json");
    writeFileSync(path, JSON.stringify(file));
    const ask = (...args: string[]) => JSON.parse(run([path, "--task", ...args]).out);
    const only = { "red bench": "lathe", "blue bench": "mill", day: 2 };
    expect(ask("decide")).toEqual({ task: "decide", kind: "found", solution: only });
    expect(ask("list")).toEqual({ task: "list", solutions: [only], complete: true });
    expect(ask("count")).toEqual({ task: "count", count: "1", exact: true });
    expect(ask("possible").values).toEqual({ "red bench": ["lathe"], "blue bench": ["mill"], day: [2] });
    expect(ask("cheapest")).toEqual({ task: "cheapest", solutions: [{ cost: [2], solution: only }], proven: true });
  });

  test("too few steps: said so, exit code 1", () => {
    const path = join(folder, "open.json");
    const names = Array.from({ length: 12 }, (_, i) => `v${i}`);
    writeFileSync(path, JSON.stringify({ variables: Object.fromEntries(names.map((n) => [n, { from: 1, to: 3 }])) }));
    expect(JSON.parse(run([path, "--steps", "3"]).out)).toEqual({ task: "decide", kind: "stopped" });
    expect(run([path, "--steps", "3"]).code).toBe(1);
    expect(JSON.parse(run([path, "--task", "count"]).out)).toEqual({ task: "count", count: "531441", exact: true });
  });
});

describe("a bad file is told what and where", () => {
  const mistakes: readonly (readonly [text: string, says: RegExp])[] = [
    [
      '{ "variables": { "a": [1, 2] },\n  "rules": [{ "kind": "unary", "variable": "b", "values": [1] }] }',
      /^2:44 there is no variable "b"$/,
    ],
    ['{ "variables": { "a": [1, 2] },\n  "rules": [{ "kind": "unary", "variable": "a",\n "values": [3] }] }', /^3:13 "a" has no value 3$/],
    [
      '{ "variables": { "a": [1, 2] }, "rule": [] }',
      /^1:33 the problem file has no field "rule"; it may have variables, rules, choices, costs, project$/,
    ],
    ['{ "variables": { "a": [1, 2] }, "rules": [{ "kind": "never" }] }', /^1:53 unknown rule kind "never"; known are /],
    [
      '{ "variables": { "a": [1, 2], "b": [1, 2] }, "rules": [{ "kind": "table", "variables": ["a", "b"], "rows": [[1]] }] }',
      /a row has 1 values for 2 variables$/,
    ],
    ['{ "variables": { "a": [] } }', /variable "a" has no value to take$/],
    ['{ "variables": { "a": [1, 1] } }', /variable "a" lists a value twice$/],
    [
      '{ "variables": { "a": ["x"] }, "rules": [{ "kind": "linear", "terms": { "a": 2 }, "max": 1 }] }',
      /are not all numbers; give a list of weights$/,
    ],
    ['{ "variables": { "a": [1, 2] }, "rules": [{ "kind": "forbid" }] }', /a rule of kind "forbid" lacks "literals"$/],
    ["[1, 2]", /^1:1 the problem file must be an object$/],
    ['{ "variables": { "a": [1, 2] }', /^1:\d+ /],
    ["", /the problem file must be an object$/],
  ];
  test.each(mistakes)("%s", (text, says) => {
    const read = readProblemFile(text);
    expect(read.kind).toBe("bad");
    if (read.kind === "bad") expect(read.mistakes[0]).toMatch(says);
    const path = join(folder, "bad.json");
    writeFileSync(path, text);
    const { code, err, out } = run([path]);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(/bad\.json:\d+:\d+: /);
  });

  test("wrong use: no file, a missing file, an unknown task", () => {
    expect(run([]).code).toBe(2);
    expect(run([join(folder, "nowhere.json")])).toEqual({
      code: 2,
      out: "",
      err: `${join(folder, "nowhere.json")}: cannot be read. Give the path of a problem file.`,
    });
    expect(run([example, "--task", "guess"]).code).toBe(2);
    expect(run(["--help"]).code).toBe(0);
  });
});
