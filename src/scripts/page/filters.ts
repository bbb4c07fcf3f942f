// Filters of the matrix: by verdict, evidence and kind of card. Rows that do not match are hidden, and how many are left is said,
// on paper as well.
import { itemAt } from "../../records/index.js";

export function matrixFilters(): void {
  const form = document.querySelector<HTMLFormElement>("form.filters");
  const rows = [...document.querySelectorAll<HTMLTableRowElement>("table.matrix tbody tr")];
  if (!form || rows.length === 0) return;
  const left = form.querySelector("output");
  const grid = itemAt(rows, 0).closest<HTMLElement>("section.grid");
  /** Answer and certainty must be those of one cell: a card that works, and another thing about it seen on a bench, is not meant. */
  const says = (row: HTMLTableRowElement, verdict: string, evidence: string) =>
    (row.dataset.says ?? "").split(" ").some((cell) => {
      const [v, e] = cell.split(":");
      return (verdict === "" || verdict === v) && (evidence === "" || evidence === e);
    });
  const apply = () => {
    const wanted = new FormData(form);
    const of = (name: string) => String(wanted.get(name) ?? "");
    let shown = 0;
    for (const row of rows) {
      const kind = of("kind") === "" || (row.dataset.does ?? "").split(" ").includes(of("kind"));
      const fits = kind && says(row, of("verdict"), of("evidence"));
      row.hidden = !fits;
      if (fits) shown += 1;
    }
    const chosen = [...form.querySelectorAll("select")].filter((s) => s.value !== "").map((s) => itemAt(s.selectedOptions, 0).text);
    if (grid) grid.dataset.narrowed = chosen.length === 0 ? "" : `Only: ${chosen.join("; ")}. ${shown} of ${rows.length} cards.`;
    if (left) left.textContent = shown === rows.length ? `All ${rows.length} cards` : `${shown} of ${rows.length} cards`;
  };
  form.addEventListener("input", apply);
  form.addEventListener("reset", () => setTimeout(apply));
  form.addEventListener("submit", (event) => event.preventDefault());
  apply();
}
