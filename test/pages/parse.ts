// A page of HTML as elements with their attributes and text, for the tests that read pages without a browser.
import { parseDocument } from "htmlparser2";

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly parent?: Element | undefined;
  /** All text in it, spaces drawn together. */
  readonly text: string;
}

export interface Page {
  readonly name: string;
  readonly html: string;
  readonly all: readonly Element[];
  readonly find: (tag: string) => readonly Element[];
}

interface Node {
  readonly type: string;
  readonly name?: string;
  readonly attribs?: Record<string, string>;
  readonly children?: readonly Node[];
  readonly data?: string;
}

function textOf(node: Node): string {
  return node.type === "text" ? (node.data ?? "") : (node.children ?? []).map(textOf).join("");
}

function elements(nodes: readonly Node[], parent: Element | undefined, into: Element[]): Element[] {
  const here: Element[] = [];
  for (const node of nodes) {
    if (node.name === undefined) continue;
    const children: Element[] = [];
    let text: string | undefined;
    const element: Element = {
      name: node.name,
      attributes: node.attribs ?? {},
      children,
      parent,
      get text() {
        text ??= textOf(node).replace(/\s+/g, " ").trim();
        return text;
      },
    };
    into.push(element);
    here.push(element);
    children.push(...elements(node.children ?? [], element, into));
  }
  return here;
}

export function parse(name: string, html: string): Page {
  const all: Element[] = [];
  elements(parseDocument(html).children as unknown as Node[], undefined, all);
  return { name, html, all, find: (tag) => all.filter((e) => e.name === tag) };
}
