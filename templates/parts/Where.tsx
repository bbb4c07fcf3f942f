// "Does it work in mine?": the picker, then every board with its revisions, its firmware line as a bar, and the reasons of each stretch.
import { Fragment } from "preact";
import type { AskedView, CardPage, CaseView, GroupView, RunView, WhereView } from "../../src/pages/index.js";
import { Bar } from "./Bar.js";
import { Link, Mark, Section, stated } from "./bits.js";
import { Reasons } from "./Reasons.js";

export function Where({ view }: { readonly view: CardPage }) {
  return (
    <Section id="where" title="Does it work in mine?">
      <Picker picker={view.picker} />
      {view.where.map((w) => (
        <BoardWhere key={w.id} where={w} root={view.root} />
      ))}
    </Section>
  );
}

function Picker({ picker }: { readonly picker: CardPage["picker"] }) {
  return (
    <form class="picker">
      <label>
        Your board
        <select name="board">
          <option value="">choose</option>
          {picker.boards.map((b) => (
            <optgroup key={b.board} label={b.name}>
              {b.revisions.map((r) => (
                <option key={r.text} value={r.text} data-versions={JSON.stringify(r.versions)} data-memories={JSON.stringify(r.memories)}>
                  {r.text}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <label>
        Its firmware
        <select name="version">
          <option value="">any of them</option>
        </select>
      </label>
      <label>
        Its memory
        <select name="memory">
          <option value="">any</option>
        </select>
      </label>
      {picker.cardRevisions.length > 0 ? (
        <label>
          Revision of the card
          <select name="card">
            <option value="">any</option>
            {picker.cardRevisions.map((r) => (
              <option key={r.value} value={r.value}>
                {r.text}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <output aria-live="polite" />
    </form>
  );
}

function BoardWhere({ where, root }: { readonly where: WhereView; readonly root: string }) {
  return (
    <div class="where" id={`on-${where.id}`}>
      <h3>
        <Link link={where.board} root={root} /> <Mark mark={where.mark} />
      </h3>
      <p>{where.says}</p>
      {where.groups.map((g) => (
        <div key={g.revisions.join()} class="group">
          <GroupName group={g} root={root} />
          <Bar bar={g.bar} />
        </div>
      ))}
      <details class="reasons-of">
        <summary>Why, and for which memory and settings</summary>
        {where.groups.map((g) => (
          <div key={g.revisions.join()}>
            <GroupName group={g} root={root} />
            <ol class="runs">
              {g.runs.map((r) => (
                <Run key={r.text} run={r} root={root} />
              ))}
            </ol>
          </div>
        ))}
      </details>
    </div>
  );
}

function GroupName({ group, root }: { readonly group: GroupView; readonly root: string }) {
  return (
    <h4>
      {group.says}{" "}
      {group.matrix.map((m) => (
        <a key={m.href} href={`${root}${m.href}`} title="All cards in this revision">
          <code>{m.text}</code>
        </a>
      ))}
    </h4>
  );
}

function Run({ run, root }: { readonly run: RunView; readonly root: string }) {
  return (
    <li class={`run ${run.mark.css}`}>
      {run.anchors.map((a) => (
        <Fragment key={a.id}>
          <span id={a.id} class="anchor" {...stated({ ...run.mark, of: { kind: "answer", asks: a.asks } })} />
          {a.former ? <span id={a.former} class="anchor" /> : null}
        </Fragment>
      ))}
      <details>
        <summary>
          <span class="span">{run.text}</span> <Mark mark={run.mark} />
          {run.decides ? <span class="more">, {run.decides}</span> : null}
        </summary>
        {run.asked.map((asked) => (
          <Asked key={asked.of} asked={asked} title={run.asked.length > 1} root={root} />
        ))}
      </details>
    </li>
  );
}

function Asked({ asked, title, root }: { readonly asked: AskedView; readonly title: boolean; readonly root: string }) {
  return (
    <div class="asked" data-of={asked.anchors.join(" ")}>
      {title ? <p class="of">{asked.of}</p> : null}
      {asked.cases.map((one) => (
        <Case key={one.having} one={one} root={root} />
      ))}
      {asked.near.length > 0 ? (
        <ul class="why near">
          {asked.near.map((n) => (
            <li key={n.build.href}>
              Nearly the same, not counted: <Link link={n.build} root={root} /> ({n.differs})
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

function Case({ one, root }: { readonly one: CaseView; readonly root: string }) {
  return (
    <div class="case" data-of={JSON.stringify(one.of)}>
      {one.having ? (
        <p class="having">
          <Mark mark={one.mark} /> {one.having}
        </p>
      ) : null}
      {one.placing.map((p) => (
        <p key={p} class="placing">
          {p}
        </p>
      ))}
      <Reasons reasons={one} root={root} />
    </div>
  );
}
