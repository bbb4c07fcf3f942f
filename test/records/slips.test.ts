// Slips of the hand that people make in YAML, and what they are told: one finding each, in words of the trade.
import { expect, test } from "vitest";
import { formatFinding, readRecords } from "../../src/records/index.js";

const head = "# yaml-language-server: $schema=../schema/club.json\nid: x\nname: X\nabout: X.\nlicence: CC0\n";
const slips: Readonly<Record<string, string>> = {
  "a list that is not closed": "keepers: [A, B\nnotes: x\n",
  "a mapping that is not closed": "sources: [{id: a\nnotes: x\n",
  "a bracket too many": "keepers: [A, B]]\n",
  "no space after the colon": "notes:foo\n",
  "no space after the colon, in the middle": "notes:foo\nkeepers: [A]\n",
  "an equals sign": "notes = x\n",
  "no space after the dash": "keepers:\n  -A\n  -B\n",
  "a list out of line": "keepers:\n  - A\n - B\n",
  "a field out of line in a list": "sources:\n  - id: a\n   kind: manual\n",
  "a field too deep": "notes: x\n  keepers: y\n",
  "a colon in a text": "notes: see: below\n",
  "a colon in a list": "keepers: [Ann: keeper: books]\n",
  "an apostrophe in single quotes": "notes: 'it's'\n",
  "text after the quotes": 'notes: "a" b\n',
  "a quote that is not closed": 'notes: "a\n',
  "a list on the line of its name": "keepers: - A\n",
  "a text that begins with a percent sign": "notes: %x\n",
  "a text that begins with a star": "notes: *important*\n",
  "a text that begins with an exclamation mark": "notes: !important\n",
  "a path in double quotes": 'notes: "C:\\data"\n',
  "a number sign in a text": "notes: connector #2\n",
  "a line of a long text that is not indented": "notes: |\n  one\ntwo\n",
  "a tab": "keepers:\n\t- A\n",
};

test("every slip is one finding that says what to do", async () => {
  const told = Object.entries(slips).map(([title, text]) => {
    const { findings } = readRecords([{ file: "clubs/x.yaml", content: head + text }]);
    expect(findings.length, title).toBe(1);
    expect(findings[0]!.hint, title).toBeTruthy();
    return `# ${title}\n${formatFinding(findings[0]!)}`;
  });
  await expect(`${told.join("\n\n")}\n`).toMatchFileSnapshot("./slips.txt");
});
