// Records: shapes, values, findings, reading. Imports nothing of ours.
export * from "./finding.js";
export { formatFinding, where } from "./format.js";
export { fieldGuide, type GuideField, type GuideKind } from "./guide.js";
export { type JsonSchema, jsonSchemas } from "./json-schema.js";
export { few, nearest } from "./nearest.js";
export { type Picture, pictureOf } from "./picture.js";
export { type Locator, locator, place, type Spot, step, steps } from "./place.js";
export * from "./read.js";
export * from "./schema/index.js";
export * from "./values.js";
export { writeRecord } from "./write.js";
