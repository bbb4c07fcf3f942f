// Machine: the build as a value: read against the catalogue, edited, written as an address. Imports records, catalogue.

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
