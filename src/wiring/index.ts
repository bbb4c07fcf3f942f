// Wiring: modes -> banks, lines, contacts, wires, proof, bench test, fault table. Imports catalogue, records, planning's types.

export type { Wiring, WiringOptions } from "./answer-types.js";
export type { Observation } from "./bench-types.js";
export { type BestBuilt, type BestWiring, type Built, bestWiring, type ToBuild } from "./best.js";
export { wiringOptions } from "./demand/options.js";
export type { FigureDifference, Figures } from "./figures.js";
export { partFaces } from "./harness/connectors.js";
export { type PanelPart, panelParts } from "./harness/panel-parts.js";
export { type CardRom, cardRom } from "./images/card-rom.js";
export { checksums } from "./images/checksums.js";
export { crc32 } from "./images/crc32.js";
export { fileEnding, formatOf, readMemoryFile, writeMemoryFile } from "./images/file-formats.js";
export { type Identification, identify, identifyTogether, type NamedBytes } from "./images/identify.js";
export * from "./images/index.js";
export { readHexRecord, readIntelHex, writeIntelHex } from "./images/intel-hex.js";
export { labelText } from "./images/label.js";
export { type BurnDevice, type BurnPlan, type Layout, layOut } from "./images/lay-out.js";
export { looksLike } from "./images/looks-like.js";
export type { FileFormat, MemoryFile } from "./images/memory-file.js";
export { joinLanes, repeatTo, sameBytes, swapBytes, swapWords, takeLane, timesHeld } from "./images/rearrange.js";
export { readSRecord, readSRecords, writeSRecords } from "./images/s-record.js";
export { type Verification, verify } from "./images/verify.js";
export { planWiring } from "./plan.js";
export { cautions, cautionsOf } from "./report/cautions.js";
export * from "./report/sheet.js";
export { planSingleVersion, type SingleVersion } from "./single-version.js";
export * from "./types.js";
