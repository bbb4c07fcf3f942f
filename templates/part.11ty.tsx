// A generic part: its figures, its pins from above, its faces, what is joined in each position.
import type { PartPage } from "../src/site/index.js";
import { Facts, Link, Links, Notes, Section, Sources, Tested } from "./parts/bits.js";
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
          <table class="pins">
            <caption class="unseen">Pins of {view.name}, seen from above with the notch at the top</caption>
            <thead class="unseen">
              <tr>
                <th scope="col">Carries</th>
                <th scope="col">Pin</th>
                <th scope="col">Pin</th>
                <th scope="col">Carries</th>
              </tr>
            </thead>
            <tbody>
              {view.pins.map(({ left, right }) => (
                <tr key={left.pin}>
                  <td class="l">
                    <code>{left.name}</code>
                  </td>
                  <td class="n l">{left.pin}</td>
                  <td class="n r">{right.pin}</td>
                  <td class="r">
                    <code>{right.name}</code>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Section>
      ) : null}
      {view.faces.length > 0 ? (
        <Section title="Contacts">
          {view.key ? <p>{view.key}</p> : null}
          <div class="faces">
            {view.faces.map((f) => (
              <figure key={f.title}>
                <svg
                  viewBox={`0 0 ${f.width} ${f.height}`}
                  width={f.width}
                  height={f.height}
                  role="img"
                  aria-label={`${view.name}. ${f.title}`}
                >
                  <rect x="1" y="1" width={f.width - 2} height={f.height - 2} rx="8" fill="none" stroke="currentColor" stroke-width="1.5" />
                  {f.points.map((p) => (
                    <g key={p.contact}>
                      <circle cx={p.x} cy={p.y} r="10" fill="none" stroke="currentColor" stroke-width="1.5" />
                      <text x={p.x} y={p.y + 4} text-anchor="middle" class="contact">
                        {p.contact}
                      </text>
                    </g>
                  ))}
                </svg>
                <figcaption>{f.title}</figcaption>
              </figure>
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
