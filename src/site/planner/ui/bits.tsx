// Small pieces of the planner: the mark with its word, the records a fact rests on, a list of facts.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { verdictMark } from "../../../drawing/index.js";
import type { Evidence, Fact, Ref, Verdict } from "../../../planning/index.js";
import { evidenceWords, verdictWords } from "../../words.js";
import { useDesk } from "./desk.js";

export function Mark({ verdict, evidence, word = true }: { verdict: Verdict; evidence?: Evidence; word?: boolean }) {
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

export function Refs({ refs }: { refs: readonly Ref[] }) {
  const { shelf, places } = useDesk();
  const seen = new Map(refs.map((r) => [`${r.kind}/${r.id}`, r]));
  if (seen.size === 0) return null;
  return (
    <span class="refs">
      {[...seen].map(([key, r], i) => (
        <span key={key}>
          {i > 0 ? "; " : ""}
          <a href={places.record(r)}>{shelf.names[key] ?? r.id}</a>
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

let due = 0;

/** What was tapped is shown by the browser at once; all that follows from it is set after that. While something is due, the page says so. */
export function afterPaint(then: () => void): void {
  due += 1;
  document.getElementById("planner")?.setAttribute("data-due", "");
  requestAnimationFrame(() =>
    setTimeout(() => {
      then();
      due -= 1;
      if (due === 0) document.getElementById("planner")?.removeAttribute("data-due");
    }),
  );
}

export interface PickProps {
  readonly type: "radio" | "checkbox";
  readonly name?: string;
  readonly checked: boolean;
  readonly disabled?: boolean;
  readonly describedBy?: string;
  readonly onPick: () => void;
  readonly children: ComponentChildren;
}

/** A radio or a box with its words. It shows the tap at once; the build follows after the page has been painted. */
export function Pick({ type, name, checked, disabled, describedBy, onPick, children }: PickProps) {
  const { build } = useDesk();
  const [tapped, setTapped] = useState<{ readonly of: typeof build; readonly now: boolean }>();
  // Once the build has followed, it alone says what is chosen.
  const shown = tapped?.of === build ? tapped.now : checked;
  return (
    <label class="pick">
      <input
        type={type}
        name={name}
        checked={shown}
        disabled={disabled}
        aria-describedby={describedBy}
        onChange={(e) => {
          setTapped({ of: build, now: e.currentTarget.checked });
          afterPaint(onPick);
        }}
      />
      <span>{children}</span>
    </label>
  );
}
