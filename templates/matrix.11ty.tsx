// The matrix of one board revision. On a wide page a grid; on a phone the same table reads as a list by card, its firmware line as a bar.

import { verdictMarkSymbols } from "../src/drawing/index.js";
import { type MatrixPage, markUse } from "../src/pages/index.js";
import { evidenceWords, verdictWords } from "../src/words/index.js";
import { counted, Link, Svg, stated } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { Legend } from "./parts/Legend.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("matrices");

export function render({ view }: Shown<MatrixPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={`${view.board.text}, revision ${view.revision}`} kind="Which card under which firmware" wide>
      <div class="answer">
        <p class="says" {...counted(view.counts)}>
          {view.answer}
        </p>
        <p>
          It is revision <code>{view.revision}</code> when: {view.tell} More on the <Link link={view.board} root={root} />.
        </p>
        {view.others.length > 0 ? (
          <p>
            Other revisions:{" "}
            {view.others.map((o) => (
              <a key={o.href} class="rev" href={`${root}${o.href}`}>
                <code>{o.text}</code>
              </a>
            ))}
          </p>
        ) : null}
      </div>
      <Filters view={view} />
      <Svg svg={verdictMarkSymbols()} css="unseen" />
      <Legend />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class={`grid on-paper-${view.paper}`} tabIndex={0} aria-label={`Cards and firmware, ${view.board.text} ${view.revision}`}>
        {/* biome-ignore lint/a11y/noRedundantRoles: on a phone the table is set as a list; the roles keep it a table for a screen reader */}
        <table class="matrix" role="table" data-asks={view.counts.asks}>
          <Heads view={view} />
          <tbody>
            {view.rows.map((row) => (
              <CardRow key={row.card.href} row={row} root={root} />
            ))}
          </tbody>
        </table>
      </section>
    </Layout>
  );
}

interface OneOfProps {
  readonly label: string;
  readonly name: string;
  readonly words: Readonly<Record<string, { readonly css: string; readonly word: string }>>;
}

function OneOf({ label, name, words }: OneOfProps) {
  return (
    <label>
      {label}
      <select name={name}>
        <option value="">any</option>
        {Object.values(words).map((w) => (
          <option key={w.css} value={w.css}>
            {w.word}
          </option>
        ))}
      </select>
    </label>
  );
}

function Filters({ view }: { readonly view: MatrixPage }) {
  return (
    <form class="filters">
      <OneOf label="Answer" name="verdict" words={verdictWords} />
      <OneOf label="How sure" name="evidence" words={evidenceWords} />
      <label>
        For
        <select name="kind">
          <option value="">anything</option>
          {view.kinds.map((k) => (
            <option key={k} value={k}>
              {k}
            </option>
          ))}
        </select>
      </label>
      <output aria-live="polite">All {view.rows.length} cards</output>
      <button type="reset">Show all</button>
    </form>
  );
}

function Heads({ view }: { readonly view: MatrixPage }) {
  const { root } = view;
  return (
    <thead>
      <tr>
        <th scope="col" rowSpan={2}>
          Card
        </th>
        {view.families.map((f) => (
          <th key={f.link.href} scope="colgroup" colSpan={f.span}>
            <Link link={f.link} root={root} />
          </th>
        ))}
      </tr>
      <tr>
        {view.columns.map((c) => (
          <th key={c.href + c.version} scope="col" data-asks={c.asks}>
            <a href={`${root}${c.href}`}>
              <code>{c.version}</code>
            </a>
          </th>
        ))}
      </tr>
    </thead>
  );
}

function CardRow({ row, root }: { readonly row: MatrixPage["rows"][number]; readonly root: string }) {
  return (
    <tr data-says={row.says} data-does={row.does} data-asks={row.asks}>
      <th scope="row">
        <Link link={row.card} root={root} />
        {row.bars.map((b) => (
          <span key={b.family} class="line">
            {row.bars.length > 1 ? b.family : ""}
            <Svg svg={b.svg} />
          </span>
        ))}
      </th>
      {row.cells.map((c) => (
        <td key={c.version} class={c.run ? "run" : undefined} {...stated(c.mark)}>
          <a href={`${root}${c.href}`}>
            <Svg svg={markUse(c.mark)} css={`mk ${c.mark.css}`} />
            <span class="words">
              {c.run ? (
                <>
                  <code class="one">{c.version}</code>
                  <code class="all">{c.run}</code>
                </>
              ) : (
                <code>{c.version}</code>
              )}{" "}
              {c.mark.label}
            </span>
          </a>
        </td>
      ))}
    </tr>
  );
}
