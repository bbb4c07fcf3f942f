// "Does it work in mine?": two lists on a card's page that show the one answer wanted, out of all that the page holds.

export function boardPicker(): void {
  const form = document.querySelector<HTMLFormElement>("form.picker");
  if (!form) return;
  const board = form.querySelector<HTMLSelectElement>("select[name=board]")!;
  const version = form.querySelector<HTMLSelectElement>("select[name=version]")!;
  const out = form.querySelector("output")!;

  const show = () => {
    out.replaceChildren();
    if (board.value === "") return;
    const versions = JSON.parse(board.selectedOptions[0]?.dataset.versions ?? "[]") as readonly (readonly [anchor: string, text: string])[];
    const had = version.value;
    const options = versions.map(([anchor, text]) => new Option(text, anchor));
    version.replaceChildren(new Option("any of them", ""), ...options);
    version.value = options.some((o) => o.value === had) ? had : "";
    const wanted = version.value === "" ? options.map((o) => o.value) : [version.value];
    const seen = new Set<Element>();
    for (const v of wanted) {
      const anchor = document.getElementById(`on-${board.value}--${v}`);
      const run = anchor?.closest("li.run");
      if (run) seen.add(run);
    }
    for (const run of seen) {
      const copy = run.cloneNode(true) as HTMLElement;
      for (const marked of copy.querySelectorAll("[id]")) marked.removeAttribute("id");
      for (const details of copy.querySelectorAll("details")) details.open = true;
      out.append(copy);
    }
  };
  form.addEventListener("input", show);
  form.addEventListener("submit", (event) => event.preventDefault());
  show();
}
