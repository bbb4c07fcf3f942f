// Firmware looks for option ROMs every 2K; one that begins between two steps is never found.
// The step and the 512-byte blocks are those of the scan usual in machines of the time.
import { bytes, hex, listed } from "../../records/index.js";
import { claimSites } from "../claims.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

const scanStep = 2048;
const block = 512;

export const optionRomStep: Rule = {
  name: "option-rom-step",
  says: "An option ROM begins on a 2K step and its length is a multiple of 512 bytes.",
  why: "Firmware finds a ROM at these steps alone and takes its length in these blocks; another one never starts.",
  mend: "Correct the address or the length.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      for (const { path, claims } of claimSites(card)) {
        for (const [i, w] of listed(claims.memory).entries()) {
          if (w.is !== "option-rom") continue;
          if (w.base % scanStep !== 0) {
            const down = w.base - (w.base % scanStep);
            yield {
              says: `An option ROM at ${hex(w.base)} would not be found: the scan goes in steps of 2K.`,
              at: ref("card", card.id, ...path, "memory", i, "base"),
              expected: `${hex(down)} or ${hex(down + scanStep)}`,
              hint: "Check the address against the jumper table; registers or RAM need not lie on a step.",
            };
          } else if (bytes(w.size) % block !== 0) {
            yield {
              says: `An option ROM of ${bytes(w.size)} bytes cannot say its length: it counts blocks of 512.`,
              at: ref("card", card.id, ...path, "memory", i, "size"),
              hint: "Round it up to the next 512 bytes.",
            };
          }
        }
      }
    }
  },
};
