// Filters of the matrix: by name, verdict and evidence. Rows that do not match are hidden, and purposes without a row left;
// how many are left is said, on paper as well.

export function matrixFilters(): void {
  const form = document.querySelector<HTMLFormElement>("form.filters");
  const rows = [...document.querySelectorAll<HTMLTableRowElement>("table.matrix tr.card")];
  if (!form || rows.length === 0) return;
  const left = form.querySelector("output");
  const sides = document.querySelector<HTMLElement>("section.sides");
  const groups = [...document.querySelectorAll<HTMLTableSectionElement>("table.matrix tbody")].map((group) => ({
    group,
    rows: [...group.querySelectorAll<HTMLTableRowElement>("tr.card")],
  }));
  const names = new Map(rows.map((row) => [row, row.querySelector("th a")?.textContent?.toLowerCase() ?? ""]));
  /** Answer and certainty must be those of one cell: a card that works, and another thing about it seen on a bench, is not meant. */
  const says = (row: HTMLTableRowElement, verdict: string, evidence: string) =>
    (row.dataset.says ?? "").split(" ").some((cell) => {
      const [v, e] = cell.split(":");
      return (verdict === "" || verdict === v) && (evidence === "" || evidence === e);
    });
  const apply = () => {
    const wanted = new FormData(form);
    const of = (name: string) => String(wanted.get(name) ?? "");
    const words = of("name").toLowerCase().split(/\s+/).filter(Boolean);
    const named = (row: HTMLTableRowElement) => {
      // What the card is for counts as a word of it: "disk" finds them all.
      const text = `${names.get(row)} ${row.dataset.does ?? ""}`;
      return words.every((word) => text.includes(word));
    };
    let shown = 0;
    for (const row of rows) {
      const fits = named(row) && says(row, of("verdict"), of("evidence"));
      row.hidden = !fits;
      const note = row.nextElementSibling;
      if (note instanceof HTMLElement && note.classList.contains("note")) note.hidden = !fits;
      if (fits) shown += 1;
    }
    for (const { group, rows: of } of groups) group.hidden = of.every((row) => row.hidden);
    const chosen = [...form.querySelectorAll("select")].filter((s) => s.value !== "").flatMap((s) => s.selectedOptions[0]?.text ?? []);
    if (words.length > 0) chosen.unshift(`"${words.join(" ")}"`);
    if (sides) sides.dataset.narrowed = chosen.length === 0 ? "" : `Only: ${chosen.join("; ")}. ${shown} of ${rows.length} cards.`;
    if (left) left.textContent = shown === rows.length ? `All ${rows.length} cards` : `${shown} of ${rows.length} cards`;
  };
  form.addEventListener("input", apply);
  form.addEventListener("reset", () => setTimeout(apply));
  form.addEventListener("submit", (event) => event.preventDefault());
  apply();
}
