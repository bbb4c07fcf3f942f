// The words of the pages, in groups; other names beside each.
import type { GlossaryPage } from "../src/pages/index.js";
import { Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("words");

export function render({ view }: Shown<GlossaryPage>) {
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
      </div>
      {view.groups.map((group) => (
        <Section key={group.id} id={group.id} title={group.title}>
          <dl class="facts">
            {group.words.map((w) => (
              <div key={w.id} id={w.id}>
                <dt>
                  {w.word} {w.also ? <span class="more">(also {w.also})</span> : null}
                </dt>
                <dd>{w.means}</dd>
              </div>
            ))}
          </dl>
        </Section>
      ))}
    </Layout>
  );
}
