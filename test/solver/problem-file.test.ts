// The problem file and `npm run solve`: the worked example of the solver's README, every task on it, and what a bad file is told.
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
  test("stands in the README as it stands in the fixture", () => {
    const guide = readFileSync(fileURLToPath(new URL("../../src/solver/README.md", import.meta.url)), "utf8");
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

  test("exit code 1 says which kind of no it is", () => {
    const path = join(folder, "kinds.json");
    const kinds = (file: object, ...args: string[]) => {
      writeFileSync(path, JSON.stringify(file));
      const { code, err } = run([path, ...args]);
      return { code, err };
    };
    const open = { variables: { a: [1, 2], b: [1, 2] }, choices: [{ id: "one", rules: [] }] };
    const shut = { ...open, rules: [{ kind: "unary", variable: "a", values: [] }] };
    const noReason = { code: 1, err: "There is a solution with all choices, so there is no reason to give." };
    const exhausted = { code: 1, err: "The steps ran out before the answer was proven. Give more with --steps." };
    expect(kinds(open, "--task", "reasons")).toEqual(noReason);
    expect(kinds(open, "--task", "explain")).toEqual(noReason);
    expect(kinds(open, "--task", "repairs")).toEqual({ code: 0, err: "" });
    expect(kinds(open, "--steps", "0")).toEqual(exhausted);
    expect(kinds(open, "--task", "count", "--steps", "0")).toEqual(exhausted);
    expect(kinds(open, "--task", "reasons", "--steps", "0")).toEqual(exhausted);
    expect(kinds(shut)).toEqual({ code: 1, err: "There is no solution. --task reasons or --task explain says why." });
    expect(kinds(shut, "--task", "repairs").err).toBe(
      "There is no solution even without the choices. --task explain names the rules that clash.",
    );
  });

  test("names that look like numbers, or like what objects have of their own, are names", () => {
    const path = join(folder, "names.json");
    writeFileSync(
      path,
      '{"variables": {"2": [1, 2], "__proto__": [1, 2], "constructor": [1]}, "rules": [{"kind": "unary", "variable": 2, "values": 2}]}',
    );
    expect(JSON.parse(run([path, "--task", "count"]).out)).toEqual({ task: "count", count: "2", exact: true });
    writeFileSync(path, '{"variables": {"a": [1]}, "rules": [{"kind": "unary", "variable": "constructor", "values": 2}]}');
    expect(run([path]).err).toMatch(/:1:67: there is no variable "constructor"$/);
  });

  test("a table of 100,000 rows is read, and a mistake in its last row has its place", () => {
    const path = join(folder, "rows.json");
    const rows = Array.from({ length: 100_000 }, (_, i) => `[${i % 50},${(i * 7) % 50},${(i * i) % 50}]`);
    const file = (last: string) =>
      `{"variables": {"a": {"from": 0, "to": 49}, "b": {"from": 0, "to": 49}, "c": {"from": 0, "to": 49}},
"rules": [{"kind": "table", "variables": ["a", "b", "c"], "rows": [
${[...rows, last].join(",\n")}]}]}`;
    writeFileSync(path, file("[1,2,3]"));
    const distinct = new Set([...rows, "[1,2,3]"]);
    expect(JSON.parse(run([path, "--task", "count"]).out)).toEqual({ task: "count", count: String(distinct.size), exact: true });
    writeFileSync(path, file("[1,2,50]"));
    expect(run([path]).err).toMatch(/:100003:6: "c" has no value 50$/);
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
    ['{ "variables": { "a": [12345678901234567890, 1] } }', /^1:24 the number 12345678901234567890 cannot be held exactly; /],
    ['{ "variables": { "a": [1, 2] },\n"costs": [{ "a": 1e400 }] }', /^2:18 the number 1e400 cannot be held exactly; /],
    ['{ "variables": { "a": [0, 1e-400] } }', /^1:27 the number 1e-400 cannot be held exactly; /],
    [
      '{ "variables": { "a": [1, 2] },\n"costs": [{ "a": [9007199254740991, 1.5] }] }',
      /^2:11 this sum can reach 90071992547409910 in units of 1e-1; sums are exact up to 1000000000000000: use smaller weights or fewer/,
    ],
    ['{ "variables": { "a": [1, 2], "a": [3] } }', /^1:31 "a" stands here twice; keep one of the two$/],
    ['{ "variables": { "a": [1, 2], } }', /^1:31 expected a name in "\.\.\."$/],
    ['{ "variables": { "a": [1 2] } }', /^1:26 expected "," or "\]"$/],
    ['{ "variables": { "a": [01] } }', /^1:25 expected "," or "\]"$/],
    ["{ variables: {} }", /^1:3 expected a name in "\.\.\."$/],
    ['{ "variables": { "a": [1, 2] } } {}', /^1:34 expected the end of the file here$/],
    ['{ "variables": { "a": ["x\ny"] } }', /^1:24 this text holds a line break/],
    ['{ "variables": { "a": [1, 2] }, "choices": [{ "id": null, "rules": [] }] }', /^1:53 an id is a text or a number; /],
    [
      '{ "variables": { "a": [1, 2] }, "choices": [{ "id": "x", "rules": [] },\n{ "rules": [], "id": "x" }] }',
      /^2:22 another choice has the id "x" already; give each its own$/,
    ],
    ['{ "variables": { "a": [1] }, "rules": [{ "id": null, "kind": "unary", "variable": "a", "values": 1 }] }', /^1:48 an id is /],
    ['{ "variables": { "a": [1] }, "rules": [{ "kind": "forbid", "literals": { "b": 1 } }] }', /^1:74 there is no variable "b"$/],
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

  test("wrong use: a limit where there is no list, or no number", () => {
    for (const task of ["decide", "count", "possible", "reasons", "repairs", "explain"]) {
      const { code, out, err } = run([example, "--task", task, "--limit", "5"]);
      expect({ code, out, err }).toEqual({
        code: 2,
        out: "",
        err: `--limit means nothing for --task ${task}. Leave it out, or ask for list or cheapest.`,
      });
    }
    for (const wrong of [
      ["--task", "list", "--limit", "0"],
      ["--task", "list", "--limit", "two"],
      ["--steps", "99999999999999999999"],
    ])
      expect(run([example, ...wrong]).code, wrong.join(" ")).toBe(2);
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
