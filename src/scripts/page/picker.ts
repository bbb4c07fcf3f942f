// "Does it work in mine?": lists on a card's page that name a machine, and the answers to just that question out of all that the page holds.
// What is left open is said, and the cases it leaves are shown side by side, so that the best of them does not stand for all.
import { type CaseOf, listText, mayBe, type Picked, type PickerOption, speaksOfMachine } from "../../pages/index.js";

export function boardPicker(): void {
  const form = document.querySelector<HTMLFormElement>("form.picker");
  const list = (name: string) => form?.querySelector<HTMLSelectElement>(`select[name=${name}]`) ?? undefined;
  const [board, version, memory, card] = [list("board"), list("version"), list("memory"), list("card")];
  const out = form?.querySelector("output");
  if (!form || !board || !version || !memory || !out) return;

  const show = () => {
    out.replaceChildren();
    const { versions = "[]", memories = "[]" } = board.selectedOptions[0]?.dataset ?? {};
    const known = JSON.parse(versions) as PickerOption[];
    offer(version, "any of them", known);
    offer(memory, "any", JSON.parse(memories) as PickerOption[]);
    memory.closest("label")?.toggleAttribute("hidden", memory.options.length < 2);
    if (board.value === "") return;
    const anchors = version.value === "" ? known.map((o) => o.value) : [version.value];
    const picked: Picked = { anchors, memory: memory.value, cardRevision: card?.value ?? "" };
    const open = [
      ...(version.value === "" ? ["its firmware"] : []),
      ...(memory.value === "" && memory.options.length > 1 ? ["its memory"] : []),
      ...(card?.value === "" ? ["the revision of the card"] : []),
    ];
    const said = open.length > 0 ? `You left open ${listText(open)}. ` : "";
    out.append(
      paragraph("open", `${said}Slot and settings are yours to choose; each answer says for which it holds.`),
      ...answers(picked, known),
    );
  };
  form.addEventListener("input", show);
  form.addEventListener("submit", (event) => event.preventDefault());
  show();
}

/** Offers these, and keeps what was chosen where it is among them. */
function offer(list: HTMLSelectElement, any: string, options: readonly PickerOption[]): void {
  const had = list.selectedOptions[0]?.text;
  list.replaceChildren(new Option(any, ""), ...options.map((o) => new Option(o.text, o.value)));
  list.value = options.find((o) => o.text === had)?.value ?? "";
}

/** One block for each answer on the page that speaks of the machine, with the cases of it that the machine can be. */
function answers(picked: Picked, versions: readonly PickerOption[]): Element[] {
  return [...document.querySelectorAll<HTMLElement>(".runs .asked")].flatMap((asked) => {
    const of = asked.dataset.of?.split(" ") ?? [];
    if (!speaksOfMachine(of, picked)) return [];
    const copy = asked.cloneNode(true) as HTMLElement;
    const named = versions.filter((v) => of.includes(v.value) && picked.anchors.includes(v.value)).map((v) => v.text);
    copy.querySelector(".of")?.remove();
    copy.prepend(paragraph("of", `With ${listText(named)}:`));
    for (const one of copy.querySelectorAll<HTMLElement>(".case")) {
      if (!mayBe(JSON.parse(one.dataset.of ?? "[]") as CaseOf[], picked)) one.remove();
    }
    // A case that is alone is marked by its run.
    const mark = copy.querySelector(".case .mark") ? null : asked.closest(".run")?.querySelector(".mark");
    if (mark) copy.querySelector(".of")?.append(" ", mark.cloneNode(true));
    return [copy];
  });
}

function paragraph(css: string, text: string): Element {
  const made = document.createElement("p");
  made.className = css;
  made.textContent = text;
  return made;
}
