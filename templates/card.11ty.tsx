// A card: does it work in mine? Then what else to get, settings, what it takes, problems, who has it working.
import type { CardPage } from "../src/pages/index.js";
import { Act, Answer, Claims, Conflicts, Drawing, Facts, Fold, Links, Notes, Section, Sources, Tested, Value } from "./parts/bits.js";
import { Layout } from "./parts/Layout.js";
import { paged, type Shown } from "./parts/paged.js";
import { Settings } from "./parts/Settings.js";
import { Where } from "./parts/Where.js";

export const data = paged("cards");

export function render({ view }: Shown<CardPage>) {
  const { root } = view;
  return (
    <Layout page={view} heading={view.name} kind="Card">
      <Answer mark={view.mark} says={view.answer} sure={view.sure} root={root} />
      {view.besides ? (
        <p>
          Besides the card <a href="#get">{view.besides}</a>.
        </p>
      ) : null}
      <Drawing figure={view.faceDrawing} />
      <Where view={view} />
      <GetSection view={view} />
      {view.conflicts.length > 0 ? (
        <Section id="problems" title="Known problems">
          <Conflicts lines={view.conflicts} root={root} />
        </Section>
      ) : null}
      <Fold id="needs" title="What it needs">
        <dl class="facts">
          {view.needs.map((n) => (
            <div key={n.what + n.says}>
              <dt>{n.what}</dt>
              <dd>
                {n.says} <Links links={n.links} root={root} />
              </dd>
            </div>
          ))}
        </dl>
      </Fold>
      <Settings view={view} />
      <ClaimsSection view={view} />
      {view.enable || view.panel.length > 0 ? <EnableSection view={view} /> : null}
      <Fold id="tested" title="Who has tried it" says={triedText(view.tested.length)}>
        {view.timeDrawing ? <Drawing figure={view.timeDrawing} /> : null}
        {view.tested.length > 0 ? <Tested builds={view.tested} root={root} /> : <p>Nobody whose result is written down here.</p>}
      </Fold>
      {view.revisions.length > 0 ? <RevisionsSection view={view} /> : null}
      {view.summary ? (
        <Fold title="What it is">
          <p>{view.summary}</p>
        </Fold>
      ) : null}
      <Notes notes={view.notes} folded />
      <Sources sources={view.sources} folded />
    </Layout>
  );
}

function triedText(count: number): string {
  return count === 0 ? "nobody yet" : count === 1 ? "one build" : `${count} builds`;
}

function GetSection({ view }: { readonly view: CardPage }) {
  const { root } = view;
  return (
    <Section id="get" title="What else you would have to get">
      {view.get.length > 0 ? (
        <ul>
          {view.get.map((g) => (
            <li key={g.says}>
              {g.says} <Links links={g.links} root={root} />
            </li>
          ))}
        </ul>
      ) : (
        <p>Nothing besides the card, as far as its record says.</p>
      )}
      <Act href={view.planner} root={root}>
        Plan a machine with this card
      </Act>
    </Section>
  );
}

function ClaimsSection({ view }: { readonly view: CardPage }) {
  return (
    <Fold id="claims" title="What it takes">
      {view.claims.map((c) => (
        <div key={c.when}>
          <p class="when">{c.when}:</p>
          <Claims lines={c.lines} />
        </div>
      ))}
      {view.notWritten.map((says) => (
        <p key={says}>{says}</p>
      ))}
      <div class="scroll">
        <table class="list">
          <thead>
            <tr>
              <th scope="col">Rail</th>
              <th scope="col">Idle</th>
              <th scope="col">Worst</th>
              <th scope="col">At start</th>
              <th scope="col">Figure</th>
            </tr>
          </thead>
          <tbody>
            {view.power.map((p) => (
              <tr key={p.rail + p.on}>
                <th scope="row">
                  <code>{p.rail}</code> {p.on}
                </th>
                <td data-label="Idle">
                  <Value value={p.idle} />
                </td>
                <td data-label="Worst">
                  <Value value={p.worst} />
                </td>
                <td data-label="At start">
                  <Value value={p.start} />
                </td>
                <td data-label="Figure">{p.basis || "\u2013"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Facts facts={view.facts} />
      {view.termination ? <p>Termination: {view.termination}</p> : null}
      {view.cooling ? <p>Cooling: {view.cooling}</p> : null}
    </Fold>
  );
}

function EnableSection({ view }: { readonly view: CardPage }) {
  const { root } = view;
  return (
    <Fold id="enable" title="Switching it off, leads to the outside">
      {view.enable ? (
        <>
          <p>
            {view.enable.how} {view.enable.releases}
          </p>
          <ul class="plain">
            {view.enable.points.map((p) => (
              <li key={p.id}>
                <code>{p.id}</code>: {p.role}
                {p.current ? `, ${p.current}` : ""}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {view.panel.map((p) => (
        <div key={p.name}>
          <p>
            {p.name}: {p.says}.
          </p>
          {p.signals.length > 0 ? (
            <p class="more">
              Signals in order: <code>{p.signals.join(" ")}</code>
            </p>
          ) : null}
        </div>
      ))}
      <p>
        Before wiring anything, read the <a href={`${root}cautions.html`}>cautions</a>.
      </p>
    </Fold>
  );
}

function RevisionsSection({ view }: { readonly view: CardPage }) {
  return (
    <Fold id="revisions" title="Its revisions">
      <dl class="revisions">
        {view.revisions.map((r) => (
          <div key={r.id}>
            <dt>
              <code>{r.id}</code> {r.date ? <span class="more">{r.date}</span> : null}
            </dt>
            <dd>
              {r.tell}
              {r.changes ? ` Changed: ${r.changes}` : ""}
            </dd>
          </div>
        ))}
      </dl>
    </Fold>
  );
}
