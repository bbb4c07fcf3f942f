// Records: shapes, values, findings, reading. Imports nothing of ours.

export { definedFields } from "./defined-fields.js";
export { type Explanation, readingExplanations } from "./explanations.js";
export * from "./finding.js";
export { formatFinding, where } from "./format.js";
export { fieldGuide, type GuideField, type GuideKind } from "./guide.js";
export { type JsonSchema, jsonSchemas } from "./json-schema.js";
export { entryOf, itemAt, lastOf, must } from "./must.js";
export { nearest, truncateList } from "./nearest.js";
export { type Picture, pictureOf } from "./picture.js";
export { type Locator, locator, place, type Spot } from "./place.js";
export { step, steps } from "./pointer.js";
export { quoteText } from "./quote.js";
export * from "./read.js";
export { type Reference, references } from "./references.js";
export type { Board, FirmwareSocket, Slot } from "./schema/board.js";
export type { Build, BuildCard, Mode, Result } from "./schema/build.js";
export type { Bus } from "./schema/bus.js";
export type { Card, Setting } from "./schema/card.js";
export type { Club } from "./schema/club.js";
export type {
  BoardMatch,
  Claims,
  ConditionalClaims,
  FirmwareRange,
  InterruptClaim,
  IoWindow,
  MemoryWindow,
  Source,
} from "./schema/common.js";
export { type Conflict, conflictClasses, Remedy } from "./schema/conflict.js";
export type { Firmware, FirmwareVersion } from "./schema/firmware.js";
export * from "./schema/index.js";
export { type Cable, type Connector, type MemoryDevice, type Part, type Resistor, Switch } from "./schema/part.js";
export { goesBy, type ReadableConflict, type ReadableTest, type Unread, unreadOf } from "./unread.js";
export * from "./values.js";
export { writeRecord } from "./write.js";
