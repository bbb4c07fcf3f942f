// The search index of the built pages, made by Pagefind. Uses Node: it writes into the folder of the site.
import { createIndex } from "pagefind";

interface Page {
  readonly name: string;
  readonly content: string;
}

/** Indexes every page that has a part marked for search; gives the number of files the index holds. */
export async function indexPages(folder: string, pages: readonly Page[]): Promise<number> {
  const { index, errors } = await createIndex({ forceLanguage: "en", includeCharacters: "-./+" });
  if (!index) throw new Error(`The search index could not be begun: ${errors.join("; ")}`);
  try {
    for (const { name, content } of pages) {
      if (!content.includes("data-pagefind-body")) continue;
      const added = await index.addHTMLFile({ url: name, content });
      if (added.errors.length > 0) throw new Error(`${name} could not be indexed: ${added.errors.join("; ")}`);
    }
    const written = await index.writeFiles({ outputPath: `${folder}/pagefind` });
    if (written.errors.length > 0) throw new Error(`The search index could not be written: ${written.errors.join("; ")}`);
    const { files } = await index.getFiles();
    return files.length;
  } finally {
    await index.deleteIndex();
  }
}
