// Linking: one id one record, references to unreadable records, exceptions that expire.
import { describe, expect, test } from "vitest";
import { link } from "../../src/catalogue/index.js";
import { formatFinding, readRecords, writeRecord } from "../../src/records/index.js";
import { linkClub, type TestClub, testClub } from "../support/club.js";
import { sample } from "../support/samples.js";

const told = (club: TestClub, today?: string) => linkClub(club, today).findings.map(formatFinding).join("\n\n");

test("two files with one id: the first is read, both are named", () => {
  const [club] = sample("club");
  const text = writeRecord("club", club!);
  const reading = readRecords([
    { file: "clubs/a.yaml", content: text },
    { file: "clubs/testers.yaml", content: text.replace("They test.", "They test too.") },
  ]);
  const { catalogue, findings } = link(reading.records);
  expect(catalogue.club?.about).toBe("They test.");
  expect(findings.map((f) => [f.code, f.at.file, f.at.text, f.related?.[0]?.at.file])).toEqual([
    ["rule-duplicate-id", "clubs/testers.yaml", "id: testers", "clubs/a.yaml"],
    ["rule-file-name", "clubs/a.yaml", "id: testers", undefined],
  ]);
});

test("a record that could not be read is not missed a second time", () => {
  const [conflict] = sample("conflict");
  const files = [
    { file: "conflicts/tx.yaml", content: writeRecord("conflict", conflict!) },
    { file: "cards/tc.yaml", content: "id: [\n" },
  ];
  const reading = readRecords(files);
  expect(reading.findings.map((f) => f.code)).toEqual(["yaml-syntax"]);
  const dangling = link(reading.records, { failed: reading.failed }).findings.map((f) => f.says);
  expect(dangling).toEqual(["There is no board tb-1.", "There is no firmware tm."]);
});

test("the order of files changes no finding", () => {
  const club = testClub();
  club.card.tc!.edge = "lang";
  club.build.tbd!.revision = "Z";
  const forward = linkClub(club).findings;
  const turned = testClub();
  for (const kind of ["card", "build", "part"] as const) turned[kind] = Object.fromEntries(Object.entries(club[kind]).reverse()) as never;
  expect(linkClub(turned).findings).toEqual(forward);
  expect(forward.length).toBeGreaterThan(1);
});

describe("exceptions", () => {
  const allowed = (rule: string, until?: string) => {
    const club = testClub();
    delete club.conflict.tx!.settle;
    club.conflict.tx!.allow = [{ rule, reason: "The tracer is on loan until spring.", ...(until === undefined ? {} : { until }) }];
    return club;
  };

  test("an allowed breach is not told", () => {
    expect(told(allowed("settle-named"))).toBe("");
    expect(told(allowed("settle-named", "2000-01"), "2000-01-31")).toBe("");
  });

  test("past its day the breach is told again, with the exception", () => {
    expect(told(allowed("settle-named", "2000-01"), "2000-02-01")).toBe(
      [
        "conflicts/tx.yaml:32:9: error: The conflict is suspected, but nothing says how to settle it. [rule-settle-named]",
        "   32 | status: suspected",
        "      |         ^^^^^^^^^",
        "    see conflicts/tx.yaml:14:12: It was allowed until 2000-01: The tracer is on loan until spring.",
        "       14 |     until: 2000-01",
        "          |            ^^^^^^^",
        "    next: Add settle: what to try, and what would be seen either way.",
      ].join("\n"),
    );
  });

  test("no longer needed, it is told itself", () => {
    const club = testClub();
    club.conflict.tx!.allow = [{ rule: "settle-named", reason: "Once." }];
    expect(told(club)).toContain(
      "error: The exception to settle-named is no longer needed: the record keeps the rule. [rule-stale-exception]",
    );
  });

  test("to a rule there is not, with the near one", () => {
    const text = told(allowed("setle-named"));
    expect(text).toContain("There is no house rule setle-named, so there can be no exception to it. [rule-stale-exception]");
    expect(text).toContain("next: Did you mean settle-named?");
    expect(text, "the breach itself is told too").toContain("[rule-settle-named]");
  });
});
