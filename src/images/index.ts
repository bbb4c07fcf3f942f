// Burn images: what a dump is, how images lie in a device, files for programmers, reading back. No file is opened here.
export { type CardRom, cardRom } from "./card-rom.js";
export * from "./checksums.js";
export * from "./crc32.js";
export { crc32Joined, type Summed } from "./crc32-joined.js";
export * from "./file-formats.js";
export * from "./identify.js";
export { readHexRecord, readIntelHex, writeIntelHex } from "./intel-hex.js";
export * from "./known-image.js";
export * from "./label.js";
export * from "./lay-out.js";
export * from "./looks-like.js";
export type { FileFormat, MemoryFile, ReadProblem } from "./memory-file.js";
export type { Misreading } from "./misread.js";
export { type OptionRom, optionRom } from "./option-rom.js";
export * from "./rearrange.js";
export { readSRecord, readSRecords, writeSRecords } from "./s-record.js";
export * from "./verify.js";
export { isRecorded, takeWord, type Word } from "./word.js";
