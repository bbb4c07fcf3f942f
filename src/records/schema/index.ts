// One schema a kind: the only description of shape. Types, JSON Schema and the field guide come from here.
import { Board } from "./board.js";
import { Build } from "./build.js";
import { Bus } from "./bus.js";
import { Card } from "./card.js";
import { Club } from "./club.js";
import { Conflict } from "./conflict.js";
import { Firmware } from "./firmware.js";
import { Part } from "./part.js";

/** Record kinds and the folder each lives in. */
export const kinds = {
  club: { folder: "clubs", schema: Club },
  bus: { folder: "buses", schema: Bus },
  board: { folder: "boards", schema: Board },
  firmware: { folder: "firmware", schema: Firmware },
  card: { folder: "cards", schema: Card },
  conflict: { folder: "conflicts", schema: Conflict },
  build: { folder: "builds", schema: Build },
  part: { folder: "parts", schema: Part },
} as const;

export type Kind = keyof typeof kinds;

export interface RecordOf {
  club: Club;
  bus: Bus;
  board: Board;
  firmware: Firmware;
  card: Card;
  conflict: Conflict;
  build: Build;
  part: Part;
}

export * from "./board.js";
export * from "./build.js";
export * from "./bus.js";
export * from "./card.js";
export * from "./club.js";
export * from "./common.js";
export * from "./conflict.js";
export * from "./firmware.js";
export * from "./part.js";
export * from "./resource-kinds.js";
