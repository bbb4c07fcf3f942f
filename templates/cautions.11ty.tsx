// The usual cautions: first what can injure, then what takes care.

import type { Caution, CautionsPage } from "../src/pages/index.js";
import { Section } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("cautions");

function One({ caution }: { readonly caution: Caution }) {
  return (
    <article id={caution.id} class="caution">
      <h3>{caution.title}</h3>
      <p>{caution.text}</p>
      <p class="more">Source: {caution.source}</p>
    </article>
  );
}

export function render({ view }: Shown<CautionsPage>) {
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
        <p>Local codes and licensed practice come first. Where a line below says that work is for somebody qualified, it is.</p>
      </div>
      <Section id="stop" title="Stop: these can injure you">
        {view.stop.map((c) => (
          <One key={c.id} caution={c} />
        ))}
      </Section>
      <Section id="care" title="Take care">
        {view.care.map((c) => (
          <One key={c.id} caution={c} />
        ))}
      </Section>
    </Layout>
  );
}
