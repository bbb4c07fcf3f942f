// A generic part: its figures, its pins from above, its faces, what is joined in each position.
import type { PartPage } from "../src/pages/index.js";
import { Drawing, Facts, Link, Links, Notes, Section, Sources, Tested } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("parts");

export function render({ view }: Shown<PartPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind={`Part: ${view.type}`}>
      <div class="answer">
        <p class="says">{view.answer}</p>
      </div>
      <Section title="Figures">
        <Facts facts={view.facts} />
        {view.mates ? (
          <p>
            Mates with <Link link={view.mates} root={root} />.
          </p>
        ) : null}
      </Section>
      {view.pins.length > 0 ? (
        <Section title="Pins, from above">
          {view.pinDrawing ? <Drawing figure={view.pinDrawing} /> : null}
          <details>
            <summary>The pins as a list</summary>
            <ol class="pins">
              {view.pins.map(({ pin, name }) => (
                <li key={pin} value={pin}>
                  <code>{name}</code>
                </li>
              ))}
            </ol>
          </details>
        </Section>
      ) : null}
      {view.faces.length > 0 ? (
        <Section title="Contacts">
          {view.key ? <p>{view.key}</p> : null}
          <div class="faces">
            {view.faces.map((f) => (
              <Drawing key={f.title} figure={f.figure} />
            ))}
          </div>
        </Section>
      ) : null}
      {view.tables.map((t) => (
        <Section key={t.title} title={t.title}>
          <table class="list two">
            <thead>
              <tr>
                {t.heads.map((h) => (
                  <th key={h} scope="col">
                    {h}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {t.rows.map(([first, ...rest]) => (
                <tr key={first}>
                  <th scope="row">
                    <code>{first}</code>
                  </th>
                  {rest.map((c) => (
                    <td key={c}>{c}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Section>
      ))}
      {view.used.length > 0 ? (
        <Section title="It helps with">
          <p>
            <Links links={view.used} root={root} />
          </p>
        </Section>
      ) : null}
      {view.tested.length > 0 ? (
        <Section title="Builds that name it">
          <Tested builds={view.tested} root={root} />
        </Section>
      ) : null}
      <Notes notes={view.notes} />
      <Sources sources={view.sources} />
    </Layout>
  );
}
