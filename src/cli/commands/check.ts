// slotwright check: are the records well formed, do they link, do they keep the house rules, does the bench agree with the rules?
import { readFileSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import { explain, explanations, findingOf } from "../../catalogue/index.js";
import { auditBench, type Disagreement } from "../../planning/index.js";
import { type Finding, kinds, nearest, type Place } from "../../records/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import { styled, type Terminal } from "../printing/terminal.js";
import { type Club, counted, fileFromHere, findingText, fromHere, inOrder, openClub } from "../reading/club.js";
import { missingPictures } from "../reading/pictures.js";
import { type ExitCode, UsageError } from "../usage-error.js";

interface CheckOptions extends GlobalOptions {
  readonly bench?: boolean;
  readonly explain?: string;
}

export const registerCheck: Register = (program, setting) => {
  program
    .command("check")
    .argument("[build.yaml...]", "build files from elsewhere, checked as if they were among the club's builds")
    .description("check the records: form, links, house rules, and the tested builds against the rules")
    .option("--explain <code>", "say what a finding means, why it matters and how it is mended: the code in [brackets], or all")
    .option("--no-bench", "leave out the tested builds against the rules (quicker)")
    .action(
      setting.action<CheckOptions>((files, options) => {
        if (options.explain !== undefined) return explainFinding(options.explain, options.json === true, setting.terminal);
        if (files.length > 0) return checkGuests(files, options, setting.terminal);
        const club = openClub(options.data, setting.terminal);
        const findings = allFindings(club, setting.terminal, options.bench !== false);
        return tellCheck(club, findings, options.json === true, setting.terminal);
      }),
    );
};

/** The meaning of one code, or of all of them; no club is opened for it. */
function explainFinding(code: string, asJson: boolean, terminal: Terminal): ExitCode {
  const found = code === "all" ? explanations : [explain(code)].filter((one) => one !== undefined);
  if (found.length === 0) {
    const codes = explanations.map((one) => one.code);
    const near = nearest(code, codes) ?? nearest(`rule-${code}`, codes);
    throw new UsageError(
      `No finding has the code ${code}.`,
      near ? `Did you mean ${near}?` : "See them all with: slotwright check --explain all.",
    );
  }
  if (asJson) {
    terminal.out(json(code === "all" ? found : found[0]));
    return 0;
  }
  const text = ({ code: own, meaning, why, mend }: (typeof found)[number]) =>
    [styled(terminal, "bold", own), `  ${meaning}`, `  Why it matters: ${why}`, `  To mend it: ${mend}`].join("\n");
  terminal.out(found.map(text).join("\n\n"));
  return 0;
}

/** A build that was downloaded or sent in: only what concerns it is told. */
function checkGuests(names: readonly string[], options: CheckOptions, terminal: Terminal): ExitCode {
  const guests = names.map((name) => {
    const path = resolve(terminal.folder, name);
    if (statSync(path, { throwIfNoEntry: false })?.isFile() !== true)
      throw new UsageError(`There is no file ${name}.`, "Name a build file, or none to check the club's own records.");
    return { name, file: `${kinds.build.folder}/${basename(path).replace(/\.yml$/, ".yaml")}`, content: readFileSync(path) };
  });
  const club = openClub(options.data, terminal, guests);
  const named = new Map(guests.map(({ name, file }) => [fileFromHere(file, club.data), name]));
  const renamed = (at: Place): Place => ({ ...at, file: named.get(at.file) ?? at.file });
  const about = allFindings(club, terminal, options.bench !== false)
    .filter((finding) => [finding.at, ...(finding.related ?? []).map((other) => other.at)].some((at) => named.has(at.file)))
    .map(({ related, ...finding }) => ({
      ...finding,
      at: renamed(finding.at),
      ...(related ? { related: related.map((other) => ({ ...other, at: renamed(other.at) })) } : {}),
    }));
  const kept = holds(about);
  if (options.json) terminal.out(json({ data: club.data.shown, holds: kept, files: names, findings: about }));
  else {
    for (const finding of about) terminal.out(`${findingText(finding, terminal)}\n`);
    const says = kept ? `would hold among the builds of ${club.data.shown}` : `${counted(about.length, "finding")} to look at`;
    terminal.out(styled(terminal, "bold", `${names.join(", ")}: ${says}.`));
  }
  return kept ? 0 : 1;
}

/** Findings of reading, linking and, when asked, of the bench against the rules. */
export function allFindings(club: Club, terminal: Terminal, bench: boolean): readonly Finding[] {
  const read = [...club.findings, ...missingPictures(club)];
  if (!bench) return inOrder(read);
  terminal.progress(`holding ${counted(club.catalogue.builds.size, "build")} against the rules`);
  const audit = auditBench(club.catalogue).map((one) => fromHere(disagreement(club, one), club.data));
  terminal.progress("");
  return inOrder([...read, ...audit]);
}

/** The test's place first, then every record the rules went by. A disagreement the test declares is only worth knowing. */
function disagreement(club: Club, one: Disagreement): Finding {
  const [own, ...others] = one.refs;
  return findingOf(club.catalogue, "bench-against-rules", {
    at: own ?? { kind: "build", id: one.build, pointer: "" },
    level: one.declared === undefined ? "warning" : "note",
    says: one.says,
    related: others.map((at) => ({ says: "The rules go by this.", at })),
    hint: one.declared === undefined ? wayOut(one) : `Declared: ${one.declared}`,
  });
}

/** Which records to doubt, and how an unexplained failure becomes a conflict record. */
function wayOut({ suspects, draft, build }: Disagreement): string {
  const doubted = suspects.map((s) => `${kinds[s.kind].folder}/${s.id}`);
  const wrong = `At least one of these records is wrong: ${doubted.join(", ")}. Mend it, or say in open_question why they differ.`;
  return draft ? `${wrong} To write down the conflict it shows: slotwright new conflict --from-build ${build}` : wrong;
}

/** Errors and warnings are findings; a note is only worth knowing. */
export function holds(findings: readonly Finding[]): boolean {
  return findings.every((finding) => finding.level === "note");
}

export function tellCheck(club: Club, findings: readonly Finding[], asJson: boolean, terminal: Terminal): ExitCode {
  const kept = holds(findings);
  if (asJson) {
    terminal.out(
      json({ data: club.data.shown, holds: kept, records: countByKind(club), files: club.records.length + club.failed.length, findings }),
    );
    return kept ? 0 : 1;
  }
  for (const finding of findings) terminal.out(`${findingText(finding, terminal)}\n`);
  const count = (level: Finding["level"]) => findings.filter((finding) => finding.level === level).length;
  const records = `${counted(club.records.length, "record")} in ${club.data.shown}`;
  const unread = club.failed.length > 0 ? `, ${counted(club.failed.length, "file")} that could not be read` : "";
  const notes = count("note") > 0 ? `, ${counted(count("note"), "note")}` : "";
  const summary = kept
    ? `${records}: everything holds${notes}.`
    : `${records}${unread}: ${counted(count("error"), "error")}, ${counted(count("warning"), "warning")}${notes}.`;
  terminal.out(styled(terminal, "bold", summary));
  if (!kept) terminal.out("What a code in [brackets] means and how it is mended: slotwright check --explain <code>");
  return kept ? 0 : 1;
}

function countByKind(club: Club): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const kind of Object.keys(kinds)) counts[kind] = club.records.filter((loaded) => loaded.kind === kind).length;
  return counts;
}
