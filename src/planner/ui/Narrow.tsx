// Narrows the ways to one kind: one verdict, or at least so well proven. Every choice says how many combinations there are of it in all,
// not only among the combinations shown.
import type { Counts, KindCount, Only, Workable } from "../../planning/index.js";
import { evidenceOrder, evidenceWords, verdictOrder, verdictWords } from "../../words/index.js";
import { digits } from "./bits.js";

/** Several kinds together: exact when each is. */
export function counted(kinds: readonly KindCount[]): { readonly count: bigint; readonly exact: boolean } {
  return { count: kinds.reduce((sum, k) => sum + BigInt(k.count), 0n), exact: kinds.every((k) => k.exact) };
}

function words({ count, exact }: ReturnType<typeof counted>): string {
  if (exact) return digits(String(count));
  return count === 0n ? "not counted" : `at least ${digits(String(count))}`;
}

export function Narrow(props: { counts: Counts; only: Only; onNarrow: (only: Only) => void }) {
  const { counts, only, onNarrow } = props;
  const of = (verdict: Workable | undefined, evidence: Only["evidence"]) =>
    counted(counts.kinds.filter((k) => k.evidence === (evidence ?? "inferred") && (verdict === undefined || k.verdict === verdict)));
  const some = ({ count, exact }: ReturnType<typeof counted>) => count > 0n || !exact;
  const verdicts = verdictOrder.filter((v): v is Workable => v !== "ruled-out" && some(of(v, undefined)));
  const all = of(undefined, undefined);
  // A grade that adds nothing to the better ones says nothing.
  const grades = evidenceOrder.filter((e, i) => {
    const here = of(undefined, e);
    const better = i === 0 ? { count: 0n, exact: true } : of(undefined, evidenceOrder[i - 1]);
    return (
      e !== "inferred" && some(here) && (!here.exact || here.count > better.count) && !(here.exact && all.exact && here.count === all.count)
    );
  });
  if (verdicts.length < 2 && grades.length === 0) return null;
  return (
    <form class="narrow" onSubmit={(e) => e.preventDefault()} aria-label="Narrow the combinations shown">
      {verdicts.length > 1 ? (
        <label>
          Answer
          <select
            value={only.verdict ?? ""}
            onChange={(e) => onNarrow({ ...only, verdict: (e.currentTarget.value || undefined) as Only["verdict"] })}
          >
            <option value="">any ({words(of(undefined, only.evidence))})</option>
            {verdicts.map((v) => (
              <option key={v} value={v}>
                {verdictWords[v].word} ({words(of(v, only.evidence))})
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {grades.length > 0 ? (
        <label>
          Sure by
          <select
            value={only.evidence ?? ""}
            onChange={(e) => onNarrow({ ...only, evidence: (e.currentTarget.value || undefined) as Only["evidence"] })}
          >
            <option value="">any ({words(of(only.verdict, undefined))})</option>
            {grades.map((g) => (
              <option key={g} value={g}>
                {evidenceWords[g].word}
                {g === "bench" ? "" : ", or better"} ({words(of(only.verdict, g))})
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </form>
  );
}
