// The search index of the built pages, made by Pagefind, which runs as a helper program of its own. Uses Node.
import { createIndex } from "pagefind";
import { FileRefusal } from "../files/index.js";

interface Page {
  readonly name: string;
  readonly content: string;
}

interface IndexFile {
  /** Below the folder of the index, with "/". */
  readonly name: string;
  readonly content: Uint8Array;
}

/** Indexes every page that has a part marked for search; gives the files of the index. The order of the pages does not matter. */
export async function indexPages(pages: readonly Page[]): Promise<readonly IndexFile[]> {
  return orWhenHelperEnds(makeIndex([...pages].sort(byName)));
}

async function makeIndex(pages: readonly Page[]): Promise<readonly IndexFile[]> {
  const { index, errors } = await createIndex({ forceLanguage: "en", includeCharacters: "-./+" });
  if (!index) throw new Error(`The search index could not be begun: ${errors.join("; ")}`);
  for (const { name, content } of pages) {
    if (!content.includes("data-pagefind-body")) continue;
    const added = await index.addHTMLFile({ url: name, content });
    if (added.errors.length > 0) throw new Error(`${name} could not be indexed: ${added.errors.join("; ")}`);
  }
  const made = await index.getFiles();
  if (made.errors.length > 0) throw new Error(`The search index could not be made: ${made.errors.join("; ")}`);
  await index.deleteIndex();
  return made.files.map(({ path, content }) => ({ name: path, content })).sort(byName);
}

/**
 * When the helper is killed, nothing answers any more and the program would end without a word: the last moment at
 * which it can still speak is when nothing is left to wait for.
 */
async function orWhenHelperEnds<T>(work: Promise<T>): Promise<T> {
  const ended = () =>
    new FileRefusal(
      "The helper program that makes the search index ended before it was done.",
      "Run the command again; if it ends again, look whether the machine has memory to spare.",
    );
  let listener = () => {};
  const silence = new Promise<never>((_, fail) => {
    listener = () => fail(ended());
    process.once("beforeExit", listener);
  });
  try {
    return await Promise.race([work, silence]);
  } catch (problem) {
    throw problem instanceof Error && problem.message === "Pagefind backend closed" ? ended() : problem;
  } finally {
    process.off("beforeExit", listener);
  }
}

function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return a.name < b.name ? -1 : 1;
}
