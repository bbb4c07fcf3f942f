// A firmware family: the order of its releases, what each brings and what changed for cards.
import type { ChangeView, FirmwarePage } from "../src/pages/index.js";
import { BarTable, InkLegend } from "./parts/Bar.js";
import { Answer, Conflicts, Facts, Link, Notes, Section, Sources, Tested } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("firmware");

function Changes({ changes, to, root }: { readonly changes: readonly ChangeView[]; readonly to: string; readonly root: string }) {
  return (
    <>
      {changes.map((c, i) => (
        <span key={c.card.href} data-change={to} data-asks={c.asks} data-before={c.before}>
          {i > 0 ? "; " : ""}
          <Link link={c.card} root={root} /> ({c.on.join(", ")})
        </span>
      ))}
    </>
  );
}

export function render({ view }: Shown<FirmwarePage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind="Firmware">
      <Answer says={view.answer} root={root} />
      {view.summary ? <p>{view.summary}</p> : null}
      {view.bound.length > 0 ? (
        <Section id="bound" title="Cards tied to a release">
          <p class="more">The best answer for each card on any board that runs the release.</p>
          <InkLegend />
          <BarTable caption={`Cards tied to a release of ${view.name}`} rows={view.bound} root={root} />
          <h3>What each asks for by its own record</h3>
          <ul class="lines">
            {view.bound.map((b) => (
              <li key={b.card.href}>
                <Link link={b.card} root={root} /> <code>{b.takes}</code>
                {b.best.map((best) => (
                  <span key={best.version} hidden data-verdict={best.verdict} data-asks={best.asks} data-best="" />
                ))}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section id="versions" title="Releases, oldest first">
        <p class="more">
          Made by {view.maker} for{" "}
          {view.boards.map((b, i) => (
            <span key={b.link.href}>
              {i > 0 ? "; " : ""}
              <Link link={b.link} root={root} /> ({b.says})
            </span>
          ))}
          .
        </p>
        {view.releases.map((r) => (
          <article key={r.id} id={r.anchor} class="release">
            <h3>
              <code>{r.id}</code> {r.date ? <span class="more">{r.date}</span> : null}
            </h3>
            {r.changes ? <p>{r.changes}</p> : null}
            {r.begins.length > 0 ? (
              <p>
                From here on works: <Changes changes={r.begins} to="works" root={root} />.
              </p>
            ) : null}
            {r.ends.length > 0 ? (
              <p>
                No longer works: <Changes changes={r.ends} to="fails" root={root} />.
              </p>
            ) : null}
            {r.adds.length > 0 ? <p>Brings: {r.adds.join("; ")}.</p> : null}
            {r.removes.length > 0 ? <p>Drops: {r.removes.join("; ")}.</p> : null}
            <p class="more">
              For {r.boards}
              {r.memory ? `; ${r.memory}` : ""}.
            </p>
            <details>
              <summary>The image and files in circulation</summary>
              <Facts facts={r.image.map((i) => ({ ...i, code: true }))} />
              {r.circulating.length > 0 ? (
                <ul class="plain">
                  {r.circulating.map((c) => (
                    <li key={c.crc32 + c.as}>
                      {c.as}, {c.size}, CRC-32 <code>{c.crc32}</code>
                      {c.note ? `: ${c.note}` : ""}
                    </li>
                  ))}
                </ul>
              ) : null}
            </details>
          </article>
        ))}
      </Section>
      {view.conflicts.length > 0 ? (
        <Section id="problems" title="Known problems with it">
          <Conflicts lines={view.conflicts} root={root} />
        </Section>
      ) : null}
      {view.tested.length > 0 ? (
        <Section id="tested" title="Tested with it">
          <Tested builds={view.tested} root={root} />
        </Section>
      ) : null}
      <Notes notes={view.notes} />
      <Sources sources={view.sources} />
    </Layout>
  );
}
