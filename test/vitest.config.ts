// How vitest runs here. Tests of one folder: npx vitest run --config test/vitest.config.ts test/solver
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  // Pages are JSX for Preact, as tsconfig.json says for the build.
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    include: ["test/**/*.test.{ts,tsx}"],
    exclude: ["**/node_modules/**", "dist/**", "_site/**"],
    // Against a test that never ends, and against nothing else: how fast something is, the benchmark measures. No test has a limit of its own.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    maxWorkers: 2,
    // Files share a process and what it has loaded: the sources, the demo club, the pages of the built site. So a test leaves nothing behind
    // that another could see, and what support modules do after each test stands in the one file that runs anew for each.
    isolate: false,
    setupFiles: ["test/support/each-file.ts"],
    passWithNoTests: false,
    allowOnly: false,
  },
});
