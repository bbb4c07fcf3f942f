// The question a person asks: a build read from a file, taken from the club's own builds, or spelt out in options.
import { existsSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { defaultMode } from "../../catalogue/index.js";
import { findFaults, nameForCopy } from "../../machine/index.js";
import { type Build, type BuildCard, goesBy, kinds, type Mode, nearest, readOne, type Wishes } from "../../records/index.js";
import type { Terminal } from "../printing/terminal.js";
import { UsageError } from "../usage-error.js";
import { type Club, findingText } from "./club.js";
import { shown } from "./folders.js";
import { misasked } from "./planner.js";

export interface QuestionOptions {
  readonly board?: string;
  readonly revision?: readonly string[];
  readonly memory?: string;
  readonly card?: readonly string[];
  readonly firmware?: string;
  readonly family?: string;
  readonly mode?: readonly string[];
  readonly have?: readonly string[];
  readonly together?: readonly string[];
  readonly under?: readonly string[];
  readonly always?: readonly string[];
  readonly alone?: readonly string[];
  readonly ways?: string | true;
}

export interface AskedBuild {
  readonly build: Build;
  /** Name of the file for messages, and its text; absent when it was spelt out in options. */
  readonly file?: string | undefined;
  readonly path?: string;
  readonly text?: string | undefined;
}

export function askedBuild(name: string | undefined, options: QuestionOptions, club: Club, terminal: Terminal): AskedBuild {
  if (name === undefined) return resolved({ build: fromOptions(options) }, club);
  const wishes = wishesOf(options);
  const extra = Object.entries(options).find(
    ([key, value]) => value !== undefined && ["board", "card", "mode", "firmware", "revision", "memory", "family", "have"].includes(key),
  );
  if (extra)
    throw new UsageError(`--${extra[0]} and a build file were both given.`, "Ask with one of them: a build file, or --board with --card.");
  const file = fromFile(name, club, terminal);
  // Wishes spelt out stand in place of those of the file; places in the file are then told for the rest of it alone.
  return wishes ? resolved({ ...file, build: { ...file.build, wishes } }, club) : file;
}

export function fromFile(name: string, club: Club, terminal: Terminal): AskedBuild {
  return resolved(readFrom(name, club, terminal), club);
}

function readFrom(name: string, club: Club, terminal: Terminal): AskedBuild {
  if (name === "-") return fromBytes(readFileSync(0), "(standard input)", terminal);
  const path = resolve(terminal.folder, name);
  if (!existsSync(path)) {
    const own = club.catalogue.builds.get(name);
    if (own) return ownBuild(own, club);
    const lost = club.catalogue.unread.find((unread) => goesBy(unread, "build", name));
    if (lost)
      throw new UsageError(
        `The build ${name} could not be read (${lost.file}:${lost.line}:${lost.column}).`,
        lost.hint ?? "Mend that file.",
        [lost.says],
      );
    const near = nearest(name, [...club.catalogue.builds.keys()]);
    throw new UsageError(
      `There is no file ${name}, and no build of that id in ${club.data.shown}.`,
      near ? `Did you mean ${near}?` : "Name a build file (YAML), or ask without one: --board <id> --card <id>.",
    );
  }
  if (statSync(path).isDirectory()) throw new UsageError(`${name} is a folder.`, "Name the build file in it.");
  return { ...fromBytes(readFileSync(path), shown(path, terminal.folder), terminal), path };
}

/** A build among the club's records has its places in its own file. */
function ownBuild(build: Build, club: Club): AskedBuild {
  const file = club.catalogue.files.get(`build/${build.id}`);
  return { build, file, text: file === undefined ? undefined : club.catalogue.texts.get(file) };
}

function fromBytes(bytes: Uint8Array, file: string, terminal: Terminal): AskedBuild {
  const { record, findings } = readOne("build", bytes, file);
  if (record) return { build: record, file, text: new TextDecoder().decode(bytes) };
  const wrong = findings.filter((finding) => finding.level === "error").map((finding) => findingText(finding, terminal));
  const next = "Mend what is named above and ask again; the field guide page of the site tells every field.";
  throw new UsageError(`${file} is not a build that can be read.`, next, wrong);
}

/** The build, once every name in it is one the records have; whatever is asked about it afterwards can rest on that. */
function resolved(asked: AskedBuild, club: Club): AskedBuild {
  const faults = findFaults(club.catalogue, asked.build);
  if (faults.length > 0) throw misasked({ kind: "misasked", faults }, asked);
  return asked;
}

/** card[@slot][,setting=position]… */
const cardForm = /^(?<card>[^@,=\s]+)(?:@(?<slot>[^@,=]+))?(?<settings>(?:,[^,=]+=[^,=]+)*)$/;
/** name[@version][:card,card…]; nothing after the colon: no card is on */
const modeForm = /^(?<id>[^@:,\s]+)(?:@(?<firmware>[^:,]+))?(?::(?<cards>[^:]*))?$/;

function fromOptions(options: QuestionOptions): Build {
  if (options.board === undefined) {
    throw new UsageError(
      "There is no question: neither a build file nor a board was named.",
      "Ask with a file (slotwright plan <build.yaml>) or without one (slotwright plan --board <id> --card <id>).",
    );
  }
  const revision = options.revision === undefined ? undefined : options.revision.length === 1 ? options.revision[0] : [...options.revision];
  const modes = (options.mode ?? []).map(modeOf);
  if (modes.length > 0 && options.firmware !== undefined) {
    throw new UsageError("--firmware and --mode were both given.", "Name the version inside the mode: --mode daily@R5.1:card,card");
  }
  if (options.firmware !== undefined) modes.push({ ...defaultMode, firmware: options.firmware });
  const have = (options.have ?? [])
    .flatMap((list) => list.split(","))
    .map((id) => id.trim())
    .filter((id) => id !== "");
  const written: Record<string, unknown> = {
    id: "question",
    name: "The question from the command line",
    board: options.board,
    revision,
    memory: options.memory,
    firmware: options.family,
    cards: namedApart((options.card ?? []).map(cardOf)),
    modes: modes.length > 0 ? modes : undefined,
    at_hand: have.length > 0 ? { firmware: have } : undefined,
  };
  written.wishes = wishesOf(options);
  const bare = Object.fromEntries(Object.entries(written).filter(([, value]) => value !== undefined));
  const { record, findings } = readOne("build", JSON.stringify(bare));
  if (record) return record;
  const told = findings.map(
    (finding) => `${finding.at.pointer === "" ? "" : `${finding.at.pointer}: `}${finding.says}${finding.hint ? ` ${finding.hint}` : ""}`,
  );
  throw new UsageError(
    "The options do not make a build.",
    `Ids are lower-case words joined by hyphens, as the files in ${kinds.card.folder}/ and ${kinds.board.folder}/ are named.`,
    told,
  );
}

/** a,b@version: cards, or a version, or both */
const togetherForm = /^(?<cards>[^@]*)(?:@(?<firmware>[^@,]+))?$/;

const names = (list: string) =>
  list
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");

function wishesOf({ together = [], under = [], always = [], alone = [], ways }: QuestionOptions): Wishes | undefined {
  const groups = together.map((text) => {
    const parts = togetherForm.exec(text)?.groups;
    const cards = names(parts?.cards ?? "");
    if (!parts || (cards.length === 0 && parts.firmware === undefined))
      throw new UsageError(`--together ${text} cannot be read.`, "Write --together <card>,<card> or --together <card>,<card>@<version>.");
    return { ...(cards.length > 0 ? { cards } : {}), ...(parts.firmware ? { firmware: parts.firmware } : {}) };
  });
  const all = [...groups, ...under.flatMap(names).map((firmware) => ({ firmware }))];
  const most = ways === undefined || ways === true ? undefined : Number(ways);
  if (most !== undefined && !(Number.isSafeInteger(most) && most >= 1))
    throw new UsageError(`--ways ${ways} is no number of ways.`, "Write the most ways you would put up with: --ways 2.");
  const wishes: Wishes = {
    ...(all.length > 0 ? { together: all } : {}),
    ...(always.length > 0 ? { always: always.flatMap(names) } : {}),
    ...(alone.length > 0 ? { alone: alone.flatMap(names) } : {}),
    ...(most === undefined ? {} : { ways_at_most: most }),
  };
  return ways === true || Object.keys(wishes).length > 0 ? wishes : undefined;
}

function cardOf(text: string): BuildCard {
  const parts = cardForm.exec(text)?.groups;
  if (!parts)
    throw new UsageError(
      `--card ${text} cannot be read.`,
      "Write --card <id>, --card <id>@<slot>, or --card <id>@<slot>,<setting>=<position>.",
    );
  const settings = (parts.settings ?? "")
    .split(",")
    .filter((pair) => pair !== "")
    .map((pair) => pair.split("=") as [string, string]);
  return {
    card: parts.card as string,
    ...(parts.slot ? { slot: parts.slot } : {}),
    ...(settings.length > 0 ? { settings: Object.fromEntries(settings) } : {}),
  };
}

/** Two cards of one kind need names of their own: the second becomes "<id>-2". */
function namedApart(given: readonly BuildCard[]): readonly BuildCard[] {
  const cards: BuildCard[] = [];
  for (const card of given) {
    const as = nameForCopy({ cards }, card.card);
    cards.push(as === undefined ? card : { ...card, as });
  }
  return cards;
}

function modeOf(text: string): Mode {
  const parts = modeForm.exec(text)?.groups;
  if (!parts)
    throw new UsageError(
      `--mode ${text} cannot be read.`,
      "Write --mode <name>, --mode <name>@<version>, or --mode <name>@<version>:<card>,<card>; <card>? where it does not matter whether it is on; nothing after the colon: no card is on.",
    );
  const cards = parts.cards
    ?.split(",")
    .map((card) => card.trim())
    .filter((card) => card !== "");
  const open = cards?.filter((card) => card.endsWith("?")).map((card) => card.slice(0, -1)) ?? [];
  return {
    id: parts.id as string,
    ...(parts.firmware ? { firmware: parts.firmware } : {}),
    ...(cards ? { cards: cards.filter((card) => !card.endsWith("?")) } : {}),
    ...(open.length > 0 ? { on_or_off: open } : {}),
  };
}
