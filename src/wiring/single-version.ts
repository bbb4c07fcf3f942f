// One version in every mode: nothing switches the firmware, so one image fills the whole device, however much larger than the window it is.
// Which level an upper pin has is then all the same, but each needs one: a pin the socket leaves without any is named, with what to do.
import type { Catalogue } from "../catalogue/index.js";
import type { Combination } from "../planning/index.js";
import type { MemoryDevice } from "../records/index.js";
import { type DeviceFit, fitDevice, type LineAt, type Sockets, socketsOf } from "../switching/index.js";
import type { WayOut, WiringOptions, WiringReason } from "./answer-types.js";
import { imageRepeats } from "./harness/banks.js";
import { devicePlan, speedText } from "./report/describe.js";
import type { Bank, DevicePlan, PinWork } from "./types.js";

export type SingleVersion =
  | { readonly kind: "single-version"; readonly device: DevicePlan; readonly banks: readonly Bank[]; readonly pinWork: readonly PinWork[] }
  | { readonly kind: "refused"; readonly reasons: readonly WiringReason[]; readonly waysOut: readonly WayOut[] };

/** The device that is burned and how it stands in its socket: the one the owner named, else the one the socket was wired for. */
export function planSingleVersion(catalogue: Catalogue, combination: Combination, options: WiringOptions = {}): SingleVersion {
  const refuse = (reason: WiringReason, ...waysOut: readonly WayOut[]): SingleVersion => ({ kind: "refused", reasons: [reason], waysOut });
  const board = catalogue.boards.get(combination.board);
  const family = catalogue.firmware.get(combination.firmwareFamily);
  const [mode] = combination.modes;
  if (!board) return refuse({ code: "no-board", says: `The records hold no board ${combination.board}.`, refs: [] });
  if (!family || !mode || combination.modes.some((m) => m.firmware !== mode.firmware))
    return refuse({ code: "image-unknown", says: "The modes do not run one known version of one firmware.", refs: [] });
  const sockets = socketsOf(board, combination.revision);
  if ("reason" in sockets) return refuse(sockets.reason);
  const images = imageRepeats(family, [mode.firmware], sockets);
  const [unfit] = images.reasons;
  if (unfit) return refuse(unfit, { says: "Correct the sizes in the records of the board and the firmware, or ask for another version." });

  const chosen = chooseDevice(catalogue, sockets, options.switch?.device);
  if ("reason" in chosen) return refuse(chosen.reason, ...chosen.waysOut);
  const { fit } = chosen;
  const bank: Bank = {
    index: 0,
    offset: 0,
    size: fit.capacity,
    version: mode.firmware,
    repeats: fit.banks * (images.repeats.get(mode.firmware) ?? 1),
    use: "mode",
    modes: combination.modes.map((m) => m.id),
  };
  const where = sockets.sockets.map(({ socket }) => socket.id).join(" and ");
  const says = `${fit.device.name} in ${where}, filled with ${mode.firmware}; ${speedText(fit, sockets)}.`;
  const device = { ...devicePlan(fit, sockets, new Set(options.atHand)), says };
  return { kind: "single-version", device, banks: [bank], pinWork: [...fit.pinWork, ...loosePins(fit)] };
}

type Chosen = { readonly fit: DeviceFit } | { readonly reason: WiringReason; readonly waysOut: readonly WayOut[] };

function chooseDevice(catalogue: Catalogue, sockets: Sockets, named: string | undefined): Chosen {
  const memories = [...catalogue.parts.values()].filter((p): p is MemoryDevice => p.type === "memory");
  const families = new Map(memories.map((m) => [m.family, m]));
  const wired = [...new Set(sockets.sockets.map(({ socket }) => socket.wired_for))];
  const ids = sockets.sockets.map(({ socket }) => socket.id).join(" and ");
  const naming: WayOut = { says: "Name the device that will stand in it: switch: {device: <id of a part>} in the build." };
  if (named === undefined && wired.length > 1)
    return {
      reason: { code: "sockets-differ", says: `${ids} are wired for different devices: ${wired.join(" and ")}.`, refs: [] },
      waysOut: [naming],
    };
  const tried = memories.filter((m) => (named === undefined ? m.family === wired[0] : m.id === named));
  const fits = tried.map((device) => fitDevice(device, sockets, families));
  for (const found of fits) if (found.kind === "fits") return { fit: found.fit };
  const [why] = fits.flatMap((found) => (found.kind === "unfit" ? [found.says] : []));
  if (why !== undefined) return { reason: { code: "device-unfit", says: `${ids}: ${why}`, refs: [] }, waysOut: [naming] };
  return {
    reason: {
      code: "no-device",
      says:
        named === undefined
          ? `${ids} is wired for a ${wired[0]}, and no part record says how large that is and what its pins carry.`
          : `The parts records hold no memory device ${named}.`,
      refs: [],
    },
    waysOut: [naming, { says: `Write a part record for the ${named ?? wired[0]}, with its capacity and pins.` }],
  };
}

/** Upper address pins that meet nothing with a level. All parts of the device hold the same, so ground does for each. */
function loosePins(fit: DeviceFit): PinWork[] {
  return fit.lines.flatMap(({ line, pin, at }) =>
    at.flatMap((place): PinWork[] => {
      const { carries, socket, socketPin } = place;
      if (carries !== "open" && carries !== "overhangs" && carries !== "unknown" && carries !== "rail") return [];
      const lifted = carries === "unknown" || carries === "rail";
      const what = `pin ${pin} (${line}) of the ${fit.device.family} in ${socket}`;
      return [
        {
          socket,
          pin,
          signal: line,
          does: lifted ? "lift-and-tie" : "tie",
          to: "ground",
          says: lifted ? `Lift ${what} and tie it to ground.` : `Tie ${what} to ground.`,
          why: `${socketPin === undefined ? "It" : `At socket pin ${socketPin} it`} meets ${meeting[carries]}, and ${carries === "rail" ? "no address pin bears that" : "an address line without a level may swing"}.`,
        },
      ];
    }),
  );
}

const meeting: Readonly<Record<Extract<LineAt["carries"], "open" | "overhangs" | "unknown" | "rail">, string>> = {
  open: "nothing",
  overhangs: "nothing, as it hangs out beyond the socket",
  unknown: "something the records do not name",
  rail: "another supply than +5 V",
};
