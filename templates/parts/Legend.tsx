// The legend of the marks, in view beside a dense table.

import type { MarkView } from "../../src/pages/index.js";
import { evidenceWords, verdictWords } from "../../src/words/index.js";
import { MarkOnly } from "./bits.js";

const shown = (verdict: MarkView["verdict"], evidence?: MarkView["evidence"]): MarkView => ({
  verdict,
  evidence,
  css: verdictWords[verdict].css,
  word: verdictWords[verdict].word,
  evidenceWord: "",
  label: "",
});

export function Legend() {
  return (
    <aside class="legend" data-examples="" aria-label="What the marks mean">
      <ul>
        {(["workable", "conditional", "unknown", "ruled-out"] as const).map((v) => (
          <li key={v}>
            <MarkOnly mark={shown(v)} /> {verdictWords[v].word}
          </li>
        ))}
      </ul>
      <ul>
        {(["bench", "documented", "reported", "inferred"] as const).map((e) => (
          <li key={e}>
            <MarkOnly mark={shown("workable", e)} /> {evidenceWords[e].word}
          </li>
        ))}
      </ul>
    </aside>
  );
}
