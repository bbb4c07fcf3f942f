// machine: the door of the room.

export { addressOf, buildFrom } from "./address.js";
export { orElse, withChoice, withoutCard, withoutMode, withSecondMode } from "./edit.js";
export {
  type AskedCard,
  type AskedMode,
  ask,
  type Fault,
  holding,
  type Misasked,
  type Question,
  type Release,
  running,
  switchable,
} from "./resolve.js";
export { asStanding, withCard } from "./standing.js";
