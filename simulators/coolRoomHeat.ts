// Heat that moves in a cool room by other laws than a plain conductance.

const HEIGHT = 1.9; // m of the doorway
const WIDTH = 0.8; // m
const GRAVITY = 9.81; // m/s²
const AIR = 1250; // J/(m³ K) of cold air

/**
 * W that flow in through an open doorway: cold air falls out below and warm air comes in above.
 * Gosney & Olama 1975, Proc. Institute of Refrigeration 72:31 (from memory): volume flow
 * 0.221 A sqrt(g H) sqrt(1 - warm/cold density), a flow at rest after some seconds; densities as
 * one over absolute temperature.
 */
export function doorway(around: number, air: number): number {
  const [cold, warm] = [Math.min(around, air) + 273.15, Math.max(around, air) + 273.15];
  const flow = 0.221 * HEIGHT * WIDTH * Math.sqrt(GRAVITY * HEIGHT) * Math.sqrt(1 - cold / warm);
  return flow * AIR * (around - air);
}

/** Grows with a warmer coil and falls with warmer air at the condenser: shares of a small unit. Ours. */
export function unitTakes(rated: number, coil: number, around: number): number {
  return Math.max(0, rated * (1 + 0.034 * (coil + 8)) * (1 - 0.007 * (around - 25)));
}

const BLOCKED = 2.5; // kg of ice at which half the exchange is left. Ours

/** W/K between coil and air: by the fan, or by what rises and falls of itself. Ours. */
export function coilOf(frost: number, fan: boolean): number {
  return (fan ? 130 : 11) / (1 + frost / BLOCKED);
}
