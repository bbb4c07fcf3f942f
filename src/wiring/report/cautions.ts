// The usual cautions for this work, each with where it comes from. They do not replace local codes or licensed practice.
import type { Caution } from "../types.js";

export const cautions: readonly Caution[] = [
  {
    id: "mains-inside",
    severity: "stop",
    title: "Mains inside the supply",
    text: "An open supply carries mains voltage, and the capacitor on its primary side keeps a dangerous charge after the plug is pulled, for days in some. Leave the supply closed; opening it is work for somebody licensed to do it. 220 uF at 325 V hold 11.6 J.",
    source: "Public repair page on switch-mode supplies (typical primary capacitors 220 uF and 330 uF); energy computed as C V squared / 2",
  },
  {
    id: "crt",
    severity: "stop",
    title: "Picture tube",
    text: "A picture tube holds some 15 to 40 kV for an hour or far longer after it is switched off, and its thin neck can implode. Stay out of the monitor part; discharge only as the maker's manual says, through a high resistance, to the ground of the tube.",
    source:
      "University help page on monitors (25 kV); service manual of a terminal maker on discharging the tube; repair list post (15 to 40 kV)",
  },
  {
    id: "esd",
    severity: "care",
    title: "Static",
    text: "Handle boards and memory devices on a grounded mat with a wrist strap; the strap's path to ground stays below 35 Mohm.",
    source: "ANSI/ESD S20.20-2021 and IEC 61340-5-1:2016 (abstracts); supplier's note for 35 Mohm",
  },
  {
    id: "uv-c",
    severity: "stop",
    title: "Ultraviolet lamp",
    text: "An erasing lamp gives off UV-C at 253.7 nm: it burns eyes and skin within minutes and can make ozone. Use a closed box with an interlock and a timer. A dose of 15 W s/cm2 takes 20.8 minutes at 12 mW/cm2, longer than some data sheets print; some makes need 30 W s/cm2.",
    source: "Data sheet of the 27C160 (dose and lamp); public article quoting 15 and 30 W s/cm2; minutes computed",
  },
  {
    id: "opaque-label",
    severity: "care",
    title: "Cover the window",
    text: "Put an opaque label over the window after burning and write version, checksum and date on it; daylight erases an open device in about a week.",
    source: "Data sheet of the 27C160",
  },
  {
    id: "over-erase",
    severity: "care",
    title: "Do not over-erase",
    text: "Do not leave devices under the lamp for hours; untimed nights have killed some.",
    source: "Mailing-list reports",
  },
  {
    id: "solder",
    severity: "care",
    title: "Soldering",
    text: "The tip is at 300 to 400 C. Draw the flux fume away or air the room; old solder holds lead: no food at the bench, wash hands after.",
    source: "From memory: general health and safety practice",
  },
  {
    id: "battery",
    severity: "care",
    title: "Leaking batteries",
    text: "Leaked cells eat tracks. Look at the board before power is put on it; take the battery off, neutralise (mild acid for alkaline cells), rinse, dry, and measure the tracks.",
    source: "From memory",
  },
  {
    id: "tantalum",
    severity: "care",
    title: "Tantalum capacitors",
    text: "A solid tantalum capacitor that is worn or the wrong way round fails as a short and may burn: wear eye protection when an old board is first powered. A replacement is rated for at least twice its rail.",
    source: "NASA lesson learned on reversed tantalum capacitors; list posts and a maker's note on derating",
  },
  {
    id: "x-capacitor",
    severity: "care",
    title: "Old mains filters",
    text: "Old paper filter capacitors crack and smoke when first powered again. Stay beside the machine, and pull the mains plug at the first smell.",
    source: "From memory",
  },
  {
    id: "fuse",
    severity: "stop",
    title: "Fuses",
    text: "Replace a fuse only by the same type, rating and speed; IEC 60127 and UL 248-14 ratings do not mean the same continuous current.",
    source: "From memory of the two standards",
  },
  {
    id: "power-off-to-switch",
    severity: "care",
    title: "Power off before switching",
    text: "Turn the power off before moving the mode switch, fitting a card or touching the plug. Contacts bounce for milliseconds while a bus cycle takes less than one millionth of a second: a running machine would fetch from the wrong bank.",
    source: "Common practice; one public page gives 1 to 5 ms of bounce",
  },
  {
    id: "polarity-first",
    severity: "care",
    title: "First power without the device",
    text: "Put power on a new loom for the first time without the memory device and without the switched cards, and measure every supply and line at the socket.",
    source: "Common practice",
  },
  {
    id: "vpp",
    severity: "care",
    title: "Programming voltage",
    text: "Burn only in the burner: 12 to 21 V on the programming pin must never reach a pin wired to the machine. Which pin takes it differs by size of device.",
    source: "Data sheets of the 27C family",
  },
  {
    id: "copyright",
    severity: "care",
    title: "Whose firmware",
    text: "Firmware is usually somebody's copyright. Records hold names, sizes and checksums, never the bytes; burn from your own dump.",
    source: "Common practice",
  },
];

export function cautionsOf(ids: readonly string[]): Caution[] {
  return cautions.filter((c) => ids.includes(c.id));
}
