// The matrix of one board revision: cards by purpose, each with its bar over the releases. The page scrolls as a whole; heads stay.

import type { MatrixGroup, MatrixPage, MatrixRow } from "../src/pages/index.js";
import { evidenceWords, verdictWords } from "../src/words/index.js";
import { Ink, InkLegend, inkWords, NoteRow, spread } from "./parts/Bar.js";
import { counted, Link, stated } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
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
        <details>
          <summary>
            Is yours a {view.revision}?{view.others.length > 0 ? ` Other revisions: ${view.others.map((o) => o.text).join(", ")}` : ""}
          </summary>
          <p class="more">
            It is revision <code>{view.revision}</code> when: {view.tell} More on the <Link link={view.board} root={root} />.{" "}
            {view.others.length > 0 ? "The same for revision " : ""}
            {view.others.map((o) => (
              <a key={o.href} class="rev" href={`${root}${o.href}`}>
                <code>{o.text}</code>
              </a>
            ))}
          </p>
        </details>
      </div>
      <Filters view={view} />
      <InkLegend />
      <section class={`sides ${spread(view.columns.length)}`} aria-label={`Cards and firmware, ${view.board.text} ${view.revision}`}>
        {view.sides.map((groups) => (
          // biome-ignore lint/a11y/noRedundantRoles: on a phone the table is set as a list; the roles keep it a table for a screen reader
          <table key={groups[0]?.name} class={`matrix ranges ${spread(view.columns.length)}`} role="table" data-asks={view.counts.asks}>
            <Heads view={view} />
            {groups.map((group) => (
              <Group key={group.name} group={group} view={view} />
            ))}
          </table>
        ))}
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
      <label class="name">
        Find a card
        <input name="name" type="search" autocomplete="off" />
      </label>
      <details>
        <summary>Narrow by answer</summary>
        <div>
          <OneOf label="Answer" name="verdict" words={verdictWords} />
          <OneOf label="How sure" name="evidence" words={evidenceWords} />
          <button type="reset">Show all</button>
        </div>
      </details>
      <output aria-live="polite">All {view.size} cards</output>
    </form>
  );
}

function Heads({ view }: { readonly view: MatrixPage }) {
  const { root } = view;
  const begins = new Set(view.families.slice(1).map((f) => f.link.href));
  return (
    <thead>
      <tr>
        <th scope="col">Card</th>
        {view.columns.map((c, i) => {
          const gap = begins.has(c.href) && view.columns[i - 1]?.href !== c.href;
          return (
            <th key={c.href + c.version} scope="col" class={gap ? "gap" : undefined} data-asks={c.asks}>
              <a href={`${root}${c.href}`} title={view.families.find((f) => f.link.href === c.href)?.link.text}>
                <code>{c.version}</code>
              </a>
            </th>
          );
        })}
        <th scope="col" class="said">
          Works with
        </th>
      </tr>
    </thead>
  );
}

function Group({ group, view }: { readonly group: MatrixGroup; readonly view: MatrixPage }) {
  return (
    <tbody>
      <tr class="purpose">
        <th scope="rowgroup" colSpan={view.columns.length + 2}>
          {group.name}
        </th>
      </tr>
      {group.rows.map((row) => (
        <CardRow key={row.card.href} row={row} root={view.root} />
      ))}
    </tbody>
  );
}

function CardRow({ row, root }: { readonly row: MatrixRow; readonly root: string }) {
  return (
    <>
      <tr class="card" data-says={row.says} data-does={row.does} data-asks={row.asks}>
        <th scope="row">
          <Link link={row.card} root={root} />
        </th>
        {row.cells.map((c) => (
          <td key={c.family + c.version} class={c.gap ? "gap" : undefined} {...stated(c.mark)}>
            <a href={`${root}${c.href}`} tabIndex={c.again ? -1 : undefined}>
              <Ink on={c} />
              <span class="words">
                <code>{c.version}</code> {inkWords(c)}
              </span>
            </a>
          </td>
        ))}
        <td class="said">{row.bar.says}</td>
      </tr>
      <NoteRow bar={row.bar} id={row.card.href} />
    </>
  );
}
