// One way the machine works: where each card goes, how it is set, what to do and what is lost, what it rests on.
import { useEffect, useState } from "preact/hooks";
import { editsBetween, fillBuild } from "../../machine/index.js";
import type { Combination, PlacedCard } from "../../planning/index.js";
import { cardName, useApp } from "./app-context.js";
import { Facts, Mark, Pick, Refs, standAt } from "./bits.js";
import { headOf } from "./how.js";

export interface WayProps {
  readonly combination: Combination;
  readonly number: number;
  readonly first: boolean;
  readonly marked: boolean;
  readonly onMark?: ((number: number) => void) | undefined;
  readonly onSheet: (combination: Combination) => void;
}

export function Way({ combination: c, number, first, marked, onMark, onSheet }: WayProps) {
  const app = useApp();
  const { build, store } = app;
  const switched = c.switched || (build.modes?.length ?? 0) > 1;
  const [open, setOpen] = useState(first);
  const pinned = fillBuild(build, c);
  const edits = editsBetween(build, pinned);
  const needs = c.conditions.filter((k) => k.kind !== "cosmetic").length;
  return (
    <li class="way">
      <details open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
        <summary>
          <span class="name">
            {number}. {headOf(c)}
          </span>{" "}
          <Mark verdict={c.verdict} evidence={c.evidence} />
          <span class="more">
            {" "}
            {[
              c.changes.length === 0
                ? ""
                : c.changes.length === 1
                  ? "1 thing to change or get"
                  : `${c.changes.length} things to change or get`,
              needs === 0 ? "" : needs === 1 ? "1 condition" : `${needs} conditions`,
            ]
              .filter(Boolean)
              .join(", ")}
          </span>
        </summary>
        {open ? <Inside combination={c} whole={first} /> : null}
      </details>
      <p class="acts">
        {edits.length > 0 ? (
          <button
            type="button"
            class="small"
            onClick={() => {
              store.make({ do: "all", says: `Combination ${number} as it is: ${headOf(c)}`, edits });
              standAt("answer");
            }}
          >
            Take this combination<span class="unseen"> {number}</span>
          </button>
        ) : null}
        <button type="button" class="small" onClick={() => onSheet(c)}>
          {switched ? "Plan the switch" : "Build sheet"}
          <span class="unseen"> for combination {number}</span>
        </button>
        {onMark ? (
          <Pick type="checkbox" checked={marked} onPick={() => onMark(number)}>
            Compare<span class="unseen"> combination {number}</span>
          </Pick>
        ) : null}
      </p>
    </li>
  );
}

/** On a tap the places come first and what they rest on after the next paint: both at once would hold up a slow phone. */
function Inside({ combination: c, whole }: { combination: Combination; whole: boolean }) {
  const app = useApp();
  const [all, setAll] = useState(whole);
  useEffect(() => setAll(true), []);
  return (
    <div class="reasons">
      {c.modes.length > 1 ? (
        <ul class="plain">
          {c.modes.map((m) => (
            <li key={m.id}>
              <b>{m.name}</b>: <code>{m.firmware}</code>, on: {m.enabled.map((as) => cardName(app, as)).join(", ") || "no card"}
            </li>
          ))}
        </ul>
      ) : null}
      {c.cards.length > 0 ? (
        <table class="list places">
          <thead>
            <tr>
              <th scope="col">Card</th>
              <th scope="col">Slot</th>
              <th scope="col">Set</th>
            </tr>
          </thead>
          <tbody>
            {c.cards.map((p) => (
              <Placed key={p.as} placed={p} proven={c.evidence !== "inferred"} />
            ))}
          </tbody>
        </table>
      ) : null}
      {all ? <Grounds combination={c} /> : null}
    </div>
  );
}

/** What it takes and what it rests on. */
function Grounds({ combination: c }: { combination: Combination }) {
  return (
    <>
      {c.conditions.length > 0 ? (
        <>
          <p class="when">What to do, or what is lost:</p>
          <ul class="why">
            {c.conditions.map((k) => (
              <li key={k.says}>
                {k.says} <Refs refs={k.refs} />
                {k.ways.length > 0 ? (
                  <ul>
                    {k.ways.map((w) => (
                      <li key={w.says}>
                        {w.says} ({w.costs})
                      </li>
                    ))}
                  </ul>
                ) : null}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {c.unknowns.length > 0 ? (
        <>
          <p class="when">What is not known:</p>
          <ul class="why">
            {c.unknowns.map((u) => (
              <li key={u.says}>
                {u.says} To find out: {u.how} <Refs refs={u.refs} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <Others combination={c} />
      <p class="when">To change or to get:</p>
      {c.changes.length > 0 ? (
        <ul class="why">
          {c.changes.map((x) => (
            <li key={x}>{x}</li>
          ))}
        </ul>
      ) : (
        <p>Nothing.</p>
      )}
      <p class="when">It rests on, weakest first:</p>
      <Rests notes={c.rests} />
      {c.nearMatches.length > 0 ? (
        <ul class="why">
          {c.nearMatches.map((n) => (
            <li key={n.build}>
              Nearly the same, not counted: <Refs refs={[{ kind: "build", id: n.build, pointer: "" }]} /> ({n.differs})
            </li>
          ))}
        </ul>
      ) : null}
      <p class="more">
        Left over: {c.spareSlots === 1 ? "1 slot" : `${c.spareSlots} slots`}
        {c.headroom.map((h) => `; ${h.rail} V: ${rest(h.used_A, h.limit_A)}`).join("")}.
      </p>
    </>
  );
}

/** The weakest link decides; the others are one tap away. */
function Rests({ notes }: { notes: Combination["rests"] }) {
  const facts = notes.map((r) => ({ rule: r.link, says: r.says, refs: r.refs }));
  return (
    <>
      <Facts facts={facts.slice(0, 2)} />
      {facts.length > 2 ? (
        <details>
          <summary>{facts.length === 3 ? "One more" : `${facts.length - 2} more`}</summary>
          <Facts facts={facts.slice(2)} />
        </details>
      ) : null}
    </>
  );
}

function rest(used: number | "unknown", limit: number | "unknown"): string {
  if (limit === "unknown") return "limit not known";
  if (used === "unknown") return `use not known, of ${round(limit)}\u202fA`;
  return `${round(limit - used)} of ${round(limit)}\u202fA`;
}

const round = (amps: number) => Number(amps.toFixed(2));

/** What the cards need that no rule judges; for whom is said where there are several cards. */
function Others({ combination }: { combination: Combination }) {
  const app = useApp();
  const { alsoNeeded, cards } = combination;
  if (alsoNeeded.length === 0) return null;
  return (
    <>
      <p class="when">Not judged here, and needed:</p>
      <ul class="why">
        {alsoNeeded.map((n) => (
          <li key={`${n.as} ${n.says}`}>
            {cards.length > 1 ? `${cardName(app, n.as)}: ` : ""}
            {n.says} <Refs refs={n.refs} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** What is better proven than by the rules is so in the slot it was tested in; the rules alone speak for the others. */
function Placed({ placed, proven }: { placed: PlacedCard; proven: boolean }) {
  const app = useApp();
  const card = app.catalogue.cards.find((c) => c.id === placed.card);
  const settings = Object.entries(placed.settings);
  return (
    <tr>
      <th scope="row">
        {cardName(app, placed.as)}
        {placed.revision ? <span class="more">, revision {placed.revision}</span> : null}
      </th>
      <td data-label="Slot">
        <code>{placed.slot}</code>{" "}
        <span class="more">
          ({proven && placed.slots.length > 1 ? "by the rules alone " : ""}
          {placed.freedom})
        </span>
      </td>
      <td data-label="Set">
        {settings.length === 0 ? "nothing to set" : null}
        <ul class="plain sets">
          {settings.map(([id, at]) => {
            const setting = card?.settings.find((s) => s.id === id);
            const how = setting?.positions.find((p) => p.id === at)?.how;
            return (
              <li key={id}>
                <code>{id}</code> at <code>{at}</code>
                <span class="more">
                  {how ? `: ${how}` : ""}
                  {setting ? ` (${setting.name})` : ""}
                </span>
              </li>
            );
          })}
        </ul>
      </td>
    </tr>
  );
}
