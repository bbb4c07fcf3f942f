// An address that is meant in hexadecimal and lacks its 0x is another address, and every clash with it goes unseen.
// Decimal addresses are allowed; one is told when its digits fit as hexadecimal better: by the marking, the neighbours or the bus.
import { type Board, bytes, type Card, hex } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { type Ref, ref, writtenAt } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const hexAddresses: Rule = {
  name: "hex-addresses",
  says: "An address or a size that is meant in hexadecimal is written with 0x.",
  why: "30 is 0x1E. A card that is recorded at the wrong address seems to clash with nothing.",
  mend: "Write 0x in front when the address is hexadecimal; write it in hexadecimal, too, when the decimal number is meant.",
  scope: ["board", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) yield* decimals(catalogue, "board", board);
    for (const card of catalogue.cards.values()) yield* decimals(catalogue, "card", card);
  },
};

type Path = readonly (string | number)[];

/** A run of addresses anywhere in a record: ports, memory, the window of a socket, main memory. */
interface Window {
  readonly path: Path;
  readonly space: "io" | "memory";
  readonly base: number;
  readonly size?: number | undefined;
  /** The setting's position that claims it, by its name. */
  readonly position?: { readonly id: string; readonly path: Path } | undefined;
}

function* windowsIn(value: unknown, path: Path = [], position?: Window["position"]): Generator<Window> {
  if (typeof value !== "object" || value === null) return;
  if ("base" in value && typeof value.base === "number") {
    const size = "size" in value && (typeof value.size === "number" || typeof value.size === "string") ? bytes(value.size) : undefined;
    yield { path, space: path.includes("io") ? "io" : "memory", base: value.base, size, position };
  }
  const own =
    path.at(-2) === "positions" && "id" in value && typeof value.id === "string" ? { id: value.id, path: [...path, "id"] } : position;
  for (const [name, inner] of Object.entries(value)) yield* windowsIn(inner, [...path, Array.isArray(value) ? Number(name) : name], own);
}

/** A number of two digits or more without 0x, right after its field: most files have none, and are not parsed again. */
const decimal = /\b(?:base|size):[ \t]*[0-9][0-9Ee]/;

function* decimals(catalogue: Catalogue, kind: "board" | "card", record: Board | Card): Generator<Draft> {
  const text = catalogue.texts.get(catalogue.files.get(`${kind}/${record.id}`) ?? "");
  if (text === undefined || !decimal.test(text)) return;
  const at = (w: Window, field: string) => ref(kind, record.id, ...w.path, field);
  const all = [...windowsIn(record)];
  const inHex = all.find((w) => writtenAt(catalogue, at(w, "base"))?.startsWith("0x"));
  const lines = catalogue.buses.get(record.bus);
  for (const w of all) {
    const limit = lines && 2 ** (w.space === "io" ? lines.io_address_bits : lines.memory_address_bits);
    const base = asHex(writtenAt(catalogue, at(w, "base")));
    if (base && (limit === undefined || base.value + (w.size ?? 1) <= limit)) {
      const marked = w.position && ref(kind, record.id, ...w.position.path);
      const why = whyAddress(catalogue, record, w, base, { marked, neighbour: inHex && at(inHex, "base") });
      if (why) yield draft(base, w.base, at(w, "base"), why);
    }
    const size = asHex(writtenAt(catalogue, at(w, "size")));
    if (size && w.size !== undefined && inHex && !isPowerOfTwo(w.size) && isPowerOfTwo(size.value))
      yield draft(size, w.size, at(w, "size"), {
        says: "This address is in hexadecimal, and windows are mostly powers of two long.",
        at: at(inHex, "base"),
      });
  }
}

interface Digits {
  /** Without zeros in front. */
  readonly text: string;
  readonly value: number;
  /** Nobody writes a decimal number so: with a zero in front, or as a power of ten. */
  readonly odd: boolean;
}

/** What digits without 0x are in hexadecimal; of one digit it is the same number. */
function asHex(text: string | undefined): Digits | undefined {
  if (text === undefined || !/^[0-9]+(?:[Ee][0-9]+)?$/.test(text) || text.length < 2) return undefined;
  return { text: text.toUpperCase().replace(/^0+(?=.)/, ""), value: Number.parseInt(text, 16), odd: /^0|e/i.test(text) };
}

type Why = NonNullable<Draft["related"]>[number];

interface Places {
  readonly marked?: Ref | undefined;
  readonly neighbour?: Ref | undefined;
}

/** What makes hexadecimal likely; undefined when nothing does. */
function whyAddress(catalogue: Catalogue, record: Board | Card, w: Window, digits: Digits, places: Places): Why | undefined {
  if (places.marked && w.position?.id.toUpperCase().replace(/^0X|H$/g, "") === digits.text)
    return { says: "The position is marked with the same digits; markings of addresses are hexadecimal.", at: places.marked };
  if (places.neighbour) return { says: "This address of the same record is in hexadecimal.", at: places.neighbour };
  const bus = ref("bus", record.bus, w.space === "io" ? "io_address_bits" : "memory_address_bits");
  if (digits.odd) return { says: "The bus has room for the address in hexadecimal.", at: bus };
  if (w.size !== undefined && isPowerOfTwo(w.size) && w.base % w.size !== 0 && digits.value % w.size === 0)
    return { says: "Windows mostly begin at a multiple of their size: this one does in hexadecimal, and has room on the bus.", at: bus };
  const other = usedOnBus(catalogue, record, w.space, digits.value);
  return other && { says: "Another record of the bus claims this address in hexadecimal.", at: other };
}

function usedOnBus(catalogue: Catalogue, record: Board | Card, space: Window["space"], base: number): Ref | undefined {
  const records = [
    ...[...catalogue.boards.values()].map((r) => ["board", r] as const),
    ...[...catalogue.cards.values()].map((r) => ["card", r] as const),
  ];
  for (const [kind, other] of records) {
    if (other === record || other.bus !== record.bus) continue;
    for (const w of windowsIn(other)) if (w.space === space && w.base === base) return ref(kind, other.id, ...w.path, "base");
  }
  return undefined;
}

function isPowerOfTwo(count: number): boolean {
  return count > 0 && Number.isInteger(Math.log2(count));
}

function draft(digits: Digits, value: number, at: Ref, why: Why): Draft {
  return {
    says: `${digits.text} is read as a decimal number, ${hex(value)} in hexadecimal.`,
    at,
    expected: `0x${digits.text}, or a decimal number on purpose`,
    actual: digits.text,
    related: [why],
    hint: `Write 0x${digits.text} if it is hexadecimal; write ${hex(value)} if the decimal number is meant.`,
  };
}
