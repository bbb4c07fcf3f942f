// What the types of parts are called.
import type { Part } from "../records/index.js";

export const partTypes: Readonly<Record<Part["type"], string>> = {
  memory: "memory device",
  switch: "switch",
  connector: "connector",
  cable: "cable",
  resistor: "resistor",
  sundry: "sundry",
};
