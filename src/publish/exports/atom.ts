// The feed of bench results (Atom, RFC 4287), newest first.
import type { BuildPage } from "../../pages/index.js";

export interface FeedOptions {
  readonly title: string;
  /** Address the site is served from, ending in "/"; empty when it is not known. */
  readonly address: string;
  /** What is wrong with the records behind it. */
  readonly notice?: string | undefined;
}

function xml(text: string): string {
  return (
    text
      .replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`)
      // Control characters are not allowed in XML 1.0 at all.
      .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "")
  );
}

/** Dates of records are as exact as is known; a feed wants a moment. */
function moment(date: string): string {
  const [year, month = "01", day = "01"] = date.split("-");
  return `${year}-${month}-${day}T00:00:00Z`;
}

export function feed(builds: readonly BuildPage[], { title, address, notice }: FeedOptions): string {
  const tested = builds.filter((b) => b.tested).sort((a, b) => b.date.localeCompare(a.date) || a.href.localeCompare(b.href));
  // Identifiers stay the same wherever the site is served (RFC 4151).
  const tag = (rest: string) => `tag:slotwright.invalid,2000:${rest}`;
  const slugged = title.toLowerCase().replaceAll(/[^a-z0-9]+/g, "-");
  const entries = tested.map((b) => {
    const link = `<link rel="alternate" type="text/html" href="${xml(address ? `${address}${b.href}` : `../${b.href}`)}"/>`;
    return [
      "  <entry>",
      `    <id>${tag(`${slugged}/${b.href}`)}</id>`,
      `    <title>${xml(`${b.name}: ${b.mark.word}`)}</title>`,
      `    <updated>${moment(b.date)}</updated>`,
      `    <author><name>${xml(b.by)}</name></author>`,
      `    ${link}`,
      `    <summary>${xml(b.answer)}</summary>`,
      "  </entry>",
    ].join("\n");
  });
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom">',
    `  <id>${tag(`${slugged}/results`)}</id>`,
    `  <title>${xml(`${title}: results from the bench`)}</title>`,
    ...(notice === undefined ? [] : [`  <subtitle>${xml(notice)}</subtitle>`]),
    `  <updated>${moment(tested[0]?.date ?? "2000")}</updated>`,
    `  <author><name>${xml(title)}</name></author>`,
    `  <link rel="self" href="${xml(address ? `${address}data/results.atom` : "results.atom")}"/>`,
    ...entries,
    "</feed>",
    "",
  ].join("\n");
}
