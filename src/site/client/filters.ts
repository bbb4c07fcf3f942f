// Filters of the matrix: by verdict, evidence and kind of card. Rows that do not match are hidden, and how many are left is said.

export function matrixFilters(): void {
  const form = document.querySelector<HTMLFormElement>("form.filters");
  const rows = [...document.querySelectorAll<HTMLTableRowElement>("table.matrix tbody tr")];
  if (!form || rows.length === 0) return;
  const left = form.querySelector("output");
  const has = (row: HTMLTableRowElement, name: string, wanted: string) =>
    wanted === "" || (row.dataset[name] ?? "").split(" ").includes(wanted);
  const apply = () => {
    const wanted = new FormData(form);
    const of = (name: string) => String(wanted.get(name) ?? "");
    let shown = 0;
    for (const row of rows) {
      const fits = has(row, "verdicts", of("verdict")) && has(row, "evidences", of("evidence")) && has(row, "does", of("kind"));
      row.hidden = !fits;
      if (fits) shown += 1;
    }
    if (left) left.textContent = shown === rows.length ? `All ${rows.length} cards` : `${shown} of ${rows.length} cards`;
  };
  form.addEventListener("input", apply);
  form.addEventListener("reset", () => setTimeout(apply));
  form.addEventListener("submit", (event) => event.preventDefault());
  apply();
}
