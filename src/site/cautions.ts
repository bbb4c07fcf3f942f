// The usual cautions for this work, in order of danger. Each names where it comes from; local codes and licensed practice come first.

export interface Caution {
  readonly id: string;
  readonly stop: boolean;
  readonly title: string;
  readonly says: string;
  readonly figure?: string;
  readonly source: string;
}

export const cautions: readonly Caution[] = [
  {
    id: "mains",
    stop: true,
    title: "Mains inside the supply",
    says: "An open power supply carries mains, and the capacitor on its primary side keeps a dangerous charge after the plug is out, sometimes for days. Leave the supply closed. If it has to be opened, that is work for somebody who is qualified for it where you live. Do not short the capacitor with a screwdriver.",
    figure: "220 \u00b5F at 325\u202fV holds 11.6\u202fJ (C\u00b7V\u00b2/2).",
    source: "Figure: computed. Size of the capacitor and how long it stays charged: public repair notes.",
  },
  {
    id: "picture-tube",
    stop: true,
    title: "Picture tubes",
    says: "A picture tube holds typically 15 to 40\u202fkV, for an hour or much longer after it was switched off, and its thin neck can implode. Discharge it only as its maker describes, through a high resistance, to the ground of the tube. If you have not been shown how, leave it alone.",
    source:
      "A university help page on monitors (25\u202fkV), a terminal maker's service manual on discharging, repair notes (15 to 40\u202fkV).",
  },
  {
    id: "uv",
    stop: true,
    title: "Ultraviolet from an erasing lamp",
    says: "A lamp that erases EPROMs gives off UV-C at 253.7\u202fnm. It burns eyes and skin within minutes and may make ozone. Use it only in a closed box with a switch that cuts it off when the lid opens, and with a timer.",
    figure: "15\u202fW\u00b7s/cm\u00b2 at 12\u202fmW/cm\u00b2 takes 20.8\u202fminutes; some makes ask for twice the dose.",
    source: "Memory device data sheet (wavelength, dose); time computed as dose divided by irradiance.",
  },
  {
    id: "fuse",
    stop: true,
    title: "Fuses",
    says: "Replace a fuse only with the same type, rating and speed. Ratings by IEC 60127 and by UL 248-14 do not mean the same continuous current. A fuse that blows again is telling you something: look for the fault.",
    source: "From memory; compare the two standards.",
  },
  {
    id: "switch-off-first",
    stop: false,
    title: "Power off before you switch, plug or fit",
    says: "Power off before moving a bank or card switch, before fitting or pulling a card, before plugging or pulling a panel cable. Wait until the supply has run down.",
    source: "Common practice.",
  },
  {
    id: "measure-first",
    stop: false,
    title: "Measure a new loom before anything is in it",
    says: "Power a new loom for the first time without the memory device and without the card. Measure every supply and every line at the empty socket and compare with the wiring table. Fit the parts only then.",
    source: "Common practice.",
  },
  {
    id: "static",
    stop: false,
    title: "Static",
    says: "Handle boards and memory devices on a grounded mat with a wrist strap. Parts can be damaged by discharges far below what you can feel.",
    figure: "Usual programme: parts that bear 100\u202fV or more (human body model), strap and person below 35\u202fM\u03a9.",
    source: "ANSI/ESD S20.20-2021 and IEC 61340-5-1:2016, abstracts; a supplier's note (35\u202fM\u03a9).",
  },
  {
    id: "programming-voltage",
    stop: false,
    title: "Programming voltage stays in the programmer",
    says: "Never connect 12 to 21\u202fV of programming supply to a pin that is wired to the machine. Which pin carries VPP differs by size: look at the part's own pin list.",
    source: "Memory device data sheets.",
  },
  {
    id: "tantalum",
    stop: false,
    title: "Tantalum capacitors",
    says: "A tantalum capacitor put in backwards or stressed beyond its rating fails short and may burn. Wear eye protection when a repaired board gets power for the first time.",
    figure: "Rated voltage at least twice the rail: 10\u202fV or more on +5\u202fV, 25\u202fV on +12\u202fV.",
    source: "A space agency's lesson learned on reversed tantalum capacitors; a maker's note on derating.",
  },
  {
    id: "battery",
    stop: false,
    title: "Leaking batteries",
    says: "Look at the board before it gets power. Leaking cells eat tracks and the leak is caustic: gloves and eye protection, take the battery off, neutralise, rinse, dry, then test the tracks around it.",
    source: "From memory.",
  },
  {
    id: "solder",
    stop: false,
    title: "Soldering",
    says: "The tip is at 300 to 400\u202f\u00b0C. Flux fume irritates the airways: extract it or open a window. Old solder holds lead: no food at the bench, wash your hands.",
    source: "From memory; general practice.",
  },
  {
    id: "mains-filter",
    stop: false,
    title: "Old mains-filter capacitors",
    says: "Old paper filter capacitors crack and smoke when they first get mains again. Do not leave a machine alone at its first power-up. Have them replaced by somebody qualified.",
    source: "From memory.",
  },
  {
    id: "erased",
    stop: false,
    title: "Label and cover the window",
    says: "After programming, cover the window of an EPROM with an opaque label and write on it the image, version, checksum and date. Do not leave parts under the lamp for hours.",
    source: "Memory device data sheet (opaque labels); experience (parts killed by a night under the lamp).",
  },
  {
    id: "copyright",
    stop: false,
    title: "Firmware belongs to somebody",
    says: "Firmware images are usually under copyright. These records keep name, version, size and checksum, never the image itself.",
    source: "Common practice.",
  },
];
