// From text to a plain value: YAML 1.2, one document, no anchors, no tags, no key twice.
// A record is written by people and reviewed by eye, so what hides its meaning is refused.

import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  parseDocument,
  type Scalar,
  visit,
  type YAMLError,
} from "yaml";
import type { Finding, FindingCode } from "./finding.js";
import { itemAt, must } from "./must.js";
import { type Locator, locator } from "./place.js";
import { steps } from "./pointer.js";
import { anchorWords, tagWords, yamlWords } from "./yaml-words.js";

export interface Parsed {
  /** Left out when the text could not be read. */
  readonly value?: unknown;
  /** A number or a word without quotes as the file writes it, by its pointer: 1.10 where the value is 1.1. */
  readonly written?: (pointer: string) => string | undefined;
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
  const errors = doc.errors.length > 0 ? faults(doc, text, at) : hidden(doc, text, at);
  if (errors.length > 0) return { findings: errors };
  try {
    return { value: doc.toJS({ maxAliasCount: 0 }), written: (pointer) => writtenAt(doc, pointer), findings: cutShort(doc, at) };
  } catch {
    return fault(at, "yaml-syntax", [0, 1], "The file could not be read as YAML.", "Compare it with another record of its kind.");
  }
}

function writtenAt(doc: Document.Parsed, pointer: string): string | undefined {
  let node: unknown = doc.contents;
  for (const at of steps(pointer)) {
    if (isMap(node)) node = node.items.find(({ key }) => String(isScalar(key) ? key.value : key) === at)?.value;
    else node = isSeq(node) ? node.items[Number(at)] : undefined;
  }
  return isScalar(node) ? plainSource(node) : undefined;
}

function plainSource(node: Scalar): string | undefined {
  return node.type === "PLAIN" && node.source !== "" ? node.source : undefined;
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
function faults(doc: Document.Parsed, text: string, at: Locator): readonly Finding[] {
  const errors = doc.errors;
  const double = errors.filter((e) => e.code === "DUPLICATE_KEY");
  const other = errors.find((e) => e.code !== "DUPLICATE_KEY");
  const told = other && (double.length === 0 || other.pos[0] < itemAt(double, 0).pos[0]) ? [other] : double.slice(0, 20);
  return told.map((e) => {
    const start = /closing .*quote/.test(e.message) ? openingQuote(doc, e.pos[0]) : e.pos[0];
    return finding(at, codeOf(e), [start, Math.max(start + 1, e.pos[1])], ...yamlWords(e, restOfLine(text, start)));
  });
}

/** The parser notices an open quote only at the end of the file; the writer looks for where it was opened. */
function openingQuote(doc: Document.Parsed, end: number): number {
  let start = end;
  visit(doc, {
    Scalar(_, node) {
      if (node.type?.startsWith("QUOTE") && node.range && node.range[1] >= end) start = node.range[0];
    },
  });
  return start;
}

function restOfLine(text: string, from: number): string {
  const end = text.indexOf("\n", from);
  return text.slice(from, end < 0 ? undefined : end);
}

function codeOf(e: YAMLError): FindingCode {
  if (e.code === "DUPLICATE_KEY") return "yaml-duplicate-key";
  if (e.code === "TAB_AS_INDENT") return "yaml-tab";
  if (e.code === "MULTIPLE_DOCS") return "yaml-many-documents";
  if (e.code === "BAD_ALIAS" || e.code === "ALIAS_PROPS" || e.code === "MULTIPLE_ANCHORS") return "yaml-alias";
  if (e.code === "TAG_RESOLVE_FAILED" || e.code === "MULTIPLE_TAGS") return "yaml-tag";
  return "yaml-syntax";
}

/** A text cut short by what it holds: in `connector #2` all from the # on is a comment. A comment proper has a space there. */
function cutShort(doc: Document.Parsed, at: Locator): readonly Finding[] {
  const out: Finding[] = [];
  visit(doc, {
    Scalar(_, node) {
      if (node.type !== "PLAIN" || typeof node.value !== "string" || !node.range || !/^\S/.test(node.comment ?? "")) return;
      const start = node.range[1];
      const says = "The text ends here: from the # on it is a comment.";
      const hint = 'Put the text in "quotes", or a space after the # when a comment is meant.';
      out.push({ ...finding(at, "yaml-comment", [start, node.range[2]], says, hint), level: "warning" });
    },
  });
  return out;
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
      const source = plainSource(pair.key);
      if (source !== undefined && source !== String(pair.key.value))
        return tell("yaml-syntax", range, `The name ${source} would be read as ${pair.key.value}.`, `Put it in quotes: "${source}".`);
      return undefined;
    },
    Node(_, node) {
      const anchored = isAlias(node) || ((isScalar(node) || isCollection(node)) && node.anchor !== undefined);
      // The node begins after its anchor or tag; the mark itself is what should be seen.
      const mark = (sign: string) => {
        let start = text.lastIndexOf(sign, must(node.range, "node.range")[0]);
        while (text[start - 1] === sign) start -= 1;
        return [start, must(node.range, "node.range")[0]];
      };
      if (anchored) return tell("yaml-alias", isAlias(node) ? node.range : mark("&"), ...anchorWords);
      // The parser marks block collections and quoted text with default tags only when they were written out.
      if (node.tag !== undefined) return tell("yaml-tag", mark("!"), ...tagWords);
      return undefined;
    },
  });
  return found ? [found] : [];
}
