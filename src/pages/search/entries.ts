// What the search knows of each page without its full text: names, symptoms, the answer. Small enough to load whole,
// so that exact numbers, typing errors and a folder opened from a disk are all served by it.
import type { Evidence, Verdict } from "../../planning/index.js";
import type { MarkView, PageHead } from "../common.js";
import type { Pages } from "../pages.js";

export interface SearchEntry {
  readonly href: string;
  readonly kind: string;
  readonly title: string;
  readonly answer: string;
  readonly boards: readonly string[];
  /** The word of the verdict, for the filter. */
  readonly verdict?: string;
  readonly mark?: { readonly verdict: Verdict; readonly evidence?: Evidence };
  readonly names: readonly string[];
  readonly symptoms: readonly string[];
}

export function entriesOf(pages: Pages): readonly SearchEntry[] {
  const all = Object.values(pages).flat() as readonly (PageHead & { readonly mark?: MarkView })[];
  return all.flatMap(({ search, href, title, mark }) => {
    if (!search) return [];
    const { kind, answer, boards, verdict, names, symptoms } = search;
    const shown = mark ? { mark: { verdict: mark.verdict, ...(mark.evidence ? { evidence: mark.evidence } : {}) } } : {};
    return [
      {
        href,
        kind,
        title,
        answer,
        boards,
        ...(verdict ? { verdict } : {}),
        ...shown,
        names: [...new Set(names)],
        symptoms: [...new Set(symptoms)],
      },
    ];
  });
}
