// Wire, pull-ups and drops. Wire: ASTM B258 formula, copper at 100 % IACS (values of published tables). The rest: Ohm's law, worked by
// hand; leakage and capacitance are common planning figures.
import { describe, expect, it } from "vitest";
import {
  cmosHigh,
  drop_mV,
  ohmPerMetre,
  openVolts,
  pullUp_mA,
  rise_us,
  ttlHigh_V,
  wireDiameter_mm,
} from "../../../src/wiring/harness/electrical.js";

describe("wire by ASTM B258", () => {
  it.each([
    [16, 1.2908, 13.17],
    [20, 0.8118, 33.31],
    [22, 0.6438, 52.96],
    [24, 0.5106, 84.21],
    [28, 0.3211, 212.92],
    [30, 0.2546, 338.55],
  ])("AWG %i: %f mm, %f ohm/km", (awg, diameter, perKilometre) => {
    expect(wireDiameter_mm(awg)).toBeCloseTo(diameter, 4);
    expect(ohmPerMetre(awg) * 1000).toBeCloseTo(perKilometre, 2);
  });
});

it("a closed contact draws 0.5 mA through 10 kohm and 1.064 mA through 4.7 kohm at 5 V", () => {
  expect(pullUp_mA(5, 10_000)).toBeCloseTo(0.5, 6);
  expect(pullUp_mA(5, 4_700)).toBeCloseTo(1.06383, 5);
});

it("10 uA of leakage leave 4.9 V on an open line, above both high levels", () => {
  const volts = openVolts(5, 10_000, 10);
  expect(volts).toBeCloseTo(4.9, 6);
  expect(volts).toBeGreaterThan(ttlHigh_V);
  expect(volts).toBeGreaterThan(cmosHigh * 5);
});

it("an open line with 100 pF on it reaches 2 V in 0.511 us", () => {
  expect(rise_us(5, 2, 10_000, 100)).toBeCloseTo(0.511, 3);
});

it.each([
  [24, 0.5, 1000, 84.2],
  [28, 1.0, 500, 212.9],
])("AWG %i, %f m, %i mA: %f mV there and back", (awg, metres, current, drop) => {
  expect(drop_mV(awg, metres, current)).toBeCloseTo(drop, 1);
});
