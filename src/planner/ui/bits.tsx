// Small pieces of the planner: the mark with its word, the records a fact rests on, a list of facts.
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { verdictMark } from "../../drawing/index.js";
import type { Evidence, Fact, Ref, Repair, Verdict } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import { evidenceWords, thenText, verdictWords } from "../../words/index.js";
import { useApp } from "./app-context.js";
import { afterPaint } from "./deferred.js";

export function Mark({ verdict, evidence, word = true }: { verdict: Verdict; evidence?: Evidence | undefined; word?: boolean }) {
  const v = verdictWords[verdict];
  const rests = verdict === "ruled-out" ? undefined : evidence;
  return (
    <span class={`mark ${v.css}`}>
      <span class="mk" dangerouslySetInnerHTML={{ __html: verdictMark(verdict, rests, 20, { decorative: true }) }} />{" "}
      <span class={word ? "word" : "unseen"}>{v.word}</span>
      {rests ? <span class={word ? "ev" : "unseen"}>, {evidenceWords[rests].word}</span> : null}
    </span>
  );
}

/** What a way out leads to: its mark, and in words how many combinations. */
export function Then({ repair }: { repair: Repair }) {
  return (
    <span class="more">
      <span aria-hidden="true">
        <Mark verdict={repair.verdict} word={false} />
      </span>{" "}
      {thenText(repair)}
    </span>
  );
}

export function Refs({ refs }: { refs: readonly Ref[] }) {
  const { catalogue, places } = useApp();
  const seen = new Map(refs.map((r) => [`${r.kind}/${r.id}`, r]));
  if (seen.size === 0) return null;
  return (
    <span class="refs">
      {[...seen].map(([key, r], i) => (
        <span key={key}>
          {i > 0 ? "; " : ""}
          <a href={places.record(r)}>{catalogue.names[key] ?? r.id}</a>
        </span>
      ))}
    </span>
  );
}

export function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <ul class="why">
      {facts.map((f) => (
        <li key={f.says}>
          {f.says} <Refs refs={f.refs} />
        </li>
      ))}
    </ul>
  );
}

/** A part of the page with its heading; the same form as on every other page. */
export function Part({ id, title, children }: { id: string; title: string; children: ComponentChildren }) {
  return (
    <section id={id} aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`} tabIndex={-1}>
        {title}
      </h2>
      <div class="body">{children}</div>
    </section>
  );
}

/** 1234567 -> "1,234,567"; the number may be longer than a computer counts exactly, so it stays text. */
export function digits(count: string): string {
  return count.replace(/\B(?=(\d{3})+$)/g, ",");
}

/** A button that is gone once it was pressed leaves the reader at the heading of what it changed; the page does not move. */
export function standAt(part: string): void {
  setTimeout(() => document.getElementById(`${part}-title`)?.focus({ preventScroll: true }));
}

/** Brings a part of the page into sight. Not a link: the address holds the build. */
export function goTo(part: string): void {
  const title = document.getElementById(`${part}-title`);
  title?.scrollIntoView({ block: "start" });
  title?.focus({ preventScroll: true });
}

export interface PickProps {
  readonly type: "radio" | "checkbox";
  readonly name?: string | undefined;
  readonly id?: string | undefined;
  readonly checked: boolean;
  /** Neither checked nor not: a box that stands for "does not matter". */
  readonly mixed?: boolean;
  readonly disabled?: boolean;
  readonly describedBy?: string | undefined;
  readonly onPick: () => void;
  readonly children: ComponentChildren;
}

/** What was last tapped in each group, of the build as it stood then. */
const taps = new Map<string, { readonly of: Build; readonly pick: string; readonly now: boolean }>();

/**
 * A radio or a box with its words. The browser shows the tap at once, nothing has to be set anew for it; the build follows after the page
 * has been painted. Until it has, what was tapped stands, whatever else is set anew meanwhile.
 */
export function Pick({ type, name, id, checked, mixed = false, disabled, describedBy, onPick, children }: PickProps) {
  const { build } = useApp();
  const own = useId();
  const group = name ?? own;
  const tapped = taps.get(group);
  const shown = tapped?.of === build ? tapped.pick === own && tapped.now : checked;
  return (
    <label class="pick">
      <input
        type={type}
        name={name}
        id={id}
        checked={shown}
        indeterminate={mixed && tapped?.of !== build}
        disabled={disabled}
        aria-describedby={describedBy}
        onChange={(e) => {
          taps.set(group, { of: build, pick: own, now: e.currentTarget.checked });
          afterPaint(onPick);
        }}
      />
      <span>{children}</span>
    </label>
  );
}
