// Every rule of the trade, in the order its facts are told.
import type { TradeRule } from "../draft.js";
import { chain } from "./chain.js";
import { conflicts } from "./conflicts.js";
import { firmware } from "./firmware.js";
import { fit } from "./fit.js";
import { lines } from "./lines.js";
import { needs } from "./needs.js";
import { power } from "./power.js";
import { rails } from "./rails.js";
import { room } from "./room.js";
import { settings } from "./settings.js";
import { dma, interrupts } from "./shared.js";
import { slotNumbers } from "./slot-numbers.js";
import { spaces } from "./spaces.js";
import { unread } from "./unread.js";
import { unsaid } from "./unsaid.js";
import { ioWindows, memoryWindows } from "./windows.js";

export const tradeRules: readonly TradeRule[] = [
  fit,
  room,
  lines,
  settings,
  firmware,
  needs,
  ioWindows,
  memoryWindows,
  spaces,
  slotNumbers,
  interrupts,
  dma,
  unsaid,
  rails,
  power,
  chain,
  conflicts,
  unread,
];
