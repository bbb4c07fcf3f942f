// A file in circulation has the size its kind asks for: an image held twice is twice as long.
import { bytes, known, sizeText } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

const times = { "held-twice": 2, "byte-swapped": 1, "word-swapped": 1, "even-half": 0.5, "odd-half": 0.5 } as const;

export const circulatingSize: Rule = {
  name: "circulating-size",
  says: "A file in circulation has the size its kind asks for, and is not the image itself.",
  why: "People know their file by its length and checksum; a wrong length sends them away from the right file.",
  mend: "Measure the file, and correct the size or what the file is said to be.",
  scope: ["firmware"],
  *check({ catalogue }): Iterable<Draft> {
    for (const family of catalogue.firmware.values()) {
      for (const [v, version] of family.versions.entries()) {
        const size = known(version.image.size);
        const at = (...path: (string | number)[]) => ref("firmware", family.id, "versions", v, ...path);
        for (const [i, file] of (version.circulating ?? []).entries()) {
          if (file.crc32 === known(version.image.crc32))
            yield {
              says: "This file has the checksum of the image, so it is the image.",
              at: at("circulating", i, "crc32"),
              related: [{ says: "The image.", at: at("image", "crc32") }],
              hint: "Leave it out, or correct the checksum.",
            };
          if (size === "unknown") continue;
          const factor = file.as in times ? times[file.as as keyof typeof times] : undefined;
          const over = file.as === "overdump" && bytes(file.size) <= bytes(size);
          const fitting = factor === undefined ? undefined : bytes(size) * factor;
          if (!over && (fitting === undefined || bytes(file.size) === fitting)) continue;
          yield {
            says: `A file listed as ${file.as} cannot be ${sizeText(bytes(file.size))} long when the image is ${sizeText(bytes(size))}.`,
            at: at("circulating", i, "size"),
            expected: over || fitting === undefined ? `more than ${sizeText(bytes(size))}` : sizeText(fitting),
            actual: sizeText(bytes(file.size)),
            related: [{ says: "The size of the image.", at: at("image", "size") }],
            hint: "Correct the size, or how it differs from the image.",
          };
        }
      }
    }
  },
};
