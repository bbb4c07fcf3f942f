// What pages state, read back from the data beside the words: each stated answer with the question it speaks of. No sentence is guessed at.
import { addressOf, buildFrom } from "../../../src/machine/index.js";
import type { SearchEntry } from "../../../src/pages/index.js";
import type { Build } from "../../../src/records/index.js";
import type { Evidence, Verdict } from "../../../src/words/index.js";
import type { Element, Page } from "../parse.js";

export interface Statement {
  /** Where it stands, for a message. */
  readonly place: string;
  /** The questions, as addresses; of several, the best answer is what is stated. */
  readonly asks: readonly string[];
  readonly verdict: Verdict;
  /** Undefined where none is named. */
  readonly evidence?: Evidence;
}

/** An address in the one form it has. */
export function questionOf(asks: string): Build {
  const build = buildFrom(asks);
  if (!build || build.board === "") throw new Error(`No question: ${asks}`);
  return build;
}

export const canonical = (asks: string) => addressOf(questionOf(asks));

/** What an element's question has from what holds it, from its column, and of its own. */
function asksAbout(element: Element): readonly string[] {
  const own = (element.attributes["data-asks"] ?? "").split(" ").filter(Boolean);
  const shared: string[] = [];
  for (let at = element.parent; at; at = at.parent) if (at.attributes["data-asks"]) shared.push(at.attributes["data-asks"]);
  if (element.name === "td") shared.push(columnOf(element));
  return (own.length > 0 ? own : [""]).map((asks) => canonical([...shared, asks].filter(Boolean).join("&")));
}

/** The column that a cell stands under: heads and cells stand in the same order, a row's own head first. */
function columnOf(cell: Element): string {
  const row = cell.parent;
  let table = row;
  while (table && table.name !== "table") table = table.parent;
  const heads = all(table).filter((e) => e.name === "th" && e.attributes["data-asks"] !== undefined);
  const cells = row?.children.filter((e) => e.name === "td" && e.attributes["data-verdict"] !== undefined) ?? [];
  const head = heads[cells.indexOf(cell)];
  if (!head || heads.length !== cells.length) throw new Error("A cell stands under no column.");
  return head.attributes["data-asks"] ?? "";
}

export function all(element: Element | undefined): readonly Element[] {
  return element ? [element, ...element.children.flatMap(all)] : [];
}

export function statementsOf(page: Page): Statement[] {
  return page.all.flatMap((element): Statement[] => {
    const { "data-verdict": verdict, "data-evidence": evidence } = element.attributes;
    if (verdict === undefined || isExample(element)) return [];
    if (element.attributes["data-best"] !== undefined && !element.attributes["data-asks"]) return [];
    return [
      {
        place: `${page.name} <${element.name}> ${element.text.slice(0, 60)}`,
        asks: asksAbout(element),
        verdict: verdict as Verdict,
        ...(evidence === undefined ? {} : { evidence: evidence as Evidence }),
      },
    ];
  });
}

/** A mark of a legend, or of the page that explains marks, states nothing. */
export function isExample(element: Element): boolean {
  for (let at: Element | undefined = element; at; at = at.parent) if (at.attributes["data-examples"] !== undefined) return true;
  return false;
}

/** What the search says beside a find. */
export function foundOf(entries: readonly SearchEntry[]): Statement[] {
  return entries.flatMap(({ href, mark }): Statement[] => {
    if (mark?.of?.kind !== "answer") return [];
    const { verdict, evidence } = mark;
    return [
      {
        place: `search ${href}`,
        asks: mark.of.asks.split(" ").map(canonical),
        verdict,
        ...(evidence === undefined || verdict === "ruled-out" ? {} : { evidence }),
      },
    ];
  });
}

interface Exported {
  readonly board: string;
  readonly revision: string;
  readonly family: string;
  readonly firmware: string;
  readonly card: string;
  readonly verdict: Verdict;
  readonly evidence: Evidence | null;
}

/** What an export says, line by line. */
export function exportedOf(file: string, lines: readonly Exported[]): Statement[] {
  return lines.map(({ board, revision, family, firmware, card, verdict, evidence }) => ({
    place: `${file} ${board} ${revision} ${firmware} ${card}`,
    asks: [
      addressOf({
        id: "my-build",
        name: "My build",
        board,
        revision,
        firmware: family,
        cards: [{ card }],
        modes: [{ id: "always", name: "Everyday", firmware }],
      }),
    ],
    verdict,
    ...(evidence === null ? {} : { evidence }),
  }));
}
