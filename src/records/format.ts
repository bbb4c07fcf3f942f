// A finding as plain text: place, sentence, source line with a caret, related places, next action. Colour is added by who prints.
import type { Finding, Place } from "./finding.js";

/** Widest piece of a source line that is shown. */
const widest = 100;

export function formatFinding(finding: Finding): string {
  const { at } = finding;
  const lines = [`${where(at)}: ${finding.level}: ${finding.says} [${finding.code}]`, ...excerpt(at)];
  if (finding.expected !== undefined) lines.push(`    expected: ${finding.expected}`);
  if (finding.actual !== undefined) lines.push(`    found:    ${finding.actual}`);
  for (const other of finding.related ?? []) lines.push(`    see ${where(other.at)}: ${other.says}`, ...excerpt(other.at, "    "));
  if (finding.hint !== undefined) lines.push(`    next: ${finding.hint}`);
  return lines.join("\n");
}

/** file:line:column, as editors and terminals open it. */
export function where(at: Place): string {
  return `${at.file}:${at.line}:${at.column}`;
}

/** The source line and, below it, a caret under the value. */
function excerpt(at: Place, indent = ""): readonly string[] {
  if (!at.text) return [];
  const column = at.column - 1;
  const from = at.text.length > widest && column > widest / 2 ? column - Math.floor(widest / 2) : 0;
  const shown = at.text.slice(from, from + widest);
  const before = at.text.slice(from, column);
  const gutter = String(at.line).padStart(5);
  // Tabs stay tabs, so that the caret stands right whatever their width.
  const pad = [...before].map((c) => (c === "\t" ? "\t" : " ")).join("");
  const caret = "^".repeat(Math.max(1, Math.min(at.span ?? 1, shown.length - before.length)));
  return [`${indent}${gutter} | ${shown}`, `${indent}${" ".repeat(gutter.length)} | ${pad}${caret}`];
}
