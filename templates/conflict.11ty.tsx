// A known problem: what you would see first, then the way out, when it happens, why, and what that rests on.
import type { ConflictPage } from "../src/pages/index.js";
import { Link, Mark, Notes, Section, Sources, Tested } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";

export const data = paged("conflicts");

export function render({ view }: Shown<ConflictPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind="Known problem">
      <div class="answer">
        <p class="when">What you would see:</p>
        <ul class="symptoms">
          {view.symptoms.map((s) => (
            <li key={s}>{s}</li>
          ))}
        </ul>
        <p class="says">{view.answer}</p>
        <p class="sure">
          <Mark mark={view.mark} />. It is {view.status.word}: {view.status.means} <a href={`${root}sure.html`}>How sure is this?</a>
        </p>
      </div>
      <Section id="remedies" title="The way out">
        {view.remedies.length > 0 ? (
          <ol>
            {view.remedies.map((r) => (
              <li key={r.says}>
                {r.says}{" "}
                <span class="more">
                  It takes {r.costs}
                  {r.part ? (
                    <>
                      {" "}
                      (<Link link={r.part} root={root} />)
                    </>
                  ) : null}
                  . {r.leaves}
                </span>
              </li>
            ))}
          </ol>
        ) : (
          <p>None is known.</p>
        )}
        {view.settle ? <p>To settle whether it is so: {view.settle}</p> : null}
      </Section>
      <Section id="when" title="When it happens">
        {view.conditions.length > 0 ? (
          <ul>
            {view.conditions.map((c) => (
              <li key={(c.link?.href ?? "") + c.says}>
                {c.link ? (
                  <>
                    <Link link={c.link} root={root} />: {c.says}
                  </>
                ) : (
                  c.says
                )}
              </li>
            ))}
          </ul>
        ) : (
          <p>Always.</p>
        )}
        <p class="more">Kind of problem: {view.kind}.</p>
        {view.loss ? <p>What is lost: {view.loss}</p> : null}
      </Section>
      <Section id="cause" title="Why">
        <p>{view.cause}</p>
      </Section>
      <Section id="evidence" title="What it rests on">
        <ul>
          {view.evidence.map((e) => (
            <li key={e.says}>
              {e.grade}: {e.says} {e.by ? `(${e.by})` : ""} {e.build ? <Link link={e.build} root={root} /> : null}
            </li>
          ))}
        </ul>
      </Section>
      {view.tested.length > 0 ? (
        <Section title="Seen in">
          <Tested builds={view.tested} root={root} />
        </Section>
      ) : null}
      <Notes notes={view.notes} />
      <Sources sources={view.sources} />
    </Layout>
  );
}
