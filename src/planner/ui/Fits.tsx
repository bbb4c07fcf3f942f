// The other way round: which cards of the club's records would work in this machine as it is, with at most two changes.
import { useEffect, useState } from "preact/hooks";
import type { Fitting } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import { useApp } from "./app-context.js";
import { Mark } from "./bits.js";

/** So many are shown at first: the ones that ask for least. */
const first = 10;

export function Fits() {
  const { build, solve, catalogue, store } = useApp();
  const [open, setOpen] = useState(false);
  const [all, setAll] = useState(false);
  const [told, setTold] = useState<{ readonly build: Build; readonly fits: readonly Fitting[] | undefined }>();
  useEffect(() => {
    if (!open) return;
    let wanted = true;
    solve
      .ask("fits", { build })
      .then((fits) => wanted && setTold({ build, fits: "kind" in fits ? undefined : fits }))
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [open, build, solve]);
  return (
    <details class="fits" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>What else would fit?</summary>
      {!open ? null : told?.build !== build ? (
        <p class="more" role="status">
          Trying every card.
        </p>
      ) : told.fits === undefined ? (
        <p class="more">The build names something the records do not have; mend that first.</p>
      ) : (
        <ul class="lines">
          {told.fits.slice(0, all ? undefined : first).map((f) => (
            <li key={f.card}>
              <span class="name">{catalogue.names[`card/${f.card}`] ?? f.card}</span> <Mark verdict={f.verdict} />{" "}
              <span class="more">{f.changes === 0 ? "nothing to change" : `after: ${f.says.join("; ")}`}</span>{" "}
              <button type="button" class="small" onClick={() => store.make({ do: "add", card: f.card })}>
                Add<span class="unseen"> {catalogue.names[`card/${f.card}`]}</span>
              </button>
            </li>
          ))}
          {told.fits.length > first && !all ? (
            <li>
              <button type="button" class="small" onClick={() => setAll(true)}>
                The other {told.fits.length - first}
              </button>
            </li>
          ) : null}
        </ul>
      )}
    </details>
  );
}
