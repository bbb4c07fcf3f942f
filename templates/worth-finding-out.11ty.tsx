// Worth finding out: the missing facts, each with how to find it and what it would settle.
import type { WorthPage } from "../src/pages/index.js";
import { Links, Refs } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("worth");

export function render({ view }: Shown<WorthPage>) {
  const { root } = view;
  return (
    <Layout page={view}>
      <div class="answer">
        <p class="says">{view.answer}</p>
      </div>
      <ol>
        {view.facts.map((f) => (
          <li key={f.says}>
            {f.says} <Refs refs={f.refs} root={root} />
            <p>To find out: {f.how}</p>
            <p>
              {f.settles} Cards: <Links links={f.cards} root={root} />.
            </p>
          </li>
        ))}
      </ol>
      <p>
        What you measured, write into the record named beside the fact, with where it comes from; see{" "}
        <a href={`${root}data/index.html`}>about the data</a>.
      </p>
    </Layout>
  );
}
