// One choice with all its values: left open, or one of them. A value that cannot be is shown with its reason and the way out, one tap away.
import { useEffect, useState } from "preact/hooks";
import { type Edit, pinsOf } from "../../machine/index.js";
import { type OpenChoice, type PossibleValue, type Repair, repairsSentence, type Verdict } from "../../planning/index.js";
import type { Build } from "../../records/index.js";
import { Ended } from "../worker/engine.js";
import type { WhyNot } from "../worker/protocol.js";
import { useApp } from "./app-context.js";
import { ByHand } from "./ByHand.js";
import { digits, Facts, Mark, Pick, standAt, Then } from "./bits.js";

export interface ChoiceProps {
  readonly choice: OpenChoice;
  readonly legend?: string;
  /** What stands beside a value: how to tell a revision, how to set a jumper. */
  readonly how?: Readonly<Record<string, string>> | undefined;
  /** Words for leaving it open. */
  readonly open?: string;
  /** It may be one of several that cannot be told apart: boxes to tick, and what to tick. */
  readonly several?: string;
}

export function ChoiceField({ choice, legend, how, open = "leave open", several }: ChoiceProps) {
  const { store, build, counts: counted } = useApp();
  // What the build says now; the answer may still be one of before.
  const chosen = ticked(build, choice.id);
  const counts = chosen.length === 1 ? undefined : counted?.facets.find((f) => f.choice === choice.id)?.counts;
  const name = `choice-${choice.id}`;
  // When nothing works at all, the answer says why; a mark at every value would only repeat it.
  const none = choice.values.every((v) => v.verdict === "ruled-out");
  const pick = (value: string) => {
    const before = several ? ticked(store.build, choice.id) : [];
    const values = before.includes(value) ? before.filter((v) => v !== value) : [...before, value];
    if (values.length === 0) return store.unpin(choice.id);
    store.make({ do: "choose", id: choice.id, value: inOrder(choice, values) });
  };
  return (
    <fieldset class="choice">
      <legend>{legend ?? choice.label}</legend>
      {several ? (
        <p class="more several">
          {several}{" "}
          {chosen.length > 0 ? (
            <button type="button" class="small" onClick={() => store.unpin(choice.id)}>
              {open}
            </button>
          ) : null}
        </p>
      ) : (
        <Pick type="radio" name={name} checked={chosen.length === 0} onPick={() => store.unpin(choice.id)}>
          {open}
        </Pick>
      )}
      {choice.values.map((v) => (
        <Value
          key={v.value}
          choice={choice}
          value={v}
          name={name}
          how={how?.[v.value]}
          count={chosen.length === 0 || chosen.includes(v.value) ? counts?.[v.value] : undefined}
          quiet={none}
          type={several ? "checkbox" : "radio"}
          chosen={chosen.includes(v.value)}
          onPick={() => pick(v.value)}
        />
      ))}
      {none && chosen.length > 0 ? <p class="more">None of these works as things stand; the answer says why.</p> : null}
    </fieldset>
  );
}

/** The values a choice is pinned to: none, one, or several that cannot be told apart. */
function ticked(build: Build, id: string): readonly string[] {
  const value = pinsOf(build).get(id);
  return typeof value === "string" ? [value] : (value ?? []);
}

const inOrder = (choice: OpenChoice, values: readonly string[]) => choice.values.map((v) => v.value).filter((v) => values.includes(v));

function Value(props: {
  choice: OpenChoice;
  value: PossibleValue;
  name: string;
  how?: string | undefined;
  count?: string | undefined;
  quiet: boolean;
  type: "radio" | "checkbox";
  chosen: boolean;
  onPick: () => void;
}) {
  const { choice, value, name, how, count, quiet, type, chosen, onPick } = props;
  const [asked, setAsked] = useState(false);
  const no = value.verdict === "ruled-out" && !quiet;
  const about = `${name}-${value.value}`;
  return (
    <div class={`pickable${no ? " not" : ""}`}>
      <Pick
        type={type}
        name={type === "radio" ? name : undefined}
        id={type === "radio" ? undefined : about}
        checked={chosen}
        describedBy={how ? `${about}-how` : undefined}
        onPick={onPick}
      >
        {value.label}
        {no || value.verdict === "unknown" ? (
          <>
            {" "}
            <Mark verdict={value.verdict} />
          </>
        ) : null}
        {count !== undefined && !no ? <span class="more"> {ways(count)}</span> : null}
      </Pick>
      {no ? (
        <button type="button" class="whynot" aria-expanded={asked} onClick={() => setAsked(!asked)}>
          Why not?<span class="unseen"> {value.label}</span>
        </button>
      ) : null}
      {how ? (
        <p class="more how" id={`${about}-how`}>
          {how}
        </p>
      ) : null}
      {no && asked ? <Because choice={choice.id} value={value.value} label={value.label} /> : null}
    </div>
  );
}

function ways(count: string): string {
  return count === "1" ? "in 1 combination" : `in ${digits(count)} combinations`;
}

/** So many ways out stand at a value; take it all the same, and the answer lists all. */
const shown = 4;
const more = (count: number) => `${count === 1 ? "1 more way out" : `${count} more ways out`} if you take it all the same.`;

/** Asks once for the build as it stands, and again when that has changed. `doing` says what a way out does beside what it gives up. */
export function Because(props: { choice: string; value: string; label: string; doing?: string }) {
  const { choice, value, label, doing = `Take ${label}` } = props;
  const { build, solve } = useApp();
  const [told, setTold] = useState<{ readonly build: Build; readonly why?: WhyNot; readonly failed?: string }>();
  useEffect(() => {
    let wanted = true;
    const tell = (now: { why?: WhyNot; failed?: string }) => wanted && setTold({ build, ...now });
    solve
      .ask("why", { build, choice, value })
      .then((why) => tell(why.kind === "why-not" ? { why } : { failed: why.faults.map((f) => `${f.says} ${f.hint}`).join(" ") }))
      .catch((problem: Error) => !(problem instanceof Ended) && tell({ failed: problem.message }));
    return () => {
      wanted = false;
    };
  }, [build, choice, value, solve]);
  if (told?.failed) return <p class="because">{told.failed}</p>;
  if (!told?.why) return <p class="because more">Looking for the reason.</p>;
  const { verdict, reasons, repairs } = told.why;
  const facts = reasons[0]?.facts ?? [];
  return (
    <div class="because" role="status">
      {facts.length > 0 ? <Facts facts={facts} /> : <p>{reasons[0]?.says ?? unexplained(verdict)}</p>}
      {repairs.slice(0, shown).map((r) => (
        <RepairButton key={r.says} repair={r} first={[{ pin: choice, value }]} says={`${doing} and: ${lower(r.says)}`} />
      ))}
      {repairs.length > shown ? <p class="more">{more(repairs.length - shown)}</p> : null}
      {reasons.length > 0 && repairs.length <= shown ? <p class="more">{repairsSentence(told.why)}</p> : null}
    </div>
  );
}

/** Nothing stands against it any more, or nothing was found that does: the one is no reason to say the other. */
function unexplained(verdict: Verdict): string {
  if (verdict === "ruled-out") return "It is not possible; why was not found in the time there is.";
  return verdict === "unknown" ? "Whether it is possible is not known." : "It is possible now; the answer beside it is being renewed.";
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A repair as a button: one tap and it is made. `first` is what the repair was found for, and is made before it. */
export function RepairButton(props: { repair: Repair; first?: readonly Edit[]; says?: string; after?: string }) {
  const { repair, first = [], says, after } = props;
  const { store } = useApp();
  // What the hand does between two ways leads to no one build.
  if (repair.kind === "by-hand") return <ByHand repair={repair} />;
  return (
    <p class="repair">
      <button
        type="button"
        onClick={() => {
          store.make({ do: "all", says: says ?? repair.says, edits: [...first, ...repair.edits] });
          if (after) standAt(after);
        }}
      >
        {says ?? repair.says}
      </button>{" "}
      <Then repair={repair} />
    </p>
  );
}
