// The sums: resistance of wire, pull-up current, level of an open line, rise time, voltage drop, currents in every wire.
// Formulae only; the choice of values stands with the plan.

/** Resistivity of annealed copper at 20 C, ohm metre (100 % IACS). */
export const copper = 1.7241e-8;
/** Leakage planned for at one address input, in microamps: common practice for CMOS and TTL devices. */
export const leakage_uA = 10;
/** Least level that reads as high, greatest that reads as low, for TTL-level inputs. */
export const ttlHigh_V = 2.0;
export const ttlLow_V = 0.8;
/** Least high level for CMOS-level inputs, as part of the supply. */
export const cmosHigh = 0.7;

/** Diameter of a gauge in mm, by the formula of ASTM B258. */
export function wireDiameter_mm(awg: number): number {
  return 0.127 * 92 ** ((36 - awg) / 39);
}

/** Resistance of solid copper wire, ohm per metre at 20 C; stranded wire has a few per cent more. */
export function ohmPerMetre(awg: number): number {
  const area = (Math.PI / 4) * (wireDiameter_mm(awg) / 1000) ** 2;
  return copper / area;
}

/** Drop along a cable, there and back, in mV. */
export function drop_mV(awg: number, length_m: number, current_mA: number): number {
  return 2 * ohmPerMetre(awg) * length_m * current_mA;
}

/** Current through a pull-up whose line is held low, in mA. */
export function pullUp_mA(volts: number, ohms: number): number {
  return (volts / ohms) * 1000;
}

/** Level of an open line: the supply less what the leakage drops across the pull-up. */
export function openVolts(volts: number, ohms: number, leak_uA: number): number {
  return volts - (leak_uA / 1e6) * ohms;
}

/** Time for an open line to rise from 0 to a level, in microseconds. */
export function rise_us(volts: number, level: number, ohms: number, capacitance_pF: number): number {
  return ohms * capacitance_pF * 1e-6 * Math.log(volts / (volts - level));
}

/** Rounds to a number of places, so that plans compare equal. */
export function rounded(value: number, places: number): number {
  const scale = 10 ** places;
  return Math.round(value * scale) / scale;
}
