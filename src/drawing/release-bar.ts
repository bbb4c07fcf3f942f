// The line of releases as one thin bar without a word: what stands beside it in a list says the same in text.
import type { Verdict } from "../planning/index.js";
import { look, runsOf } from "./firmware-bars.js";
import { el } from "./svg.js";

const wide = 320;
const tall = 18;

/** One stretch for each run of releases with the same verdict, as long as it holds; drawn like the bars of `firmwareBars`. */
export function releaseBar(verdicts: readonly Verdict[]): string {
  const step = wide / Math.max(1, verdicts.length);
  return el(
    "svg",
    { class: "rb", viewBox: `0 0 ${wide} ${tall}`, width: wide, height: tall, "aria-hidden": "true", focusable: "false" },
    ...runsOf(verdicts).map((run) => look(run.verdict, run.from * step + 1, tall / 2, (run.to - run.from + 1) * step - 2, 14)),
  );
}
