// A field to type in that offers what matches: name, maker, model, what it does. Works by keyboard and tells a screen reader what is offered.
import { useEffect, useId, useRef, useState } from "preact/hooks";

export interface Offer {
  readonly id: string;
  readonly name: string;
  /** Second line: maker, model, what it is for. */
  readonly more: string;
}

/** Offers that hold every typed word at the beginning of one of theirs; those with it in their name first. */
export function matching(offers: readonly Offer[], typed: string): Offer[] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const begins = (text: string, w: string) => text.startsWith(w) || text.includes(` ${w}`) || (w.length > 2 && text.includes(`-${w}`));
  return offers
    .flatMap((offer) => {
      const name = offer.name.toLowerCase();
      const all = `${name} ${offer.more.toLowerCase()} ${offer.id}`;
      if (!wanted.every((w) => begins(all, w))) return [];
      return [{ offer, rank: wanted.filter((w) => !begins(name, w)).length }];
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ offer }) => offer);
}

const most = 8;

/** Height the offers want below the field, in pixels. */
const room = 340;

/** A field low on the screen is moved up, so that what it offers is in sight. */
function raise(field: HTMLElement | null): void {
  const box = field?.getBoundingClientRect();
  const seen = window.visualViewport?.height ?? innerHeight;
  if (box && seen - box.bottom < room) field?.parentElement?.scrollIntoView({ block: "start" });
}

export interface ComboboxProps {
  readonly label: string;
  readonly hint?: string;
  readonly offers: readonly Offer[];
  /** Where no offer holds what was typed: ids of those it could mean, the likeliest first. */
  readonly find?: (typed: string) => Promise<readonly string[]>;
  readonly onPick: (id: string) => void;
}

/** So long after the last letter it is looked further for what was typed. */
const rest_ms = 150;

/** What the search makes of words that no offer holds; undefined while it is not known. */
function useFound(typed: string, wanted: boolean, { offers, find }: ComboboxProps): readonly Offer[] | undefined {
  const [found, setFound] = useState<{ readonly typed: string; readonly offers: readonly Offer[] }>();
  useEffect(() => {
    if (!find || !wanted || found?.typed === typed) return;
    let asked = true;
    const timer = setTimeout(() => {
      const tell = (ids: readonly string[]) =>
        asked && setFound({ typed, offers: ids.flatMap((id) => offers.find((offer) => offer.id === id) ?? []) });
      find(typed).then(tell, () => tell([]));
    }, rest_ms);
    return () => {
      asked = false;
      clearTimeout(timer);
    };
  }, [typed, wanted]);
  return find && found?.typed === typed ? found.offers : find && wanted ? undefined : [];
}

interface OptionsProps {
  readonly id: string;
  readonly shown: readonly Offer[];
  /** The one that Enter picks; -1: none. */
  readonly at: number;
  readonly onPick: (offer: Offer) => void;
}

function Options({ id, shown, at, onPick }: OptionsProps) {
  return (
    <div class="list" id={`${id}-list`} role="listbox" aria-label="What matches" hidden={shown.length === 0}>
      {shown.map((offer, i) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the keys; options are pointed at with aria-activedescendant.
        <div
          key={offer.id}
          id={`${id}-${i}`}
          role="option"
          tabIndex={-1}
          aria-selected={i === at}
          onMouseDown={(e) => e.preventDefault()}
          onClick={() => onPick(offer)}
        >
          <b>{offer.name}</b> <span class="more">{offer.more}</span>
        </div>
      ))}
    </div>
  );
}

export function Combobox(props: ComboboxProps) {
  const { label, hint, offers, onPick } = props;
  const id = useId();
  const [typed, setTyped] = useState("");
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(-1);
  const box = useRef<HTMLInputElement>(null);
  const plain = open ? matching(offers, typed) : [];
  const found = useFound(typed, open && plain.length === 0 && typed.trim().length > 2, props);
  const all = plain.length > 0 ? plain : open ? (found ?? []) : [];
  const shown = all.slice(0, most);
  const close = () => {
    setOpen(false);
    setAt(-1);
  };
  const pick = (offer: Offer) => {
    setTyped("");
    close();
    onPick(offer.id);
    box.current?.focus();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      const step = event.key === "ArrowDown" ? 1 : -1;
      const count = open ? shown.length : Math.min(most, matching(offers, typed).length);
      setOpen(true);
      setAt(count === 0 ? -1 : at < 0 ? (step > 0 ? 0 : count - 1) : (at + step + count) % count);
    } else if (event.key === "Enter") {
      event.preventDefault();
      const chosen = shown[at] ?? (typed.trim() === "" ? undefined : shown[0]);
      if (chosen) pick(chosen);
    } else if (event.key === "Escape") {
      if (open) event.stopPropagation();
      if (!open) setTyped("");
      close();
    }
  };
  return (
    <div class="combo">
      <label for={`${id}-box`}>{label}</label>
      <input
        ref={box}
        id={`${id}-box`}
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        aria-autocomplete="list"
        aria-expanded={open && shown.length > 0}
        aria-controls={`${id}-list`}
        aria-activedescendant={at >= 0 && open ? `${id}-${at}` : undefined}
        aria-describedby={hint ? `${id}-hint` : undefined}
        value={typed}
        onInput={(e) => {
          setTyped(e.currentTarget.value);
          if (typed === "") raise(box.current);
          setOpen(true);
          setAt(-1);
        }}
        onFocus={() => setOpen(true)}
        onClick={() => {
          setOpen(true);
          raise(box.current);
        }}
        onBlur={close}
        onKeyDown={onKey}
      />
      {hint ? (
        <p class="more" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <div class="offers">
        <Options id={id} shown={shown} at={at} onPick={pick} />
        <p class="more offered" role="status">
          {!open
            ? ""
            : found === undefined
              ? "Looking further."
              : all.length === 0
                ? "Nothing matches. Try another word, or fewer."
                : plain.length === 0
                  ? "No card is called so; perhaps one of these."
                  : all.length > most
                    ? `${all.length} match; type on to narrow.`
                    : ""}
        </p>
      </div>
    </div>
  );
}
