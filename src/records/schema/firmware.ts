// A firmware family: an ordered line of releases. The order is the order of the list, never the spelling.
import type { Static } from "@sinclair/typebox";
import { BoardMatch, fact, head, hexDigest, idOf, list, mark, oneOf, optional, size, strict, text, when, wholeOf } from "./common.js";

export const Image = strict("The bytes of one version.", {
  size: fact(size("Bytes."), "Length in bytes."),
  width: optional(wholeOf("bits", "Data bits of the socket it is made for (8 or 16).", 8)),
  crc32: fact(hexDigest(8, "CRC-32, lower-case hex."), "CRC-32 (the zip one)."),
  sha1: optional(fact(hexDigest(40, "SHA-1, lower-case hex."), "SHA-1.")),
  sha256: optional(fact(hexDigest(64, "SHA-256, lower-case hex."), "SHA-256.")),
});
export type Image = Static<typeof Image>;

export const Circulating = strict("A file people pass round that is not the plain image.", {
  as: oneOf(
    ["held-twice", "byte-swapped", "word-swapped", "even-half", "odd-half", "overdump", "bad-dump"],
    "How it differs from the image.",
  ),
  size: size("Length in bytes."),
  crc32: hexDigest(8, "CRC-32 of that file."),
  note: optional(text("Where it is met, what to do with it.")),
});

export const FirmwareVersion = strict("One release.", {
  id: mark("As people call it: R4A."),
  date: optional(when("Release date.")),
  follows: optional(mark("The release before it, when the source says so; checked against the order of the list.")),
  boards: optional(list(BoardMatch, "Boards it runs on, when not all of the family's; both must have the board and its revision.")),
  adds: optional(list(mark("A feature id."), "Features it brings; later versions keep them until one drops them.")),
  removes: optional(list(mark("A feature id."), "Features it drops; what it both brings and drops is dropped.")),
  image: Image,
  circulating: optional(list(Circulating, "Other files in circulation.")),
  memory_at_least: optional(size("Memory it needs.")),
  changes: optional(text("What changed, in words.")),
  source: optional(text("Where it comes from.")),
});
export type FirmwareVersion = Static<typeof FirmwareVersion>;

export const Firmware = strict("A firmware family: an ordered line of releases.", {
  ...head,
  maker: text("Maker."),
  boards: list(BoardMatch, "Boards it runs on."),
  features: optional(
    list(
      strict("A thing firmware can do that cards may need.", {
        id: mark("Short name."),
        says: text("What it is."),
      }),
      "Features that come and go with versions.",
    ),
  ),
  versions: list(FirmwareVersion, "Releases, oldest first. This order is the only order."),
  replaces: optional(list(idOf("firmware", "a firmware family"), "Families it takes the place of.")),
});
export type Firmware = Static<typeof Firmware>;
