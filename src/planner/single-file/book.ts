// The pages of the single file as one book: every drawing and every list of reasons is kept once, however often the pages show it,
// since the same ones stand on hundreds of pages and further apart than a compressor looks back.

/** A page as a reader gets it: its title, and what stands in its main part. */
export type PocketPage = readonly [title: string, content: string];

export interface Book {
  readonly repeated: readonly string[];
  /** By name; `<again n>` in a content stands for the piece at place n of `repeated`: no page of ours writes such an element. */
  readonly pages: Readonly<Record<string, PocketPage>>;
}

export function bookOf(pages: Readonly<Record<string, PocketPage>>): Book {
  const places = new Map<string, number>();
  const placed = (piece: string) => {
    const place = places.get(piece) ?? places.size;
    places.set(piece, place);
    return `<again ${place}>`;
  };
  const short = Object.entries(pages).map(([name, [title, content]]): [string, PocketPage] => [
    name,
    [title, content.replace(/<svg .*?<\/svg>|<div class="reasons">.*?<\/div>/gs, placed)],
  ]);
  return { repeated: [...places.keys()], pages: Object.fromEntries(short) };
}

/** The page with all pieces in their places again; undefined for a page that is not in the book. */
export function pageIn({ repeated, pages }: Book, name: string): PocketPage | undefined {
  if (!Object.hasOwn(pages, name)) return undefined;
  const [title, content] = pages[name] ?? ["", ""];
  return [title, content.replace(/<again (\d+)>/g, (written, place: string) => repeated[Number(place)] ?? written)];
}
