// What the search knows of each page without its full text: names, symptoms, the answer. Small enough to load whole,
// so that exact numbers, typing errors and a folder opened from a disk are all served by it.
import type { Evidence, Verdict } from "../../planning/index.js";
import type { Findable } from "../../search/index.js";
import type { MarkSubject, MarkView, PageHead } from "../common.js";
import type { Pages } from "../pages.js";

export interface SearchEntry extends Findable {
  readonly href: string;
  /** `of`: what it states something of, and for a best case which machine that is. */
  readonly mark?: { readonly verdict: Verdict; readonly evidence?: Evidence; readonly of?: MarkSubject };
}

export function entriesOf(pages: Pages): readonly SearchEntry[] {
  const all = Object.values(pages).flat() as readonly (PageHead & { readonly mark?: MarkView })[];
  return all.flatMap(({ search, href, title, mark }) => {
    if (!search) return [];
    const { kind, answer, boards, verdict, verdictOn, names, symptoms } = search;
    const shown = mark
      ? { mark: { verdict: mark.verdict, ...(mark.evidence ? { evidence: mark.evidence } : {}), ...(mark.of ? { of: mark.of } : {}) } }
      : {};
    return [
      {
        href,
        kind,
        title,
        answer,
        boards,
        ...(verdict ? { verdict } : {}),
        ...(verdictOn ? { verdictOn } : {}),
        ...shown,
        names: [...new Set(names)],
        symptoms: [...new Set(symptoms)],
      },
    ];
  });
}
