// A number as people write it, with its unit or in hexadecimal, turned into what the field wants: "16 cm" where millimetres stand is 160.
// The unit is never just dropped: a hint that changes the value is worse than none.
import { hex, sizeText } from "./values.js";

/** What a number in a record is counted in; "address" is a place in an address space. */
export type Unit = "mm" | "A" | "mA" | "MHz" | "W" | "V" | "ns" | "h" | "ohm" | "bytes" | "bits" | "address";

type Spellings = Readonly<Record<string, number>>;

const length: Spellings = { mm: 1, cm: 10, m: 1000, in: 25.4, inch: 25.4, inches: 25.4, '"': 25.4 };
const amperes: Spellings = { a: 1, amp: 1, amps: 1, ampere: 1, ma: 1e-3, "\u00b5a": 1e-6, ua: 1e-6 };
const hertz: Spellings = { hz: 1e-6, khz: 1e-3, mhz: 1, ghz: 1e3 };
const watts: Spellings = { w: 1, watt: 1, watts: 1, mw: 1e-3, kw: 1e3 };
const volts: Spellings = { v: 1, volt: 1, volts: 1, mv: 1e-3, kv: 1e3 };
const nanoseconds: Spellings = { ns: 1, "\u00b5s": 1e3, us: 1e3, ms: 1e6, s: 1e9, sec: 1e9 };
const hours: Spellings = { h: 1, hr: 1, hrs: 1, hour: 1, hours: 1, min: 1 / 60, minutes: 1 / 60, day: 24, days: 24, week: 168, weeks: 168 };
const ohms: Spellings = { ohm: 1, ohms: 1, "\u03c9": 1, r: 1, k: 1e3, kohm: 1e3, "k\u03c9": 1e3, m: 1e6, mohm: 1e6, "m\u03c9": 1e6 };
const kilo = 1024;
const byteSpellings: Spellings = {
  b: 1,
  byte: 1,
  bytes: 1,
  k: kilo,
  kb: kilo,
  kib: kilo,
  kbyte: kilo,
  kbytes: kilo,
  m: kilo * kilo,
  mb: kilo * kilo,
  mib: kilo * kilo,
  mbyte: kilo * kilo,
  mbytes: kilo * kilo,
  bit: 1 / 8,
  bits: 1 / 8,
  kbit: kilo / 8,
  mbit: (kilo * kilo) / 8,
};

/** Spellings of units in lower case, with what one of them is in the field's unit. Inside one table case tells nothing apart. */
const spellings: Readonly<Record<Unit, Spellings>> = {
  mm: length,
  A: amperes,
  mA: scaled(amperes, 1e3),
  MHz: hertz,
  W: watts,
  V: volts,
  ns: nanoseconds,
  h: hours,
  ohm: ohms,
  bytes: byteSpellings,
  bits: { bit: 1, bits: 1, byte: 8, bytes: 8 },
  address: { k: kilo, kb: kilo, m: kilo * kilo, mb: kilo * kilo },
};

function scaled(of: Spellings, by: number): Spellings {
  return Object.fromEntries(Object.entries(of).map(([spelling, factor]) => [spelling, factor * by]));
}

/** Whether a number was read with every digit that stands in the file: 1.10 is 1.1, but 0.12345678901234567 is not 0.12345678901234566. */
export function isReadWhole(source: string, value: number): boolean {
  if (/^0[ox]/.test(source)) return Number.isInteger(value) && BigInt(source) === BigInt(value);
  return plainDecimal(source) === plainDecimal(String(value));
}

/** A decimal with one spelling for each value: sign, digits without zeros at the ends, power of ten. */
function plainDecimal(text: string): string {
  const [mantissa = "", exponent = "0"] = text.toLowerCase().replace(/^\+/, "").split("e");
  const [whole = "", fraction = ""] = mantissa.replace(/^-/, "").split(".");
  const digits = (whole + fraction).replace(/^0+/, "");
  const plain = digits.replace(/0+$/, "");
  if (plain === "") return "0";
  return `${mantissa.startsWith("-") ? "-" : ""}${plain}e${Number(exponent) - fraction.length + digits.length - plain.length}`;
}

/** What to write for a number that was given as text; undefined when the text is none. `whole`: the field takes no fractions. */
export function hintForNumber(text: string, unit: Unit | undefined, whole: boolean): string | undefined {
  return hexHint(text, unit) ?? commaHint(text, unit) ?? decimalHint(text, unit, whole);
}

/** 30h, $30, &H30, 0X30, 30 hex; D0000 where an address or a size stands. */
function hexHint(text: string, unit: Unit | undefined): string | undefined {
  const plain = /^0x([0-9a-f]+)$/i.exec(text)?.[1];
  if (plain !== undefined) return `Write it without quotes: 0x${plain.toUpperCase()}.`;
  const marked = /^(?:\$|&h|#)([0-9a-f]+)$/i.exec(text) ?? /^([0-9a-f]+) ?(?:hex|h)$/i.exec(text);
  const letter = /h$/i.test(text) && !/hex$/i.test(text);
  // In hours an h is no mark of hexadecimal.
  if (marked?.[1] !== undefined && !(letter && unit === "h")) {
    const value = Number.parseInt(marked[1], 16);
    return Number.isSafeInteger(value) ? `Write hexadecimal with 0x in front: ${hex(value)}, which is ${counted(value, unit)}.` : undefined;
  }
  const bare = (unit === "address" || unit === "bytes") && /^(?=.*[a-f])[0-9a-f]{2,}$/i.test(text) && !/^[0-9]+b$/i.test(text);
  return bare ? `If it is hexadecimal, write it with 0x in front: 0x${text.toUpperCase()}.` : undefined;
}

function counted(value: number, unit: Unit | undefined): string {
  return unit === undefined || unit === "address" ? String(value) : `${value} ${unit}`;
}

/** A comma is a decimal one, or stands between thousands; only the writer knows which when three digits follow. */
function commaHint(text: string, unit: Unit | undefined): string | undefined {
  const comma = /^([0-9]{1,3}),([0-9]{3})(?![0-9,.])/.exec(text);
  if (!comma) return undefined;
  const rest = text.slice(comma[0].length).trim();
  const what = unit === undefined || unit === "address" ? "" : `, in ${unit}`;
  const either = `Write the number without a comma${what}`;
  return rest === "" ? `${either}: ${comma[1]}${comma[2]}, or ${comma[1]}.${comma[2]} if it is a decimal comma.` : `${either}.`;
}

function decimalHint(text: string, unit: Unit | undefined, whole: boolean): string | undefined {
  const parts = /^([+-]?[0-9]+(?:[.,][0-9]+)?)\s*(\D{0,10})$/u.exec(text) ?? middleUnit(text, unit);
  if (!parts) return undefined;
  const [, digits = "", suffix = ""] = parts;
  const given = suffix.trim().toLowerCase();
  const value = Number(digits.replace(",", "."));
  if (given === "" && digits.includes(",")) return `Write a point in place of the decimal comma: ${value}.`;
  if (given === "")
    return unit === "address" && /^[0-9]{2,}$/.test(digits)
      ? `Write it without quotes: 0x${digits} if it is hexadecimal, ${value} if it is not.`
      : `Write it without quotes: ${digits}.`;
  if (unit === undefined) return countHint(value, given);
  const factor = spellings[unit][given];
  if (factor === undefined) return unit === "address" ? undefined : `Write the number alone, in ${unit}.`;
  const converted = Number((value * factor).toPrecision(12));
  if (whole && !Number.isInteger(converted)) return `${text} is ${counted(converted, unit)}, and a whole number stands here.`;
  if (unit === "bytes") return `Write ${shortSize(converted)}, which is ${converted} bytes.`;
  if (unit === "address") return `Write ${hex(converted)}, which is ${sizeText(converted)}.`;
  return factor === 1 ? `Write the number alone: ${converted}.` : `Write it in ${unit}: ${converted}.`;
}

/** 4k7, as resistors are marked: 4.7k. */
function middleUnit(text: string, unit: Unit | undefined): readonly string[] | undefined {
  const marked = unit === "ohm" ? /^([0-9]+)([rkm])([0-9]+)$/i.exec(text) : undefined;
  return marked ? [text, `${marked[1]}.${marked[3]}`, marked[2] ?? ""] : undefined;
}

/** A number that is counted in nothing: what stands after it only names the thing, unless it multiplies. */
function countHint(value: number, given: string): string {
  const factor = { k: kilo, m: kilo * kilo }[given];
  if (factor === undefined) return `Write the number alone: ${value}.`;
  return `Write the number in full: ${value * factor}, if ${given.toUpperCase()} stands for ${factor}.`;
}

/** 2K for 2048; the plain number for what is no round size. */
function shortSize(count: number): string {
  return count % kilo === 0 ? sizeText(count) : String(count);
}
