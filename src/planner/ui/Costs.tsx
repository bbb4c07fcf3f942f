// What each way out costs, side by side, worked out when it is wanted: a switch has to be planned for it.
import { useEffect, useState } from "preact/hooks";
import { Table } from "../../../templates/parts/sheet-bits.js";
import type { WayOutCost } from "../../pages/index.js";
import type { Repair } from "../../planning/index.js";
import { costCells, costHeads } from "../../words/index.js";
import { useApp } from "./app-context.js";

export function Costs({ repairs }: { readonly repairs: readonly Repair[] }) {
  const { bench } = useApp();
  const [open, setOpen] = useState(false);
  const [found, setFound] = useState<{ readonly of: readonly Repair[]; readonly costs?: readonly WayOutCost[] }>();
  useEffect(() => {
    if (!open) return;
    let wanted = true;
    bench
      .ask("costs", { repairs })
      .then((costs) => wanted && setFound({ of: repairs, costs }))
      .catch(() => wanted && setFound({ of: repairs }));
    return () => {
      wanted = false;
    };
  }, [open, repairs, bench]);
  const costs = found?.of === repairs ? found.costs : undefined;
  return (
    <details class="costs" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>What each way out costs</summary>
      {!open ? null : found?.of !== repairs ? (
        <p class="more" role="status">
          Planning the switch.
        </p>
      ) : costs ? (
        <>
          <Table heads={costHeads} rows={costs.map(costCells)} />
          {costs.map((c) =>
            c.impossible === undefined ? null : (
              <p key={c.kind} class="more">
                No switch can do it: {c.impossible}
              </p>
            ),
          )}
          <p class="more">Of each sort the cheapest; what leaves nothing out stands first.</p>
        </>
      ) : (
        <p role="alert">It could not be worked out.</p>
      )}
    </details>
  );
}
