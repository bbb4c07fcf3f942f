// The page of all findings: what each code means, why it matters, how it is mended. From the very data that `check --explain` prints.
import { explanations, rules } from "../catalogue/index.js";
import { type Explanation, readingExplanations } from "../records/index.js";
import { countText, head, type PageHead } from "./common.js";

export interface FindingGroup {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly findings: readonly Explanation[];
}

export interface FindingsPage extends PageHead {
  readonly answer: string;
  readonly groups: readonly FindingGroup[];
}

export const findingsAddress = "data/findings.html";

export function findingsPage(): FindingsPage {
  const ofRules = new Set<string>(rules.map((rule) => `rule-${rule.name}`));
  const groups: readonly FindingGroup[] = [
    {
      id: "reading",
      title: "A file that cannot be read as a record",
      about: "Told of one file alone, at the line and column where it stops. Such a record is missing until it is mended.",
      findings: readingExplanations,
    },
    {
      id: "rules",
      title: "House rules",
      about:
        "What records must be like beyond their form. A record may be allowed to break one for a time: name the rule, without rule-, in its field allow.",
      findings: explanations.filter((e) => ofRules.has(e.code)),
    },
    {
      id: "others",
      title: "Findings that no single record shows",
      about: "Told of several files, of the tested builds held against the rules, or of the folder.",
      findings: explanations.filter((e) => !ofRules.has(e.code) && !readingExplanations.includes(e)),
    },
  ];
  const answer = `The data check can find ${countText(explanations.length, "kind")} of things to mend. Each has a code, shown in brackets behind the finding.`;
  return {
    ...head(findingsAddress, "What the data check finds", answer, "data"),
    answer,
    groups,
    search: { kind: "help", answer, boards: [], names: ["check", ...explanations.map((e) => e.code)], symptoms: [] },
  };
}
