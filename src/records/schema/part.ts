// A generic part that switched machines are built from: memory device, switch, connector, cable, resistor.
import { type Static, Type } from "@sinclair/typebox";
import { amount, fact, flag, head, list, mark, oneOf, optional, pair, signed, size, strict, text, whole, wholeOf } from "./common.js";

export const Pin = strict("A pin of a device.", {
  pin: whole("Number.", 1),
  name: mark("Signal: A0, D7, /OE, VPP, NC, VCC, GND."),
});

export const MemoryDevice = strict("A memory device.", {
  ...head,
  type: Type.Literal("memory", { description: "A memory device." }),
  family: text("Family as marked: 27C040."),
  technology: oneOf(["uv-eprom", "otp-eprom", "eeprom", "flash"], "How it is erased and written."),
  capacity: size("Bytes."),
  organisations: list(
    strict("Words by bits.", { words: whole("Words.", 1), width: wholeOf("bits", "Bits per word.", 8) }),
    "Organisations; a device with two is switched by a pin.",
  ),
  package: text("Package: DIP32."),
  pins: list(Pin, "Every pin, with what it carries when the device is read."),
  grades_ns: list(
    strict("A speed grade.", { marking: text("As marked: -15."), access_ns: wholeOf("ns", "Access time, ns.", 1) }),
    "Speed grades.",
  ),
  read_pins: optional(
    list(
      strict("A pin that must be held while reading.", { pin: whole("Pin.", 1), at: oneOf(["high", "low"], "Level.") }),
      "Pins to hold at a level for reading (VPP, /PGM, /BYTE).",
    ),
  ),
  erase: optional(text("How it is erased.")),
});
export type MemoryDevice = Static<typeof MemoryDevice>;

export const Switch = strict("A switch.", {
  ...head,
  type: Type.Literal("switch", { description: "A switch." }),
  form: oneOf(["toggle", "rotary", "dip", "coded-rotary", "slide", "key"], "Form."),
  poles: whole("Poles.", 1),
  positions: list(mark("A position."), "Positions in the order of the lever or knob."),
  terminals: list(mark("A terminal."), "Terminals, as marked: 1C, 1A, 1B."),
  closes: Type.Record(Type.String(), Type.Array(pair(mark("Terminal."), "Two terminals.")), {
    description: "Position: pairs of terminals that are joined in it.",
  }),
  transit: oneOf(["break-before-make", "make-before-break"], "What happens between two positions."),
  hole_mm: fact(amount("mm"), "Panel hole, in mm."),
  body_mm: optional(strict("Room behind the panel.", { width: amount("mm"), height: amount("mm") })),
  rating_A: optional(fact(amount("A"), "Contact rating, in A.")),
  lever: optional(text("Which way the lever points for which contact, when known.")),
});
export type Switch = Static<typeof Switch>;

export const Connector = strict("A connector.", {
  ...head,
  type: Type.Literal("connector", { description: "A connector." }),
  family: text("Family and standard."),
  contacts: whole("Contacts.", 1),
  half: oneOf(["plug", "socket"], "Which half."),
  mates: optional(text("Id of the other half, or words.")),
  face: list(
    strict("A contact as it lies on the mating face of this half.", {
      contact: mark("Number."),
      x_mm: signed("mm", "From the centre, to the right."),
      y_mm: signed("mm", "From the centre, upwards."),
    }),
    "Contacts seen on the mating face of this half; the solder side is its mirror image.",
  ),
  key: optional(text("Where the key or the wide row is in that view.")),
  rating_A: optional(fact(amount("A"), "Per contact, in A.")),
  hole: optional(
    strict("Panel cut-out.", {
      round_mm: optional(amount("mm", "Diameter of a round hole, in mm.")),
      width_mm: optional(amount("mm", "Width of a cut-out, in mm.")),
      height_mm: optional(amount("mm", "Height of a cut-out, in mm.")),
      screws_mm: optional(amount("mm", "Distance between fixing holes, in mm.")),
      screw_hole_mm: optional(amount("mm", "Fixing hole, in mm.")),
    }),
  ),
  ribbon: optional(flag("Its contacts are pressed on a flat ribbon, wire n on contact n; nothing is soldered.")),
  panel: flag("It is made to be fixed in a panel."),
});
export type Connector = Static<typeof Connector>;

export const Cable = strict("A cable.", {
  ...head,
  type: Type.Literal("cable", { description: "A cable." }),
  conductors: whole("Conductors.", 1),
  awg: whole("Gauge (AWG).", 1),
  stranded: flag("Stranded."),
  screen: optional(flag("It has a screen.")),
  ribbon: optional(flag("Flat ribbon.")),
});
export type Cable = Static<typeof Cable>;

export const Resistor = strict("A resistor.", {
  ...head,
  type: Type.Literal("resistor", { description: "A resistor or a network of them." }),
  ohms: amount("ohm", "Resistance in ohm."),
  network: optional(whole("Resistors in it, when it is a network.", 1)),
});
export type Resistor = Static<typeof Resistor>;

export const Sundry = strict("Anything else a switched machine needs.", {
  ...head,
  type: Type.Literal("sundry", { description: "Socket, adapter, sleeve, label, ferrule." }),
  what: text("What it is."),
});

export const Part = Type.Union([MemoryDevice, Switch, Connector, Cable, Resistor, Sundry], {
  description: "A generic part.",
  discriminator: { propertyName: "type" },
});
export type Part = Static<typeof Part>;
