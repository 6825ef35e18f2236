import { coilOf, doorway, unitTakes } from './coolRoomHeat.ts';

// A walk-in cool room as stores of heat that exchange it: air, inner walls, produce, a load just
// carried in, and the unit's coil with the frost on it. Stepped by ten seconds. The form is the
// lumped heat balance (Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, chapter 5, from
// memory); the flow through a doorway is in coolRoomHeat.ts. All sizes are ours, for about 12 m³.

export type CoolRoomKind = {
  /** °C aimed for, and K between cutting in and cutting out. */
  readonly setPoint: number;
  readonly differential: number;
  /** kJ/K of air with what is thin in it, of inner walls and racks, of produce, of the coil. */
  readonly airHeat: number;
  readonly wallHeat: number;
  readonly produceHeat: number;
  readonly coilHeat: number;
  /** W/K: through the panels, by leaks, and of air with walls and with produce while the fan runs. */
  readonly walls: number;
  readonly leak: number;
  readonly wallLink: number;
  readonly produceLink: number;
  /** Share of the open doorway's flow that a curtain lets through; 1 without one. */
  readonly curtain: number;
  /** W taken out by the whole unit at a coil of -8 °C and 25 °C around it. */
  readonly cooling: number;
  /** W drawn: controller alone, compressor with fan, fan alone, defrost heater. */
  readonly standing: number;
  readonly running: number;
  readonly fan: number;
  readonly defrosting: number;
  /** Hours between defrosts, minutes each may last, and minutes by which the timer is late. */
  readonly defrostEvery: number;
  readonly defrostMinutes: number;
  readonly defrostAt: number;
  /** W of respiration at 5 °C. */
  readonly respiration: number;
};

/** Invented unit, ours: the shares are like those of a small room's unit. */
export const coolRoomKind: CoolRoomKind = {
  ...{ setPoint: 3, differential: 1.6 },
  ...{ airHeat: 50, wallHeat: 260, produceHeat: 1100, coilHeat: 14 },
  ...{ walls: 13, leak: 4, wallLink: 150, produceLink: 110, curtain: 1 },
  ...{ cooling: 700, standing: 7, running: 660, fan: 45, defrosting: 540 },
  ...{ defrostEvery: 6, defrostMinutes: 16, defrostAt: 0, respiration: 12 },
};

/** What the world does to the room in one minute. */
export type CoolRoomMinute = {
  readonly t: number;
  /** °C around the room. */
  readonly around: number;
  readonly supply: boolean;
  /** Share of the doorway open, 0..1. */
  readonly door: number;
  /** kJ/K and °C of produce carried in, when there is some. */
  readonly load?: { readonly heat: number; readonly temperature: number } | undefined;
  /** Overrides the controller's set point (somebody turned it, or changed its unit). */
  readonly setPoint?: number | undefined;
  /** The compressor's share of its strength; 0 is a stopped unit with power present. */
  readonly strength?: number | undefined;
  /** False when the coil's fan does not turn. */
  readonly fan?: boolean | undefined;
  /** True when the timer's contact hangs in a defrost. */
  readonly defrost?: boolean | undefined;
};

export type CoolRoom = {
  readonly t: number;
  readonly air: number;
  readonly wall: number;
  readonly produce: number;
  /** What was carried in last, while it is still apart. */
  readonly fresh: { readonly heat: number; readonly temperature: number };
  readonly coil: number;
  /** kg of ice on the coil. */
  readonly frost: number;
  /** What the thermostat's own bulb shows, °C. */
  readonly bulb: number;
  readonly calls: boolean;
  readonly compressor: boolean;
  readonly defrost: boolean;
  readonly supply: boolean;
  readonly door: number;
  /** W; exactly 0 without supply. */
  readonly power: number;
  /** kWh on the meter. */
  readonly energy: number;
  /** J that came in from everywhere in this minute, and that the unit took out. */
  readonly gained: number;
  readonly taken: number;
};

export function firstCoolRoom(t: number, kind: CoolRoomKind): CoolRoom {
  const still = { calls: false, compressor: false, defrost: false, supply: true, door: 0 };
  const { setPoint: at } = kind;
  return {
    ...{ t, air: at, wall: at, produce: at, coil: at, bulb: at, frost: 0, ...still },
    ...{ fresh: { heat: 0, temperature: at } },
    ...{ power: kind.standing, energy: 0, gained: 0, taken: 0 },
  };
}

const STEP = 10; // s
const STEPS = 6;
const BULB = 90; // s the thermostat's bulb lags the air
const MELT = 334_000; // J/kg, ice
const STILL_AIR = 0.45; // of what walls and produce exchange while the fan turns
const DEFROSTED = 12; // °C at which the heater's own thermostat ends a defrost
const SPREADS = 86_400; // s in which what was carried in becomes part of the rest

/** One minute on. */
export function nextCoolRoom(last: CoolRoom, kind: CoolRoomKind, now: CoolRoomMinute): CoolRoom {
  const setPoint = now.setPoint ?? kind.setPoint;
  const strength = now.strength ?? 1;
  const minute = Math.floor(now.t / 60_000) - kind.defrostAt;
  const every = kind.defrostEvery * 60;
  const due = ((minute % every) + every) % every < kind.defrostMinutes;
  const melting = due && (last.coil < DEFROSTED || !last.defrost || last.frost > 0);
  const defrost = now.supply && (now.defrost === true || melting);

  let { air, wall, produce, coil, frost, bulb, calls } = last;
  let { heat: freshHeat, temperature: fresh } = last.fresh;
  if (now.load) {
    const both = freshHeat + now.load.heat;
    fresh = (fresh * freshHeat + now.load.temperature * now.load.heat) / both;
    freshHeat = both;
  }
  const fanTurns = now.supply && !defrost && now.fan !== false;
  const stir = fanTurns ? 1 : STILL_AIR;
  let gained = 0;
  let taken = 0;
  let runs = false;
  for (let step = 0; step < STEPS; step++) {
    if (bulb >= setPoint + kind.differential / 2) calls = true;
    if (bulb <= setPoint - kind.differential / 2) calls = false;
    runs = calls && now.supply && !defrost && strength > 0;
    const out = runs ? unitTakes(kind.cooling * strength, coil, now.around) : 0;
    const coilLink = coilOf(frost, fanTurns);
    const heater = defrost ? kind.defrosting : 0;
    const inflow =
      kind.leak * (now.around - air) + now.door * kind.curtain * doorway(now.around, air);
    const fromWall = kind.wallLink * stir * (wall - air);
    const fromProduce = kind.produceLink * stir * (produce - air);
    const fromFresh = 0.1 * freshHeat * stir * (fresh - air); // 0.1 W/K for each kJ/K: 2.8 h
    const fromCoil = coilLink * (coil - air);
    const through = kind.walls * (now.around - wall);
    // Plants breathe faster when warm: doubled over 8 K, Handbook 66's range, from memory.
    const breath = kind.respiration * 2 ** ((produce - 5) / 8);
    const turning = fanTurns ? kind.fan : 0;
    // Damp air that meets a coil below freezing leaves its water there as ice.
    const damp = coil < 0 ? 6e-7 * coilLink * (0.05 - coil / 40) * (1 + 9 * now.door) : 0;
    let melts = 0;
    let coilGain = heater * 0.8 - fromCoil - out + damp * (MELT + 2_500_000) * 0.2;
    if (coil >= 0 && frost > 0 && coilGain > 0) {
      melts = Math.min(frost, (coilGain * STEP) / MELT);
      coilGain -= (melts * MELT) / STEP;
    }
    const airGain = inflow + fromWall + fromProduce + fromFresh + fromCoil + turning + heater * 0.2;
    air += (STEP * airGain) / (1000 * kind.airHeat);
    wall += (STEP * (through - fromWall)) / (1000 * kind.wallHeat);
    produce += (STEP * (breath - fromProduce)) / (1000 * kind.produceHeat);
    if (freshHeat > 0) fresh -= (STEP * fromFresh) / (1000 * freshHeat);
    coil += (STEP * coilGain) / (1000 * kind.coilHeat);
    frost = Math.max(0, frost + damp * STEP - melts);
    bulb += ((air - bulb) * STEP) / BULB;
    gained += STEP * (airGain + through - fromWall + breath - fromProduce - fromFresh);
    gained += STEP * (coilGain + out);
    taken += STEP * out;
  }
  // Crates sold and crates come: what was carried in grows into the rest, whose weight stays.
  if (freshHeat > 0) {
    const share = Math.min(1, 60 / SPREADS + (freshHeat < 5 ? 1 : 0));
    produce += ((share * freshHeat) / kind.produceHeat) * (fresh - produce);
    freshHeat *= 1 - share;
  }
  const working = (defrost ? kind.defrosting : runs ? kind.running - kind.fan : 0) + kind.standing;
  const power = now.supply ? working + (fanTurns ? kind.fan : 0) * (runs ? 1 : 0) : 0;
  return {
    ...{ t: now.t, air, wall, produce, coil, frost, bulb, calls, defrost, gained, taken, power },
    ...{ fresh: { heat: freshHeat, temperature: fresh } },
    ...{ compressor: runs, supply: now.supply, door: now.door },
    energy: last.energy + power / 60_000,
  };
}
