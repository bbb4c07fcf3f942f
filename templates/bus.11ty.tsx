// A bus: its kinds of slot, its lines and rails.
import type { BusPage } from "../src/pages/index.js";
import { Answer, Facts, Links, Notes, Section, Sources, Value } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("buses");

export function render({ view }: Shown<BusPage>) {
  return (
    <Layout page={view} heading={view.name} kind="Bus">
      <Answer says={view.answer} root={view.root} />
      <Section title="What it is">
        <Facts facts={view.facts} />
        <p>
          Boards: <Links links={view.boards} root={view.root} />
        </p>
        {view.chain ? <p>{view.chain}</p> : null}
      </Section>
      <Section title="Kinds of card edge">
        <dl class="facts">
          {view.edges.map((e) => (
            <div key={e.name}>
              <dt>{e.name}</dt>
              <dd>
                {e.contacts ? `${e.contacts} contacts, ` : ""}
                {e.fits}
                {e.lines ? `; ${e.lines}` : ""}
              </dd>
            </div>
          ))}
        </dl>
      </Section>
      <Section title="Interrupt lines">
        <div class="scroll">
          <table class="list">
            <thead>
              <tr>
                <th scope="col">Line</th>
                <th scope="col">Also called</th>
                <th scope="col">Sensed</th>
                <th scope="col">Sharing</th>
              </tr>
            </thead>
            <tbody>
              {view.interrupts.map((i) => (
                <tr key={i.id}>
                  <th scope="row">
                    <code>{i.id}</code>
                  </th>
                  <td data-label="Also called">{i.also ? <code>{i.also}</code> : "\u2013"}</td>
                  <td data-label="Sensed">
                    <Value value={i.trigger} />
                  </td>
                  <td data-label="Sharing">
                    <Value value={i.share} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </Section>
      <Section title="Rails and DMA">
        <ul class="plain">
          {view.rails.map((r) => (
            <li key={r.id}>
              rail <code>{r.id}</code>: {r.volts}
            </li>
          ))}
          {view.dma.map((d) => (
            <li key={d.id}>
              DMA <code>{d.id}</code>
              {d.width ? `: ${d.width}` : ""}
            </li>
          ))}
        </ul>
      </Section>
      <Notes notes={view.notes} />
      <Sources sources={view.sources} />
    </Layout>
  );
}
