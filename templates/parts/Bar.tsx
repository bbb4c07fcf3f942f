// The bar over the releases: its ink on one release, the whole of it, its notes, a table of bars over one scale, and what the ink means.
import { Fragment } from "preact";
import type { BarRelease, BarView, CardBar } from "../../src/pages/index.js";
import { evidenceWords, verdictWords } from "../../src/words/index.js";
import { Link } from "./bits.js";

/** What is drawn on one release; its words must stand beside it. */
export function Ink({ on }: { readonly on: Pick<BarRelease, "mark" | "starts" | "ends" | "letter"> }) {
  const { verdict, css, evidence } = on.mark;
  const inked = verdict === "workable" || verdict === "conditional";
  const words = ["ink", css, inked ? (evidence ?? "inferred") : "", on.starts ? "starts" : "", on.ends ? "ends" : ""];
  return (
    <i class={words.filter(Boolean).join(" ")} aria-hidden="true">
      {verdict === "conditional" ? <b>{on.letter ?? "!"}</b> : null}
    </i>
  );
}

/** What the ink says, for somebody who cannot see it. */
export function inkWords({ mark, letter }: Pick<BarRelease, "mark" | "letter">): string {
  return letter ? `${mark.label}; note ${letter}` : mark.label;
}

function Notes({ bar }: { readonly bar: BarView }) {
  return (
    <>
      {bar.notes.map((n) => (
        <span key={n.letter}>
          <b>{n.letter}</b> {n.text}{" "}
        </span>
      ))}
    </>
  );
}

/** Under its bar, as wide as the table. */
export function NoteRow({ bar, id }: { readonly bar: BarView; readonly id: string }) {
  if (bar.notes.length === 0) return null;
  return (
    <tr class="note" data-of={id}>
      <td colSpan={bar.releases.length + 2}>
        <Notes bar={bar} />
      </td>
    </tr>
  );
}

/** One bar with its own scale, for a page that is about one card. */
export function Bar({ bar }: { readonly bar: BarView }) {
  return (
    <div class="one-bar">
      <div class="scale" role="img" aria-label={bar.label}>
        {bar.releases.map((r) => (
          <span key={r.family + r.version} class={r.gap ? "gap" : undefined}>
            <code>{r.version}</code>
            <Ink on={r} />
          </span>
        ))}
      </div>
      {bar.notes.length > 0 ? (
        <p class="bar-notes">
          <Notes bar={bar} />
        </p>
      ) : null}
    </div>
  );
}

export interface BarTableProps {
  readonly caption: string;
  readonly rows: readonly CardBar[];
  readonly root: string;
}

/** Several cards over one scale. */
export function BarTable({ caption, rows, root }: BarTableProps) {
  const scale = rows[0]?.bar.releases ?? [];
  return (
    // biome-ignore lint/a11y/noRedundantRoles: on a phone the table is set as a list; the roles keep it a table for a screen reader
    <table class={`ranges ${spread(scale.length)}`} role="table">
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Card</th>
          {scale.map((r) => (
            <th key={r.family + r.version} scope="col" class={r.gap ? "gap" : undefined}>
              <code>{r.version}</code>
            </th>
          ))}
          <th scope="col" class="said">
            Works with
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ card, bar }) => (
          <Fragment key={card.href}>
            <tr class="card">
              <th scope="row">
                <Link link={card} root={root} />
              </th>
              {bar.releases.map((r) => (
                <td key={r.family + r.version} class={r.gap ? "gap" : undefined}>
                  <Ink on={r} />
                  <span class="words">{inkWords(r)}</span>
                </td>
              ))}
              <td class="said">{bar.says}</td>
            </tr>
            <NoteRow bar={bar} id={card.href} />
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

/** How closely a scale of so many releases is set. */
export function spread(releases: number): "few" | "many" | "most" {
  return releases <= 12 ? "few" : releases <= 24 ? "many" : "most";
}

const example = (verdict: "workable" | "conditional" | "unknown" | "ruled-out", evidence: keyof typeof evidenceWords = "inferred") => ({
  mark: { verdict, evidence, css: verdictWords[verdict].css, word: "", evidenceWord: "", label: "" },
  starts: verdict === "workable" || verdict === "conditional",
  ends: verdict === "workable" || verdict === "conditional",
  letter: "a",
});

/** What the ink means; in view beside every table of bars. */
export function InkLegend() {
  return (
    <aside class="ink-legend" data-examples="" aria-label="What the bars mean">
      <ul>
        {(["bench", "documented", "reported", "inferred"] as const).map((e) => (
          <li key={e}>
            <Ink on={example("workable", e)} /> {e === "bench" ? "works, seen on a bench" : evidenceWords[e].word}
          </li>
        ))}
        {(["conditional", "unknown", "ruled-out"] as const).map((v) => (
          <li key={v}>
            <Ink on={example(v)} /> {verdictWords[v].word}
          </li>
        ))}
      </ul>
    </aside>
  );
}
