// The ways it works, best proven first: each with slots, settings, what to do, what it rests on. Narrowed by verdict, evidence, revision and
// firmware; two of them can be laid side by side.
import { useState } from "preact/hooks";
import type { Answer, Combination } from "../../../planning/index.js";
import { evidenceOrder, evidenceWords, verdictOrder, verdictWords } from "../../words.js";
import { Compare } from "./Compare.js";
import { useDesk } from "./desk.js";
import { Way } from "./Way.js";

type Narrow = Readonly<Record<string, string | undefined>>;

const firmwareOf = (c: Combination) => [...new Set(c.modes.map((m) => m.firmware))].join(", ");

/** What the list can be narrowed by, with how many of the ways shown have it. */
const traits: readonly { readonly id: string; readonly name: string; of(c: Combination): string; word(value: string): string }[] = [
  { id: "verdict", name: "Answer", of: (c) => c.verdict, word: (v) => verdictWords[v as Combination["verdict"]].word },
  { id: "evidence", name: "Sure by", of: (c) => c.evidence, word: (v) => evidenceWords[v as Combination["evidence"]].word },
  { id: "revision", name: "Revision", of: (c) => c.revision, word: (v) => v },
  { id: "firmware", name: "Firmware", of: firmwareOf, word: (v) => v },
];

const order: readonly string[] = [...verdictOrder, ...evidenceOrder];

export function Ways({ answer, onSheet }: { answer: Answer; onSheet: (c: Combination) => void }) {
  const { build } = useDesk();
  const [narrow, setNarrow] = useState<Narrow>({});
  const [marked, setMarked] = useState<{ readonly answer: Answer; readonly ways: readonly number[] }>({ answer, ways: [] });
  const compared = marked.answer === answer ? marked.ways : [];
  const all = answer.combinations.map((combination, i) => ({ combination, number: i + 1 }));
  if (all.length === 0) return null;
  const fits = (c: Combination, but?: string) =>
    traits.every((t) => t.id === but || narrow[t.id] === undefined || t.of(c) === narrow[t.id]);
  // A trait that no way has any more, after a change of the build, narrows nothing.
  const live = traits.filter((t) => narrow[t.id] === undefined || all.some(({ combination }) => t.of(combination) === narrow[t.id]));
  const shown = live.length === traits.length ? all.filter(({ combination }) => fits(combination)) : all;
  const mark = (n: number) =>
    setMarked({ answer, ways: compared.includes(n) ? compared.filter((c) => c !== n) : [...compared.slice(-1), n] });
  return (
    <section id="ways" aria-labelledby="ways-title">
      <h2 id="ways-title">The ways it works</h2>
      <div class="body">
        {all.length > 1 ? (
          <form class="narrow" onSubmit={(e) => e.preventDefault()} aria-label="Narrow the ways shown">
            {traits.map((t) => {
              const values = [...new Set(all.map(({ combination }) => t.of(combination)))].sort(
                (a, b) => order.indexOf(a) - order.indexOf(b) || a.localeCompare(b, "en", { numeric: true }),
              );
              if (values.length < 2) return null;
              return (
                <label key={t.id}>
                  {t.name}
                  <select value={narrow[t.id] ?? ""} onChange={(e) => setNarrow({ ...narrow, [t.id]: e.currentTarget.value || undefined })}>
                    <option value="">any ({all.filter(({ combination }) => fits(combination, t.id)).length})</option>
                    {values.map((v) => (
                      <option key={v} value={v}>
                        {t.word(v)} ({all.filter(({ combination }) => fits(combination, t.id) && t.of(combination) === v).length})
                      </option>
                    ))}
                  </select>
                </label>
              );
            })}
          </form>
        ) : null}
        <p class="more" role="status">
          {shown.length === 0
            ? "None of the ways shown has all of that. Widen one of the choices above."
            : `${shown.length === all.length ? "" : `${shown.length} of `}${all.length === 1 ? "One way" : `${all.length} kinds of way`}, best proven first.${all.length > 1 ? " Mark two to lay them side by side." : ""}`}
        </p>
        {compared.length === 2 ? <Compare answer={answer} ways={compared} /> : null}
        <ol class="ways-list">
          {shown.map(({ combination, number }) => (
            <Way
              key={number}
              combination={combination}
              number={number}
              first={number === shown[0]!.number}
              switched={combination.switched || (build.modes?.length ?? 0) > 1}
              marked={compared.includes(number)}
              onMark={all.length > 1 ? () => mark(number) : undefined}
              onSheet={() => onSheet(combination)}
            />
          ))}
        </ol>
      </div>
    </section>
  );
}
