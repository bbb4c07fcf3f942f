// "Does it work in mine?": the picker, then every board with its revisions, its firmware line as a bar, and the reasons of each stretch.
import type { CardPage, GroupView, RunView, WhereView } from "../../src/pages/index.js";
import { Link, Mark, Section, Svg, stated } from "./bits.js";
import { Reasons } from "./Reasons.js";

export function Where({ view }: { readonly view: CardPage }) {
  return (
    <Section id="where" title="Does it work in mine?">
      <form class="picker">
        <label>
          Your board
          <select name="board">
            <option value="">choose</option>
            {view.picker.map((b) => (
              <optgroup key={b.board} label={b.board}>
                {b.revisions.map((r) => (
                  <option key={r.value} value={r.value} data-versions={r.versions}>
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
        <output aria-live="polite" />
      </form>
      {view.where.map((w) => (
        <BoardWhere key={w.id} where={w} root={view.root} />
      ))}
    </Section>
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
        <Group key={g.revisions.join()} group={g} root={root} />
      ))}
    </div>
  );
}

function Group({ group, root }: { readonly group: GroupView; readonly root: string }) {
  return (
    <div class="group">
      <h4>
        {group.says}{" "}
        {group.matrix.map((m) => (
          <a key={m.href} href={`${root}${m.href}`} title="All cards in this revision">
            <code>{m.text}</code>
          </a>
        ))}
      </h4>
      {group.line ? (
        <Svg as="div" css="line" svg={group.line} />
      ) : (
        <ol class="bar" aria-hidden="true">
          {group.segments.map((seg) => (
            <li key={seg.version} class={seg.css}>
              <code>{seg.version}</code>
            </li>
          ))}
        </ol>
      )}
      <ol class="runs">
        {group.runs.map((r) => (
          <Run key={r.text} run={r} root={root} />
        ))}
      </ol>
    </div>
  );
}

function Run({ run, root }: { readonly run: RunView; readonly root: string }) {
  return (
    <li class={`run ${run.mark.css}`}>
      {run.anchors.map((a) => (
        <span key={a.id} id={a.id} class="anchor" {...stated({ ...run.mark, of: { kind: "answer", asks: a.asks } })} />
      ))}
      <details>
        <summary>
          <span class="span">{run.text}</span> <Mark mark={run.mark} />
        </summary>
        <Reasons reasons={run} root={root} />
      </details>
    </li>
  );
}
