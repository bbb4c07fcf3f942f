// Finding a fault in two steps, on paper: about fifteen rows. With a meter and no power first, where nearly all faults are found; then
// with power, without cards, by the firmware that is shown. Which fault is found where was simulated; this words it.
import { type FaultKind, type FindingRow, switchConnector, type WiringPlan } from "../wiring/index.js";

export interface SheetFindingRow {
  readonly measure: string;
  readonly sees: string;
  readonly means: string;
  /** How many of the simulated faults. */
  readonly faults: number;
}

export interface SheetFinding {
  readonly says: string;
  /** Power off, a meter. */
  readonly meter: readonly SheetFindingRow[];
  /** Power on, without the switched cards. */
  readonly firmware: readonly SheetFindingRow[];
  readonly after: string;
}

interface Told {
  readonly kinds: readonly FaultKind[];
  readonly measure: string;
  readonly sees: string;
  readonly means: string;
}

const byMeter: readonly Told[] = [
  {
    kinds: ["wire-open"],
    measure: "Each wire of the table, end to end",
    sees: "One does not beep",
    means: "It is open: solder both of its ends again.",
  },
  {
    kinds: ["wires-swapped", "throws-swapped", "terminals-swapped", "two-swaps"],
    measure: "Each wire, end to end; then the terminals of the switch",
    sees: "Two beep at one another's places",
    means: "Exchange what is soldered to the two.",
  },
  {
    kinds: ["wire-to-ground", "wire-to-supply"],
    measure: "Each wire against ground, then against +5\u2009V",
    sees: "One beeps that must not",
    means: "A bare place touches: look along that wire.",
  },
  {
    kinds: ["contacts-bridged", "terminals-bridged"],
    measure: `Each contact of ${switchConnector}, each terminal, against its neighbours`,
    sees: "Two beep that must not",
    means: "A bridge of solder: take it away, look with a glass.",
  },
  {
    kinds: ["plug-mirrored"],
    measure: `${switchConnector}, contact by contact`,
    sees: "Wires beep at the contact that is their mirror image",
    means: `Solder ${switchConnector} again by the drawing of its solder side.`,
  },
  {
    kinds: ["pin-not-lifted"],
    measure: "Each lifted pin against the socket contact below it",
    sees: "It beeps",
    means: "Lift it clear; no power before it is silent.",
  },
  {
    kinds: ["knob-offset", "knob-reversed"],
    measure: "The positions, from one stop to the other",
    sees: "Every row is right, at another position",
    means: "Set the knob, the stop or the labels.",
  },
  {
    kinds: ["contact-stuck"],
    measure: "The bare switch, wires off",
    sees: "A contact never makes, or always does",
    means: "Clean the switch or take another.",
  },
];

const mostFirmware = 7;

export function findingOf(plan: WiringPlan): SheetFinding | undefined {
  const { finding } = plan;
  if (finding.length === 0) return undefined;
  const count = (rows: readonly FindingRow[]) => rows.reduce((sum, r) => sum + r.faults.length, 0);
  const at = (where: FindingRow["at"]) => finding.filter((r) => r.at === where);
  const meter = byMeter.flatMap(({ kinds, ...told }): SheetFindingRow[] => {
    const faults = count(at("meter").filter((r) => r.kinds.some((k) => kinds.includes(k))));
    return faults === 0 ? [] : [{ ...told, faults }];
  });
  const resistors = plan.pullUps.map((r) => `${r.id} ${r.ohms} ohm`).join(", ");
  const resistance = count(at("resistance"));
  const firmware = at("firmware");
  const more = firmware.slice(mostFirmware);
  const rest = [
    ...(count(at("cards")) > 0 ? [`${count(at("cards"))} show only when the cards are in: the whole table tells them.`] : []),
    ...(count(at("read-back")) > 0 ? [`${count(at("read-back"))} show only when the device is read back.`] : []),
    ...(count(at("nothing")) > 0 ? [`${count(at("nothing"))} change nothing.`] : []),
  ];
  const all = count(finding);
  return {
    says: `Of ${all} faults simulated a meter finds ${count(at("meter")) + resistance} before any power is on. So measure everything first; what is then still wrong is the burn or a card.`,
    meter: [
      ...meter,
      ...(resistance > 0
        ? [
            {
              measure: `Each resistor, from its line to +5\u2009V: ${resistors}`,
              sees: "Another value, or open",
              means: "Fit it, or solder its ends again.",
              faults: resistance,
            },
          ]
        : []),
    ],
    firmware: [
      ...firmware.slice(0, mostFirmware).map((row) => ({
        measure: "Start at every position",
        sees: row.shows.map((s) => `${s.position}: ${s.shows}`).join("; "),
        means: `${row.says.join("; or ")}. Burn again by the table of banks.`,
        faults: row.faults.length,
      })),
      ...(more.length > 0
        ? [
            {
              measure: "Start at every position",
              sees: "Anything else that is not planned",
              means: "Read the device back and compare every bank.",
              faults: count(more),
            },
          ]
        : []),
    ],
    after: rest.join(" "),
  };
}
