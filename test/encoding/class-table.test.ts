// The table of conflict classes in src/encoding/README.md is true: every class once, with a record of the demo, files and tests that are there.
import { existsSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { conflictClasses } from "../../src/records/index.js";
import { demo } from "../support/demo.js";

const rows = readFileSync("src/encoding/README.md", "utf8")
  .split("| class | found by | in the demo | test |")[1]!
  .split("\n\n")[0]!
  .split("\n")
  .filter((line) => line.startsWith("| ") && !line.startsWith("| ---"))
  .map((line) => line.split("|").map((cell) => cell.trim()));
const quoted = (cell: string) => [...cell.matchAll(/`([^`]+)`/g)].map((m) => m[1]!);

it("names every class once, in the order of the schema", () => {
  expect(rows.map((r) => r[1])).toEqual([...conflictClasses]);
});

it.each(rows.map((r) => [r[1]!, r] as const))("%s: its record, its rules and its test are there", (name, [, , by, example, test]) => {
  expect(demo().conflicts.get(quoted(example!)[0]!)?.class).toBe(name);
  for (const file of quoted(by!).filter((q) => q.endsWith(".ts")))
    expect(existsSync(file.startsWith("rules/") ? `src/encoding/${file}` : `src/${file}`), file).toBe(true);
  const at = `test/${quoted(test!)[0]!}`;
  expect(existsSync(at) || existsSync(`${at}.test.ts`), at).toBe(true);
});
