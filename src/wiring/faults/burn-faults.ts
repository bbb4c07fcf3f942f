// Faults of the burn: halves, banks, lanes or bytes in the wrong place, in every device or in one of two. The wiring is right in all of them.

import { itemAt } from "../../records/index.js";
import { nothingRuns } from "../simulate/model.js";
import type { Fault } from "../types.js";
import type { FaultCase, FaultInput } from "./fault-case.js";

type Content = readonly (number | undefined)[];

interface Mistake {
  readonly id: string;
  readonly kind: Fault["kind"];
  /** What is wrong, after the name of the device where it is but one of several: "the banks were burned in the reverse order". */
  readonly says: string;
  readonly fix: string;
  readonly to: Content;
}

export function burns(input: FaultInput): FaultCase[] {
  const { good, model } = input.built;
  if (model.lanes === 0) return [];
  const content = itemAt(good.content, 0);
  const case_ = ({ id, kind, says, fix }: Omit<Mistake, "to">, to: readonly Content[]): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: { ...good, content: to },
    burn: true,
  });
  const banks = [...order(content), ...exchanges(input, content)];
  const cases = [...spoilt(input, content), ...banks].map((m) =>
    case_(
      m,
      Array.from(good.content, () => m.to),
    ),
  );
  // A device that holds its banks elsewhere than the others shows their halves of another version: that does not run.
  const sockets = input.candidate.fit?.lines[0]?.at.map((at) => at.socket) ?? [];
  if (model.lanes > 1)
    for (const [lane, socket] of sockets.entries())
      for (const m of banks)
        cases.push(
          case_(
            { ...m, id: `${m.id}@${socket}`, says: `In the device for ${socket} alone: ${lowered(m.says)}` },
            good.content.map((right, l) => (l === lane ? m.to : right)),
          ),
        );
  const dead = good.content.map((right) => right.map(() => nothingRuns));
  for (const [i, one] of sockets.entries())
    for (const other of sockets.slice(i + 1)) {
      // Of devices in a row both hold the whole of an image that is no longer than one part; what a longer one does then nobody can say.
      const row = (socket: string) => Math.floor(sockets.indexOf(socket) / (model.lanes / model.rows));
      const lanes = row(one) === row(other);
      const short = (v: number | undefined) => repeatsOf(input, v) >= model.rows;
      const sameLane = (sockets.indexOf(other) - i) % (model.lanes / model.rows) === 0;
      const left = good.content.map((right) => right.map((v) => (sameLane && short(v) ? v : undefined)));
      const to = sameLane ? left : dead;
      const what = lanes ? "The devices for even and odd bytes" : `The devices for ${one} and ${other}`;
      cases.push(
        case_(
          {
            id: model.lanes === 2 && lanes ? "lanes-exchanged" : `lanes-exchanged:${one}~${other}`,
            kind: "lanes-exchanged",
            says: `${what} stand in one another's socket${lanes && model.lanes > 2 ? ` (${one} and ${other})` : ""}`,
            fix: "Exchange the two devices.",
          },
          to,
        ),
      );
      for (const [socket, twin] of [
        [one, other],
        [other, one],
      ] as const)
        cases.push(
          case_(
            {
              id: model.lanes === 2 ? `lane-twice:${socket}` : `lane-twice:${socket}=${twin}`,
              kind: "lane-twice",
              says: `The device in ${socket} holds what the one in ${twin} does`,
              fix: `Burn the device for ${socket} by its own file.`,
            },
            to,
          ),
        );
    }
  if (input.candidate.fit?.width === 16)
    cases.push(
      case_(
        {
          id: "bytes-swapped",
          kind: "bytes-swapped",
          says: "The bytes of every word are swapped in the burn",
          fix: "Burn again with the bytes of each word the other way round.",
        },
        dead,
      ),
    );
  return cases;
}

/** How often the image of a version fills the window. */
function repeatsOf({ built: { model }, banks }: FaultInput, version: number | undefined): number {
  return banks.find((b) => b.version === model.versions[version ?? nothingRuns])?.repeats ?? 1;
}

/** The image itself is wrong, wherever it lies. */
function spoilt(input: FaultInput, content: Content): Mistake[] {
  const { model } = input.built;
  return [...new Set(content)].flatMap((v): Mistake[] => {
    const label = model.versions[v ?? nothingRuns] ?? "";
    // A repeated image has two equal halves: exchanging them changes nothing.
    const repeats = repeatsOf(input, v);
    const gone = content.map((c) => (c === v ? nothingRuns : c));
    const halves: Mistake = {
      id: `halves-swapped:${label}`,
      kind: "halves-swapped",
      says: `The halves of ${label} are swapped in the burn`,
      fix: `Burn ${label} again by the recipe.`,
      to: repeats >= 2 ? content : gone,
    };
    if (repeats < 2) return [halves];
    const once: Mistake = {
      id: `image-not-repeated:${label}`,
      kind: "image-not-repeated",
      says: `${label} lies once in its bank and the rest is blank`,
      fix: `Burn ${label} ${repeats} times over, by the recipe.`,
      to: gone,
    };
    return [halves, once];
  });
}

/** Every bank in its turn, but not where it belongs. */
function order(content: Content): Mistake[] {
  const shifted = (by: number) => content.map((_, i) => content[(i - by + content.length) % content.length]);
  const fix = "Burn again by the recipe, bank 0 first.";
  const all: Mistake[] = [
    { id: "banks-reversed", kind: "banks-reversed", says: "The banks were burned in the reverse order", fix, to: [...content].reverse() },
    { id: "banks-shifted:+1", kind: "banks-shifted", says: "Every image was burned one bank too high", fix, to: shifted(1) },
    { id: "banks-shifted:-1", kind: "banks-shifted", says: "Every image was burned one bank too low", fix, to: shifted(-1) },
  ];
  // Of two banks each of these is the same exchange.
  return all.filter((m, i) => all.findIndex((other) => same(other.to, m.to)) === i);
}

function exchanges({ built: { model } }: FaultInput, content: Content): Mistake[] {
  const used = [...new Set(content)];
  const label = (v: number | undefined) => model.versions[v ?? nothingRuns] ?? "";
  return used.flatMap((x, i) =>
    used.slice(i + 1).map(
      (y): Mistake => ({
        id: `banks-exchanged:${label(x)}~${label(y)}`,
        kind: "banks-exchanged",
        says: `${label(x)} and ${label(y)} were burned in one another's banks`,
        fix: "Burn again by the recipe.",
        to: content.map((c) => (c === x ? y : c === y ? x : c)),
      }),
    ),
  );
}

function same(a: Content, b: Content): boolean {
  return a.every((v, i) => v === b[i]);
}

/** Inside a sentence; a version at its beginning keeps its letters. */
function lowered(says: string): string {
  return says.replace(/^(The|Every) /, (word) => word.toLowerCase());
}
