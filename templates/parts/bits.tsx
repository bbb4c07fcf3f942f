// Small pieces that many pages set: marks, values, links to records, lists of builds and problems, sources.
import type { ComponentChildren } from "preact";
import {
  type BoardPage,
  type ClaimLine,
  type ConflictLine,
  type Figure,
  type LinkView,
  listed,
  type MarkView,
  markSvg,
  type RefView,
  type SourceView,
  type TestedView,
  type ValueView,
} from "../../src/pages/index.js";

/** Text that is already SVG, made by our own drawing functions, which escape every word they are given. */
export function Svg({ svg, as = "span", css }: { readonly svg: string; readonly as?: "span" | "div"; readonly css?: string }) {
  const Tag = as;
  return <Tag class={css} dangerouslySetInnerHTML={{ __html: svg }} />;
}

/** What a mark states, as data beside its words: so that a program reads it without guessing at a sentence. */
export function stated({ verdict, evidence, of }: Pick<MarkView, "verdict" | "evidence" | "of">) {
  if (of?.kind === "result") return { "data-build": of.build, "data-mode": of.mode, "data-outcome": of.outcome };
  if (of?.kind === "problem") return { "data-conflict": of.conflict, "data-effect": of.effect, "data-status": of.status };
  return { "data-verdict": verdict, "data-evidence": verdict === "ruled-out" ? undefined : evidence, "data-asks": of?.asks };
}

/** What a sentence counts: so many cards with each answer, on the machine that is named. */
export function counted(tally: BoardPage["counts"]) {
  if (!tally) return {};
  const counts = Object.entries(tally.counts).map(([verdict, n]) => `${verdict}:${n}`);
  return { "data-counts": counts.join(" "), "data-asks": tally.asks };
}

/** Mark and word together. */
export function Mark({ mark, evidence = true }: { readonly mark: MarkView; readonly evidence?: boolean }) {
  return (
    <span class={`mark ${mark.css}`} {...stated(mark)}>
      <Svg svg={markSvg(mark, true)} css="mk" /> <span class="word">{mark.word}</span>
      {evidence && mark.evidenceWord ? <span class="ev">, {mark.evidenceWord}</span> : null}
      {mark.of?.kind === "answer" && mark.of.says ? <span class="for"> ({mark.of.says})</span> : null}
    </span>
  );
}

/** The drawing alone, with its word as accessible name: for dense tables. */
export function MarkOnly({ mark }: { readonly mark: MarkView }) {
  return <Svg svg={markSvg(mark, true)} css={`mk ${mark.css}`} />;
}

/** One drawing in two widths: the narrow one for a phone. */
export function Drawing({ figure }: { readonly figure: Figure }) {
  if (figure.narrow === figure.wide)
    return (
      <figure class="drawing">
        <Svg as="div" svg={figure.wide} />
      </figure>
    );
  return (
    <figure class="drawing">
      <Svg as="div" css="on-narrow" svg={figure.narrow} />
      <Svg as="div" css="on-wide" svg={figure.wide} />
    </figure>
  );
}

export function Answer({
  mark,
  counts,
  says,
  sure,
  root,
}: {
  readonly mark?: MarkView | undefined;
  readonly counts?: BoardPage["counts"];
  readonly says: string;
  readonly sure?: string;
  readonly root: string;
}) {
  return (
    <div class="answer">
      <p class="says" {...counted(counts)}>
        {says}
      </p>
      {mark || sure ? (
        <p class="sure">
          {mark ? <Mark mark={mark} /> : null}
          {mark ? ". " : ""}
          {sure} <a href={`${root}sure.html`}>How sure is this?</a>
        </p>
      ) : null}
    </div>
  );
}

/** Something to do next; nothing when there is nowhere to go. */
export function Act({
  href,
  root,
  children,
}: {
  readonly href?: string | undefined;
  readonly root: string;
  readonly children: ComponentChildren;
}) {
  if (href === undefined) return null;
  return (
    <p>
      <a class="act" href={`${root}${href}`}>
        {children}
      </a>
    </p>
  );
}

export function Section({
  id,
  title,
  children,
  wide,
}: {
  readonly id?: string;
  readonly title: string;
  readonly children: ComponentChildren;
  readonly wide?: boolean;
}) {
  return (
    <section id={id} class={wide ? "wide" : undefined}>
      <h2>{title}</h2>
      <div class="body">{children}</div>
    </section>
  );
}

/** A section that is opened when it is wanted: everything weighs less than the answer. The id is inside, so that a link to it opens it. */
export function Fold({
  id,
  title,
  says,
  children,
}: {
  readonly id?: string;
  readonly title: string;
  readonly says?: string | undefined;
  readonly children: ComponentChildren;
}) {
  return (
    <section class="fold">
      <details>
        <summary>
          <h2>{title}</h2> {says ? <span class="more">{says}</span> : null}
        </summary>
        <div class="body" id={id}>
          {children}
        </div>
      </details>
    </section>
  );
}

export function Value({ value, code }: { readonly value: ValueView; readonly code?: boolean | undefined }) {
  if (value.known && code) return <code>{value.text}</code>;
  if (value.known) return <span>{value.text}</span>;
  return (
    <span class="notknown">
      {value.text}
      {value.find ? <span class="how"> To find out: {value.find}</span> : null}
    </span>
  );
}

export function Facts({
  facts,
}: {
  readonly facts: readonly { readonly name: string; readonly value: ValueView; readonly code?: boolean | undefined }[];
}) {
  return (
    <dl class="facts">
      {facts.map((f) => (
        <div key={f.name}>
          <dt>{f.name}</dt>
          <dd>
            <Value value={f.value} code={f.code} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

export function Refs({ refs, root }: { readonly refs: readonly RefView[]; readonly root: string }) {
  if (refs.length === 0) return null;
  return (
    <span class="refs">
      {refs.map((r, i) => (
        <span key={`${r.href}${r.line?.text ?? i}`}>
          {i > 0 ? "; " : ""}
          <a href={`${root}${r.href}`}>{r.text}</a>
          {r.line ? (
            <>
              {" "}
              <a class="line" href={`${root}${r.line.href}`}>
                {r.line.text}
              </a>
            </>
          ) : null}
        </span>
      ))}
    </span>
  );
}

export function Link({ link, root }: { readonly link: LinkView; readonly root: string }) {
  return <a href={link.href.startsWith("#") ? link.href : `${root}${link.href}`}>{link.text}</a>;
}

export function Links({ links, root }: { readonly links: readonly LinkView[]; readonly root: string }) {
  return (
    <>
      {links.map((l, i) => (
        <span key={l.href}>
          {i > 0 ? ", " : ""}
          <Link link={l} root={root} />
        </span>
      ))}
    </>
  );
}

export function Claims({ lines }: { readonly lines: readonly ClaimLine[] }) {
  return (
    <ul class="plain">
      {lines.map((l) => (
        <li key={`${l.kind}${l.what}`}>
          {l.kind} <code>{l.what}</code>
          {l.note ? `, ${l.note}` : ""}
        </li>
      ))}
    </ul>
  );
}

function TestedLines({ builds, root }: { readonly builds: readonly TestedView[]; readonly root: string }) {
  return (
    <ul class="lines">
      {builds.map((b) => (
        <li key={b.link.href}>
          <Link link={b.link} root={root} />
          <span class="state">
            <Mark mark={b.mark} evidence={false} />
          </span>
          <span class="more">
            {b.on}; {b.by}, {b.date}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The newest tests; the rest is folded away. */
export function Tested({ builds, root }: { readonly builds: readonly TestedView[]; readonly root: string }) {
  const older = builds.slice(listed);
  return (
    <div>
      <TestedLines builds={builds.slice(0, listed)} root={root} />
      {older.length > 0 ? (
        <details>
          <summary>{older.length} older</summary>
          <TestedLines builds={older} root={root} />
        </details>
      ) : null}
    </div>
  );
}

function ConflictLines({ lines, root }: { readonly lines: readonly ConflictLine[]; readonly root: string }) {
  return (
    <ul class="lines">
      {lines.map((c) => (
        <li key={c.link.href}>
          <Link link={c.link} root={root} />
          <span class="state">
            <Mark mark={c.mark} evidence={false} />
          </span>
          <span class="more">{c.symptom}</span>
        </li>
      ))}
    </ul>
  );
}

/** Problems that stand open at once; two more are not worth a fold. */
const openProblems = 4;

export function Conflicts({ lines, root }: { readonly lines: readonly ConflictLine[]; readonly root: string }) {
  const shown = lines.length > openProblems + 2 ? openProblems : lines.length;
  return (
    <div>
      <ConflictLines lines={lines.slice(0, shown)} root={root} />
      {shown < lines.length ? (
        <details>
          <summary>{lines.length - shown} more problems</summary>
          <ConflictLines lines={lines.slice(shown)} root={root} />
        </details>
      ) : null}
    </div>
  );
}

export function Sources({ sources, folded }: { readonly sources: readonly SourceView[]; readonly folded?: boolean }) {
  if (sources.length === 0) return null;
  const Box = folded ? Fold : Section;
  return (
    <Box id="sources" title="Where this comes from">
      <dl class="sources">
        {sources.map((s) => (
          <div key={s.id} id={`source-${s.id}`}>
            <dt>
              <code>{s.id}</code> {s.kind}
            </dt>
            <dd>
              {s.url ? <a href={s.url}>{s.says}</a> : s.says}
              {s.by || s.date ? ` (${[s.by, s.date].filter(Boolean).join(", ")})` : ""}
            </dd>
          </div>
        ))}
      </dl>
    </Box>
  );
}

export function Notes({ notes, folded }: { readonly notes?: string | undefined; readonly folded?: boolean }) {
  if (!notes) return null;
  const Box = folded ? Fold : Section;
  return (
    <Box title="Notes">
      <p>{notes}</p>
    </Box>
  );
}
