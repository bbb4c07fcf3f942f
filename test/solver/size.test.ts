// What the browser gets: the whole room in one bundle, small, with nothing of Node and no WebAssembly or shared memory in it.
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { expect, test } from "vitest";

test("the solver bundled for the browser is under 30 KB gzip and needs nothing special", async () => {
  const made = await build({
    entryPoints: ["src/solver/index.ts"],
    bundle: true,
    minify: true,
    write: false,
    platform: "browser",
    format: "esm",
  });
  const code = made.outputFiles[0]!.text;
  expect(code).toContain("allDifferent");
  expect(gzipSync(code).length).toBeLessThan(30 * 1024);
  expect(code).not.toMatch(/WebAssembly|SharedArrayBuffer|\bprocess\.|\brequire\(|Date\.now|performance\.now/);
});
