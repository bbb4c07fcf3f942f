// The demo club, read and linked once for the tests of this folder.
import { fileURLToPath } from "node:url";
import { link } from "../../src/catalogue/index.js";
import { readData } from "../../src/cli/folders.js";
import { type Answer, plan } from "../../src/planning/index.js";
import { type Build, readRecords } from "../../src/records/index.js";

const reading = readRecords(
  readData(fileURLToPath(new URL("../../data", import.meta.url))).map(({ file, bytes }) => ({ file, content: bytes })),
);

export const records = reading.records;
export const catalogue = link(reading.records, { failed: reading.failed }).catalogue;

export type Wish = Pick<Build, "board" | "cards"> & Partial<Build>;

/** The planner's answer to a machine described in a few fields; a question it cannot read fails the test. */
export function answerTo(wish: Wish): Answer {
  const answer = plan(catalogue, { id: "wish", name: "Wish", ...wish });
  if (answer.kind !== "answer") throw new Error(answer.faults.map((f) => f.says).join(" "));
  return answer;
}
