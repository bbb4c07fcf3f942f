// Builds the site of a generated club with one board, 40 cards and 20 versions: node test/publish/make-large.mjs <folder>
// From the compiled project, as make.mjs does.
const { buildSite } = await import(new URL("../../dist/src/publish/index.js", import.meta.url).href);
const { largeClub } = await import(new URL("../../dist/test/bench/large-club.js", import.meta.url).href);

const catalogue = largeClub({ boards: 1, revisions: 1, cards: 40, versions: 20, wordy: true });
await buildSite({ catalogue, records: [], out: process.argv[2] });
