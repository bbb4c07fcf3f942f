// slotwright result: a build becomes a tested build without a hole, nothing guessed, nothing written over.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { holesOf, overall } from "../../src/cli/reading/bench-result.js";
import { fillBuild } from "../../src/machine/index.js";
import type { Answer } from "../../src/planning/index.js";
import { type Build, readOne } from "../../src/records/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

let folder: string;
beforeEach(async () => {
  folder = join(freshFolder(), "club");
  await slotwright(["start-club", folder, "--no-parts"]);
});

const whole = `# yaml-language-server: $schema=../schema/build.json
id: mine
name: My machine
board: example-board
revision: A
cards:
  - {card: example-disk-card, slot: S2, settings: {J1: "320"}}
modes:
  - {id: only, firmware: "1.1"}
`;

function written(file: string): Build {
  const { record, findings } = readOne("build", readFileSync(join(folder, file), "utf8"));
  expect(findings).toEqual([]);
  return record as Build;
}

describe("result", () => {
  it("writes the tested build into the club's folder, where check agrees", async () => {
    writeFileSync(join(folder, "mine.yaml"), whole);
    const args = [
      "result",
      "mine.yaml",
      "--by",
      "Ann Other",
      "--date",
      "2024-05-06",
      "--mode",
      "only=worked",
      "--hours",
      "3",
      "--symptom",
      "clicks twice",
    ];
    const { code, out } = await slotwright(args, { folder });
    expect(out).toContain("Wrote data/builds/mine-2024-05-06.yaml.");
    expect(code).toBe(0);
    expect(written("data/builds/mine-2024-05-06.yaml")).toMatchObject({
      id: "mine-2024-05-06",
      name: "My machine, tested 2024-05-06",
      cards: [{ slot: "S2", settings: { J1: "320" } }],
      result: {
        by: "Ann Other",
        date: "2024-05-06",
        outcome: "worked",
        hours: 3,
        symptoms: ["clicks twice"],
        modes: [{ mode: "only", outcome: "worked" }],
      },
    });
    expect((await slotwright(["check"], { folder })).code).toBe(0);
    const plan = JSON.parse((await slotwright(["plan", "mine.yaml", "--json"], { folder })).out) as Answer;
    expect(plan.combinations[0]?.evidence).toBe("bench");
  });

  it("names the holes of a build that leaves something open", async () => {
    const { code, err } = await slotwright(["result", "example-machine", "--by", "Ann", "--outcome", "worked"], { folder });
    expect(code).toBe(2);
    expect(err).toMatch(/Left open: the board's revision; the firmware version; the slot of example-disk-card; J1 of example-disk-card/);
    expect(err).toContain("--combination");
  });

  it("fills the holes with the combination that was built", async () => {
    const plan = JSON.parse((await slotwright(["plan", "example-machine", "--json"], { folder })).out) as Answer;
    const second = plan.combinations[1]?.cards[0];
    const { code } = await slotwright(
      ["result", "example-machine", "--combination", "2", "--by", "Ann", "--outcome", "worked", "--id", "ours"],
      { folder },
    );
    expect(code).toBe(0);
    expect(written("data/builds/ours.yaml")).toMatchObject({
      revision: "A",
      modes: [{ firmware: "1.1" }],
      cards: [{ slot: second?.slot, settings: second?.settings }],
    });
    const { code: none, err } = await slotwright(
      ["result", "example-machine", "--combination", "99", "--by", "Ann", "--outcome", "worked"],
      { folder },
    );
    expect(none).toBe(2);
    expect(err).toContain("There is no combination 99");
  });

  it("asks a person who is there, and says what is missing when nobody is", async () => {
    writeFileSync(join(folder, "mine.yaml"), whole);
    const asked = await slotwright(["result", "mine.yaml", "--id", "asked"], { folder, answers: ["Ann", "failed"] });
    expect(written("data/builds/asked.yaml").result).toMatchObject({ by: "Ann", outcome: "failed" });
    // It failed and the rules allow it: the new record is a finding at once.
    expect(asked.code).toBe(1);
    expect(asked.out).toContain("bench-against-rules");
    const alone = await slotwright(["result", "mine.yaml"], { folder });
    expect(alone).toMatchObject({ code: 2, err: expect.stringContaining("--by") });
  });

  it("writes over nothing unless told to", async () => {
    writeFileSync(join(folder, "mine.yaml"), whole);
    const args = ["result", "mine.yaml", "--by", "Ann", "--outcome", "worked", "--out", "here.yaml"];
    expect((await slotwright(args, { folder })).code).toBe(0);
    const again = await slotwright(args, { folder });
    expect(again).toMatchObject({ code: 2, err: expect.stringContaining("--replace") });
    expect((await slotwright([...args, "--replace"], { folder })).code).toBe(0);
    expect(readFileSync(join(folder, "mine.yaml"), "utf8")).toBe(whole);
  });

  it.each<[string[], RegExp]>([
    [["--outcome", "great"], /"great" is not an outcome/],
    [["--mode", "only"], /--mode only cannot be read/],
    [["--mode", "other=worked"], /no mode called other/],
    [["--outcome", "worked", "--hours", "many"], /--hours many/],
    [["--outcome", "worked", "--date", "yesterday"], /date/],
    [["--outcome", "worked", "--id", "A B"], /a-b/],
  ])("refuses %j", async (args, says) => {
    writeFileSync(join(folder, "mine.yaml"), whole);
    const { code, err } = await slotwright(["result", "mine.yaml", "--by", "Ann", ...args], { folder });
    expect(code).toBe(2);
    expect(err).toMatch(says);
    expect(existsSync(join(folder, "data", "builds", "mine.yaml"))).toBe(false);
  });
});

describe("parts of it", () => {
  it("judge the modes together", () => {
    expect(overall([])).toBeUndefined();
    expect(overall(["worked", "worked"])).toBe("worked");
    expect(overall(["failed", "failed"])).toBe("failed");
    expect(overall(["worked", "failed"])).toBe("partly");
  });

  it("leave no hole in a build that was filled", async () => {
    const plan = JSON.parse((await slotwright(["plan", "saltmarsh-three-mode-skerry", "--json"])).out) as Answer;
    const build = {
      id: "x",
      name: "X",
      board: "skerry-16t",
      cards: plan.combinations[0]!.cards.map((card) => ({ card: card.card })),
    } as Build;
    const settingsOf = (card: string) => Object.keys(plan.combinations[0]!.cards.find((c) => c.card === card)!.settings);
    expect(holesOf(build, undefined, settingsOf).length).toBeGreaterThan(3);
    const whole = fillBuild(build, plan.combinations[0]!);
    expect(holesOf(whole, undefined, settingsOf)).toEqual([]);
    expect(whole.modes?.map((mode) => mode.firmware)).toEqual(["R6", "R4A", "R5.1"]);
  });
});
