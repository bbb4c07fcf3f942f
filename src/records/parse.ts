// From text to a plain value: YAML 1.2, one document, no anchors, no tags, no key twice.
// A record is written by people and reviewed by eye, so what hides its meaning is refused.
import { type Document, isAlias, isCollection, isNode, isScalar, parseDocument, visit, type YAMLError } from "yaml";
import type { Finding, FindingCode } from "./finding.js";
import { type Locator, locator } from "./place.js";

export interface Parsed {
  /** Left out when the text could not be read. */
  readonly value?: unknown;
  readonly findings: readonly Finding[];
}

export function parse(file: string, text: string): Parsed {
  const deep = tooDeep(text);
  if (deep !== undefined) {
    const line = text.slice(0, deep).split("\n").length;
    const at = { file, pointer: "", line, column: 1 };
    const hint = "A record is nested a few levels deep at most.";
    return { findings: [{ code: "yaml-syntax", level: "error", says: "The text from here on is nested too deeply to read.", at, hint }] };
  }
  const at = locator(file, text);
  const doc = parseDocument(text, { uniqueKeys: true, version: "1.2", schema: "core", logLevel: "error", prettyErrors: false });
  const errors = doc.errors.length > 0 ? faults(doc.errors, at) : hidden(doc, text, at);
  if (errors.length > 0) return { findings: errors };
  try {
    return { value: doc.toJS({ maxAliasCount: 0 }), findings: [] };
  } catch {
    return fault(at, "yaml-syntax", [0, 1], "The file could not be read as YAML.", "Compare it with another record of its kind.");
  }
}

/**
 * Offset where nesting goes beyond anything a record needs. Asked before parsing, since the parser
 * is recursive and thousands of open brackets bring down the whole process.
 */
function tooDeep(text: string): number | undefined {
  const deepest = 64;
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (c === "[" || c === "{") depth += 1;
    else if ((c === "]" || c === "}") && depth > 0) depth -= 1;
    if (depth > deepest) return i;
  }
  const indented = /^[ ]*(?:[-?:][ \t]+)*/gm;
  for (const run of text.matchAll(indented)) {
    if (run[0].length > 4 * deepest) return run.index;
  }
  return undefined;
}

function finding(at: Locator, code: FindingCode, offset: readonly [number, number], says: string, hint: string): Finding {
  return { code, level: "error", says, at: at("", { offset }), hint };
}

function fault(...about: Parameters<typeof finding>): Parsed {
  return { findings: [finding(...about)] };
}

/** The parser goes on after an error and stumbles again; only the first is told, except that every double key is. */
function faults(errors: readonly YAMLError[], at: Locator): readonly Finding[] {
  const double = errors.filter((e) => e.code === "DUPLICATE_KEY");
  const other = errors.find((e) => e.code !== "DUPLICATE_KEY");
  const told = other && (double.length === 0 || other.pos[0] < double[0]!.pos[0]) ? [other] : double.slice(0, 20);
  return told.map((e) => finding(at, codeOf(e), [e.pos[0], Math.max(e.pos[1], e.pos[0] + 1)], ...wordsOf(e)));
}

function codeOf(e: YAMLError): FindingCode {
  if (e.code === "DUPLICATE_KEY") return "yaml-duplicate-key";
  if (e.code === "TAB_AS_INDENT") return "yaml-tab";
  if (e.code === "MULTIPLE_DOCS") return "yaml-many-documents";
  if (e.code === "BAD_ALIAS" || e.code === "ALIAS_PROPS" || e.code === "MULTIPLE_ANCHORS") return "yaml-alias";
  if (e.code === "TAG_RESOLVE_FAILED" || e.code === "MULTIPLE_TAGS") return "yaml-tag";
  return "yaml-syntax";
}

function wordsOf(e: YAMLError): [says: string, hint: string] {
  switch (e.code) {
    case "DUPLICATE_KEY":
      return ["This field is written twice in the same place.", "Keep one of the two."];
    case "TAB_AS_INDENT":
      return ["The line is indented with a tab.", "Indent with spaces, two a level."];
    case "MULTIPLE_DOCS":
      return ["The file holds a second document, after ---.", "Put each record in a file of its own."];
    case "BAD_ALIAS":
    case "ALIAS_PROPS":
    case "MULTIPLE_ANCHORS":
      return [
        "Anchors (&name) and aliases (*name) are not used in records.",
        'Write the value out; put a text that begins with * or & in "quotes".',
      ];
    case "TAG_RESOLVE_FAILED":
    case "MULTIPLE_TAGS":
      return ["Tags (!name) are not used in records.", 'Leave it out; put a text that begins with ! in "quotes".'];
    case "BAD_INDENT":
      return [
        "The line is not indented like its neighbours.",
        "Fields of one thing start in the same column; lists begin with a dash and a space.",
      ];
    case "BLOCK_AS_IMPLICIT_KEY":
    case "MULTILINE_IMPLICIT_KEY":
      return ["A text here is read as a field name.", 'Put a text that holds a colon and a space in "quotes".'];
    case "BAD_SCALAR_START":
      return ["A text cannot begin with this character.", 'Put the text in "quotes".'];
    case "MISSING_CHAR":
      return [
        "A character is missing here: a closing quote or bracket, or the colon after a field name.",
        'Close what was opened; a field is written name: value; put a text that holds " or : in quotes.',
      ];
    case "BAD_DQ_ESCAPE":
      return ["A backslash in double quotes starts an escape this one is not.", "Use 'single quotes' for a text with backslashes."];
    default:
      return ["This is not YAML as records use it.", "Fields are written name: value, one a line; lists begin with a dash and a space."];
  }
}

/** What is good YAML but has no place in a record: anchors, aliases, tags, keys that are not plain words. */
function hidden(doc: Document.Parsed, text: string, at: Locator): readonly Finding[] {
  let found: Finding | undefined;
  const tell = (code: FindingCode, range: readonly number[] | null | undefined, says: string, hint: string) => {
    const start = range?.[0] ?? 0;
    found = finding(at, code, [start, Math.max(start + 1, range?.[1] ?? 0)], says, hint);
    return visit.BREAK;
  };
  const directive = /^%.*/m.exec(text);
  if (directive && doc.directives.yaml.explicit) {
    const range = [directive.index, directive.index + directive[0].length];
    tell("yaml-syntax", range, "Directives (%YAML, %TAG) are not used in records.", "Leave the line out.");
    return found ? [found] : [];
  }
  visit(doc, {
    Pair(_, pair) {
      const range = isNode(pair.key) ? pair.key.range : undefined;
      if (isAlias(pair.key)) return undefined;
      if (!isScalar(pair.key) || pair.key.value === null || pair.key.value === "" || pair.key.value === "<<")
        return tell("yaml-syntax", range, "A field name is a plain word.", "Write name: value.");
      if (pair.key.value === "__proto__") return tell("shape-unknown-field", range, "__proto__ is not a field.", "Leave it out.");
      return undefined;
    },
    Node(_, node) {
      const anchored = isAlias(node) || ((isScalar(node) || isCollection(node)) && node.anchor !== undefined);
      if (anchored) {
        return tell(
          "yaml-alias",
          node.range,
          "Anchors (&name) and aliases (*name) are not used in records.",
          'Write the value out; put a text that begins with * or & in "quotes".',
        );
      }
      // The parser marks block collections and quoted text with default tags only when they were written out.
      if (node.tag !== undefined)
        return tell(
          "yaml-tag",
          node.range,
          "Tags (!name) are not used in records.",
          'Leave it out; put a text that begins with ! in "quotes".',
        );
      return undefined;
    },
  });
  return found ? [found] : [];
}
