// The address of a build: the whole of it after the "#", short enough to send by hand, readable, and stable. No server sees that part.
//
//   #b=skerry-16t&r=D1&c=gannet-fixed-disk-controller;v=B;s=S5;J1=320&m=daily;n=Daily use;f=R6;o=gannet-fixed-disk-controller
//
// One "c" for each card, one "m" for each mode. Inside one of them the first word is the card or the mode, the rest are name=value.
// Names of one small letter are ours; settings stand after a "." so that no setting can be taken for one of ours.
import { type Build, type BuildCard, bytes, type Mode, type Wishes } from "../records/index.js";

type Open<T> = { -readonly [K in keyof T]?: T[K] | undefined };

function word(text: string): string {
  // Half of a pair is no letter and has no place in an address.
  return encodeURIComponent(text.replaceAll(/\p{Cs}/gu, "\ufffd"))
    .replaceAll("%20", "+")
    .replaceAll("%2C", "%2c")
    .replaceAll("%3A", ":")
    .replaceAll("%2F", "/");
}

function unword(text: string): string {
  try {
    return decodeURIComponent(text.replaceAll("+", " "));
  } catch {
    return text;
  }
}

function joined(head: string, fields: readonly (readonly [string, string | undefined])[]): string {
  return [word(head), ...fields.flatMap(([k, v]) => (v === undefined ? [] : [`${k}=${v}`]))].join(";");
}

/** An empty list is written "-", so a word that is just that is written otherwise. */
const many = (words: readonly string[] | undefined) => words?.map((w) => (w === "-" ? "%2D" : word(w))).join(",");

type AtHand = NonNullable<NonNullable<Build["at_hand"]>["cards"]>[number];

/** A card at hand, "gannet"; several of it, "gannet*2". */
function atHandText(entry: AtHand): string {
  const id = (text: string) => word(text).replaceAll("*", "%2A");
  return typeof entry === "string" ? id(entry) : `${id(entry.card)}*${entry.count}`;
}

function atHandOf(text: string): AtHand {
  const [id = "", count] = text.split("*");
  return count === undefined || !/^[1-9][0-9]*$/.test(count) ? unword(id) : { card: unword(id), count: Number(count) };
}

function cardText(card: BuildCard): string {
  return joined(card.card, [
    ["a", card.as && word(card.as)],
    ["v", card.revision && word(card.revision)],
    ["s", card.slot && word(card.slot)],
    ...Object.entries(card.settings ?? {}).map(([id, at]) => [`.${word(id)}`, word(at)] as const),
  ]);
}

function modeText(mode: Mode): string {
  return joined(mode.id, [
    ["n", mode.name && word(mode.name)],
    ["f", mode.firmware && word(mode.firmware)],
    ["o", mode.cards && (many(mode.cards) || "-")],
    ["e", many(mode.on_or_off)],
    ["x", mode.safest ? "1" : undefined],
  ]);
}

type Together = NonNullable<Wishes["together"]>[number];

function togetherText(wish: Together): string {
  return joined("", [
    ["c", many(wish.cards)],
    ["f", wish.firmware && word(wish.firmware)],
  ]);
}

/** The build as an address, without the "#". A result and notes are not part of a question and stay out. */
export function addressOf(build: Build): string {
  const { stands, at_hand: hand, switch: parts, wishes } = build;
  const lines: (readonly [string, string | undefined])[] = [
    ["i", build.id === "my-build" ? undefined : word(build.id)],
    ["t", build.name === "My build" ? undefined : word(build.name)],
    ["b", word(build.board)],
    ["r", build.revision === undefined ? undefined : many(typeof build.revision === "string" ? [build.revision] : build.revision)],
    ["k", build.memory === undefined ? undefined : String(bytes(build.memory))],
    ["f", build.firmware && word(build.firmware)],
    ...build.cards.map((c) => ["c", cardText(c)] as const),
    ...(build.modes ?? []).map((m) => ["m", modeText(m)] as const),
    ...(wishes?.together ?? []).map((w) => ["wt", togetherText(w)] as const),
    ["wa", many(wishes?.always)],
    ["wo", many(wishes?.alone)],
    ["wn", wishes?.ways_at_most === undefined ? undefined : String(wishes.ways_at_most)],
    ["hf", many(hand?.firmware)],
    ["hc", hand?.cards?.map(atHandText).join(",")],
    ["hp", many(hand?.parts)],
    ["sr", stands?.revision && word(stands.revision)],
    ["sk", stands?.memory === undefined ? undefined : String(bytes(stands.memory))],
    ["sf", stands?.firmware && word(stands.firmware)],
    ...(stands?.cards ?? []).map((c) => ["sc", cardText(c)] as const),
    ["wd", parts?.device && word(parts.device)],
    ["ws", parts?.switch && word(parts.switch)],
    ["wc", parts?.connector && word(parts.connector)],
    ["wl", parts?.cable && word(parts.cable)],
  ];
  return lines.flatMap(([k, v]) => (v === undefined || v === "" ? [] : [`${k}=${v}`])).join("&");
}

function fieldsOf(text: string): { head: string; fields: ReadonlyMap<string, string> } {
  const [head = "", ...rest] = text.split(";");
  const fields = new Map(
    rest.map((r) => {
      const at = r.indexOf("=");
      return at < 0 ? [r, ""] : [r.slice(0, at), r.slice(at + 1)];
    }),
  );
  return { head: unword(head), fields };
}

const words = (text: string) => (text === "" || text === "-" ? [] : text.split(",").map(unword));

function cardOf(text: string): BuildCard {
  const { head, fields } = fieldsOf(text);
  const card: Open<BuildCard> = { card: head };
  const settings: Record<string, string> = {};
  for (const [k, v] of fields) {
    if (k === "a") card.as = unword(v);
    else if (k === "v") card.revision = unword(v);
    else if (k === "s") card.slot = unword(v);
    else if (k.startsWith(".")) settings[unword(k.slice(1))] = unword(v);
  }
  if (Object.keys(settings).length > 0) card.settings = settings;
  return card as BuildCard;
}

function modeOf(text: string): Mode {
  const { head, fields } = fieldsOf(text);
  const mode: Open<Mode> = { id: head };
  for (const [k, v] of fields) {
    if (k === "n") mode.name = unword(v);
    else if (k === "f") mode.firmware = unword(v);
    else if (k === "o") mode.cards = words(v);
    else if (k === "e" && words(v).length > 0) mode.on_or_off = words(v);
    else if (k === "x") mode.safest = true;
  }
  return mode as Mode;
}

function togetherOf(text: string): Together {
  const { fields } = fieldsOf(text);
  const wish: { -readonly [K in keyof Together]?: Together[K] } = {};
  for (const [k, v] of fields) {
    if (k === "c") wish.cards = words(v);
    else if (k === "f") wish.firmware = unword(v);
  }
  return wish;
}

/** The build an address holds; undefined when it holds none. What it names is judged later, by planning. */
export function buildFrom(address: string): Build | undefined {
  const build: Open<Build> & { cards: BuildCard[]; modes?: Mode[] } = { id: "my-build", name: "My build", cards: [] };
  const hand: Open<NonNullable<Build["at_hand"]>> = {};
  const stands: Open<NonNullable<Build["stands"]>> & { cards?: BuildCard[] } = {};
  const parts: Open<NonNullable<Build["switch"]>> = {};
  const wishes: Open<Wishes> = {};
  const reads: Readonly<Record<string, (v: string) => void>> = {
    i: (v) => (build.id = unword(v)),
    t: (v) => (build.name = unword(v)),
    b: (v) => (build.board = unword(v)),
    r: (v) => (build.revision = v.includes(",") ? words(v) : unword(v)),
    k: (v) => (build.memory = Number(v) || undefined),
    f: (v) => (build.firmware = unword(v)),
    c: (v) => build.cards.push(cardOf(v)),
    m: (v) => (build.modes = [...(build.modes ?? []), modeOf(v)]),
    wt: (v) => (wishes.together = [...(wishes.together ?? []), togetherOf(v)]),
    wa: (v) => (wishes.always = words(v)),
    wo: (v) => (wishes.alone = words(v)),
    wn: (v) => (wishes.ways_at_most = Number(v) || undefined),
    hf: (v) => (hand.firmware = words(v)),
    hc: (v) =>
      (hand.cards = v
        .split(",")
        .filter((entry) => entry !== "")
        .map(atHandOf)),
    hp: (v) => (hand.parts = words(v)),
    sr: (v) => (stands.revision = unword(v)),
    sk: (v) => (stands.memory = Number(v) || undefined),
    sf: (v) => (stands.firmware = unword(v)),
    sc: (v) => (stands.cards = [...(stands.cards ?? []), cardOf(v)]),
    wd: (v) => (parts.device = unword(v)),
    ws: (v) => (parts.switch = unword(v)),
    wc: (v) => (parts.connector = unword(v)),
    wl: (v) => (parts.cable = unword(v)),
  };
  for (const line of address.replace(/^#/, "").split("&")) {
    const at = line.indexOf("=");
    if (at > 0 && Object.hasOwn(reads, line.slice(0, at))) reads[line.slice(0, at)]?.(line.slice(at + 1));
  }
  if (build.board === undefined && build.cards.length === 0) return undefined;
  const some = (o: object) => (Object.keys(o).length > 0 ? o : undefined);
  const whole = {
    ...build,
    board: build.board ?? "",
    wishes: some(wishes),
    at_hand: some(hand),
    stands: some(stands),
    switch: some(parts),
  };
  return JSON.parse(JSON.stringify(whole)) as Build;
}
