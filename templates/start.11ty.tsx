// Start: which machine? Then the ways in by card, symptom and bench result.
import type { StartPage } from "../src/pages/index.js";
import { Conflicts, counted, Link, Section, Tested } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("start");

export function render({ view }: Shown<StartPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading="Which machine?">
      <p class="lead">
        {view.club}. {view.description}
      </p>
      {view.planner ? (
        <p>
          <a class="act" href={`${root}${view.planner}`}>
            Choose a machine and several cards: will they work together?
          </a>
        </p>
      ) : null}
      <ul class="machines">
        {view.boards.map((b) => (
          <li key={b.link.href}>
            <h2>
              <Link link={b.link} root={root} />
            </h2>
            <p class="more">
              {b.maker} <code>{b.model}</code>
              {b.years ? `, ${b.years}` : ""}
            </p>
            <p {...counted(b.counts)}>
              {b.summary} {b.says}
            </p>
            <p class="revs">
              Which card under which firmware:{" "}
              {b.revisions.map((r) => (
                <a key={r.id} href={`${root}${r.matrix}`}>
                  revision <code>{r.id}</code>
                </a>
              ))}
            </p>
          </li>
        ))}
      </ul>
      <Section title="Or begin with">
        <ul class="ways">
          {view.counts.map((c) => (
            <li key={c.href}>
              <a href={`${root}${c.href}`}>{c.text}</a>
            </li>
          ))}
          <li>
            <a href={`${root}search.html`}>a model number or a symptom</a>
          </li>
        </ul>
      </Section>
      <Section title="Fresh from the bench">
        <Tested builds={view.recent} root={root} />
      </Section>
      <Section title="Known to stop a machine">
        <Conflicts lines={view.trouble} root={root} />
      </Section>
      <Section title="Whose this is">
        <p>{view.about}</p>
        <p>
          <a href={`${root}data/index.html`}>About the data</a>
        </p>
      </Section>
    </Layout>
  );
}
