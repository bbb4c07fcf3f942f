// The house rules, in the order they are told.
import type { Rule } from "../rule.js";
import { addressSpace } from "./address-space.js";
import { benchDate } from "./bench-date.js";
import { boardFirmware } from "./board-firmware.js";
import { buildNames } from "./build-names.js";
import { buildSettings } from "./build-settings.js";
import { buildSlots } from "./build-slots.js";
import { busNames } from "./bus-names.js";
import { cardHasPlace } from "./card-has-place.js";
import { chainSlots } from "./chain-slots.js";
import { circulatingSize } from "./circulating-size.js";
import { claimsApart } from "./claims-apart.js";
import { confirmedEvidence } from "./confirmed-evidence.js";
import { conflictCanApply } from "./conflict-can-apply.js";
import { conflictDoubles } from "./conflict-doubles.js";
import { connectorFace } from "./connector-face.js";
import { currentFigures } from "./current-figures.js";
import { danglingReference } from "./dangling-reference.js";
import { doubleName } from "./double-name.js";
import { doubleRecord } from "./double-record.js";
import { enablePoints } from "./enable-points.js";
import { enableReleases } from "./enable-releases.js";
import { featureNames } from "./feature-names.js";
import { fileName } from "./file-name.js";
import { fixedOverlap } from "./fixed-overlap.js";
import { hexAddresses } from "./hex-addresses.js";
import { imageFits } from "./image-fits.js";
import { leftOut } from "./left-out.js";
import { lossNamed } from "./loss-named.js";
import { memoryDevicePins } from "./memory-device-pins.js";
import { noneAndSettings } from "./none-and-settings.js";
import { onOrOff } from "./on-or-off.js";
import { oneClub } from "./one-club.js";
import { optionRomStep } from "./option-rom-step.js";
import { orderOfDates } from "./order-of-dates.js";
import { orderOfReleases } from "./order-of-releases.js";
import { panelSignals } from "./panel-signals.js";
import { reached } from "./reached.js";
import { realDates } from "./real-dates.js";
import { remedyCosts } from "./remedy-costs.js";
import { resultConflicts } from "./result-conflicts.js";
import { resultExplained } from "./result-explained.js";
import { resultModes } from "./result-modes.js";
import { revisionNames } from "./revision-names.js";
import { safestMode } from "./safest-mode.js";
import { selfReference } from "./self-reference.js";
import { settingNames } from "./setting-names.js";
import { settingReach } from "./setting-reach.js";
import { settleNamed } from "./settle-named.js";
import { slotLines } from "./slot-lines.js";
import { slotOrder } from "./slot-order.js";
import { socketRowsRule } from "./socket-rows.js";
import { socketWindow } from "./socket-window.js";
import { sourceNames } from "./source-names.js";
import { sourced } from "./sourced.js";
import { spanVersions } from "./span-versions.js";
import { switchContacts } from "./switch-contacts.js";
import { switchParts } from "./switch-parts.js";
import { testedExactly } from "./tested-exactly.js";
import { unknownFind } from "./unknown-find.js";

export const rules: readonly Rule[] = [
  fileName,
  danglingReference,
  doubleName,
  doubleRecord,
  oneClub,
  revisionNames,
  busNames,
  settingNames,
  featureNames,
  sourceNames,
  spanVersions,
  orderOfDates,
  orderOfReleases,
  realDates,
  slotOrder,
  slotLines,
  chainSlots,
  fixedOverlap,
  claimsApart,
  leftOut,
  noneAndSettings,
  addressSpace,
  hexAddresses,
  optionRomStep,
  socketRowsRule,
  socketWindow,
  boardFirmware,
  imageFits,
  circulatingSize,
  settingReach,
  cardHasPlace,
  currentFigures,
  enablePoints,
  enableReleases,
  panelSignals,
  selfReference,
  reached,
  conflictCanApply,
  conflictDoubles,
  lossNamed,
  settleNamed,
  confirmedEvidence,
  remedyCosts,
  buildNames,
  buildSlots,
  buildSettings,
  testedExactly,
  safestMode,
  onOrOff,
  switchParts,
  resultModes,
  resultConflicts,
  resultExplained,
  benchDate,
  memoryDevicePins,
  switchContacts,
  connectorFace,
  sourced,
  unknownFind,
];
