// Reads the published cases beside this file: problem files with their source and what is expected of them.
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type ProblemFile, readProblemFile } from "../../../src/cli/reading/problem-file.js";

const folder = fileURLToPath(new URL("fixtures/", import.meta.url));

export interface Case<Expected> {
  readonly name: string;
  readonly source: string;
  readonly expected: Expected;
  readonly problem: unknown;
}

export function casesOf<Expected>(group: string): Case<Expected>[] {
  return readdirSync(`${folder}${group}`)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => ({ name: name.replace(".json", ""), ...JSON.parse(readFileSync(`${folder}${group}/${name}`, "utf8")) }));
}

export function problemOf(given: Case<unknown>): ProblemFile {
  const read = readProblemFile(JSON.stringify(given.problem));
  if (read.kind === "bad") throw new Error(`${given.name}: ${read.mistakes}`);
  return read.file;
}
