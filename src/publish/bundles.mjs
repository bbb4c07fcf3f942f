// Makes what the browser loads: style sheet, scripts, type faces, from sources into dist/templates/assets. Called by src/build.mjs.
import { copyFileSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

const require = createRequire(import.meta.url);

/** Faces of the pages: one for text in two weights, one for what is read off a board. Each with its licence. */
const faces = [
  ["@fontsource/literata", "literata-latin-400-normal.woff2", "text-400.woff2"],
  ["@fontsource/literata", "literata-latin-700-normal.woff2", "text-700.woff2"],
  ["@fontsource/sometype-mono", "sometype-mono-latin-400-normal.woff2", "mono-400.woff2"],
];

export async function bundle(top) {
  const { build } = await import("esbuild");
  const assets = join(top, "dist", "templates", "assets");
  // Beside the assets, which the site takes as they are and this does not go into.
  const singleFile = join(top, "dist", "templates", "single-file");
  const fonts = join(assets, "fonts");
  mkdirSync(fonts, { recursive: true });
  for (const [name, file, as] of faces) {
    const folder = dirname(require.resolve(`${name}/package.json`));
    copyFileSync(join(folder, "files", file), join(fonts, as));
    copyFileSync(join(folder, "LICENSE"), join(fonts, `${as.split("-")[0]}-licence.txt`));
  }
  const shared = { bundle: true, minify: true, legalComments: "none", logLevel: "warning", absWorkingDir: top };
  const scripts = { format: "iife", jsx: "automatic", jsxImportSource: "preact" };
  const browser = { ...shared, target: ["es2022", "chrome109", "firefox115", "safari16"] };
  await build({ ...browser, entryPoints: ["templates/style/site.css"], outfile: join(assets, "site.css"), external: ["fonts/*"] });
  await build({
    ...browser,
    entryPoints: { planner: "src/planner/style/planner.css" },
    outdir: assets,
  });
  await build({ ...browser, entryPoints: { pocket: "src/planner/single-file/pocket.css" }, outdir: singleFile });
  await build({
    ...browser,
    entryPoints: {
      offline: "src/scripts/offline/worker.ts",
      planner: "src/planner/main.tsx",
      "planner-solve": "src/planner/worker/solve.ts",
      "planner-bench": "src/planner/worker/bench.ts",
    },
    outdir: assets,
    ...scripts,
    logOverride: { "empty-import-meta": "silent" },
  });
  await build({
    ...browser,
    entryPoints: { pocket: "src/planner/single-file/main.ts", workers: "src/planner/worker/both.ts" },
    outdir: singleFile,
    ...scripts,
    logOverride: { "empty-import-meta": "silent" },
  });
  await build({
    ...browser,
    entryPoints: { early: "src/scripts/page/early.ts", site: "src/scripts/page/site.ts", search: "src/scripts/page/search.ts" },
    outdir: assets,
    ...scripts,
  });
}
