// The frame of every page: head, menu, search box, the page's own content, foot. It decides nothing about what is shown.
import type { ComponentChildren } from "preact";
import { menu, type PageHead, policy } from "../../src/pages/index.js";

export interface LayoutProps {
  readonly page: PageHead;
  /** Heading of the page; the title when left out. */
  readonly heading?: string;
  /** What kind of thing it is, above the heading. */
  readonly kind?: string;
  readonly children: ComponentChildren;
  /** Uses the whole width: the matrix. */
  readonly wide?: boolean;
  readonly scripts?: readonly string[];
  readonly styles?: readonly string[];
}

export function Layout({ page, heading, kind, children, wide, scripts = [], styles = [] }: LayoutProps) {
  const { root, search } = page;
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta http-equiv="Content-Security-Policy" content={policy} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{page.part === "start" ? page.title : `${page.title} \u2013 Slotwright`}</title>
        <meta name="description" content={page.description} />
        <script src={`${root}assets/early.js`} />
        <link rel="icon" href={`${root}assets/icon.svg`} type="image/svg+xml" />
        <link rel="stylesheet" href={`${root}assets/site.css`} />
        {styles.map((s) => (
          <link key={s} rel="stylesheet" href={`${root}${s}`} />
        ))}
        <link rel="alternate" type="application/atom+xml" title="New results" href={`${root}data/results.atom`} />
        <script src={`${root}assets/site.js`} defer />
        {scripts.map((s) => (
          <script key={s} src={`${root}${s}`} defer />
        ))}
      </head>
      <body class={wide ? "wide" : ""} data-root={root}>
        <a class="skip" href="#content">
          To the content
        </a>
        <header class="top">
          <a class="home" href={`${root}index.html`}>
            Slotwright
          </a>
          <nav aria-label="Site">
            <ul>
              {menu.map((m) => (
                <li key={m.href}>
                  <a href={`${root}${m.href}`} aria-current={m.part === page.part ? "true" : undefined}>
                    {m.text}
                  </a>
                </li>
              ))}
            </ul>
          </nav>
          {page.part === "search" ? null : (
            <search class="find">
              <form action={`${root}search.html`} method="get">
                <label for="find">Search</label>
                <input id="find" name="q" type="search" autocomplete="off" placeholder="model or symptom" />
                <button type="submit">Find</button>
              </form>
            </search>
          )}
        </header>
        {page.notice ? (
          <p class="notice" role="note">
            {page.notice}
          </p>
        ) : null}
        <main id="content" tabIndex={-1} data-pagefind-body={search ? "" : undefined}>
          {search ? <SearchMeta title={page.title} search={search} /> : null}
          <div class="title">
            {kind ? <p class="kind">{kind}</p> : null}
            <h1>{heading ?? page.title}</h1>
          </div>
          {children}
          {page.written ? (
            <p class="written">
              Written in <a href={`${root}${page.written.href}`}>{page.written.file}</a>.
            </p>
          ) : null}
        </main>
        <p class="on-paper">
          {page.edition}. <span data-printed>{page.href}</span>
        </p>
        <footer>
          <p>
            <a href={`${root}sure.html`}>How sure is this?</a> <a href={`${root}words.html`}>Words</a>{" "}
            <a href={`${root}cautions.html`}>Cautions</a> <a href={`${root}data/index.html`}>About the data</a>
          </p>
          <p>Before you open a machine, read the cautions. Nothing here replaces the rules and the licensed trades where you live.</p>
          <p id="kept" hidden />
        </footer>
      </body>
    </html>
  );
}

/** What the search index keeps of a page besides its text. */
function SearchMeta({ title, search }: { readonly title: string; readonly search: NonNullable<PageHead["search"]> }) {
  return (
    <div hidden>
      <span data-pagefind-meta="title">{title}</span>
      <span data-pagefind-meta="answer">{search.answer}</span>
      <span data-pagefind-meta="kind" data-pagefind-filter="kind">
        {search.kind}
      </span>
      {search.boards.map((b) => (
        <span key={b} data-pagefind-filter="board">
          {b}
        </span>
      ))}
      {search.verdict ? (
        <span data-pagefind-meta="verdict" data-pagefind-filter="verdict">
          {search.verdict}
        </span>
      ) : null}
      <span data-pagefind-weight="8">{search.names.join(" ")}</span>
      <span data-pagefind-weight="5">{search.symptoms.join(" ")}</span>
    </div>
  );
}
