// Figures in the spellings people use, brought to one: an address in hexadecimal without marks, a size as 640k, a voltage as "5 volt".
import { must } from "../records/index.js";

const numbers: Readonly<Record<string, string>> = {
  one: "1",
  two: "2",
  three: "3",
  four: "4",
  five: "5",
  six: "6",
  seven: "7",
  eight: "8",
  nine: "9",
  ten: "10",
  eleven: "11",
  twelve: "12",
};

/** The text, in lower case, with its figures in one spelling. */
export function evenFigures(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b/g, (word) => must(numbers[word], word))
    .replaceAll(/\b([0-9a-f]{3,4}):([0-9a-f]{1,4})\b/g, (_, segment: string, offset: string) =>
      (Number.parseInt(segment, 16) * 16 + Number.parseInt(offset, 16)).toString(16),
    )
    .replaceAll(/(?:\b0x|[$&])([0-9a-f]+)\b/g, "$1")
    .replaceAll(/\b([0-9][0-9a-f]{1,5}|[a-f][0-9a-f]{2,4})h\b/g, "$1")
    .replaceAll(/\b(\d+) ?(?:k|kb|kib|kbytes?|kilobytes?)\b/g, "$1k")
    .replaceAll(/\b(\d+) ?(?:m|mb|mib|mbytes?|megabytes?)\b/g, "$1m")
    .replaceAll(/(^|[^a-z0-9.])[-\u2212\u2013](\d+) ?(?:v|volts?)?\b/g, "$1minus $2 volt")
    .replaceAll(/(^|[^a-z0-9.])\+?(\d+) ?(?:v|volts?)\b/g, "$1$2 volt");
}
