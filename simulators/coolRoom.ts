// A walk-in cool room as two stores of heat: air with walls, and produce in its crates. Stepped by
// the minute; the form is the plain lumped heat balance (Incropera & DeWitt, Fundamentals of Heat
// and Mass Transfer, chapter 5, from memory). All sizes are ours, chosen for about 12 m³.

export type CoolRoomKind = {
  /** °C aimed for, and K between cutting in and cutting out. */
  readonly setPoint: number;
  readonly differential: number;
  /** kJ/K of air, walls and racks, and of produce. */
  readonly airHeat: number;
  readonly produceHeat: number;
  /** W/K between produce and air, through the walls, and through an open door. */
  readonly produceLink: number;
  readonly walls: number;
  readonly door: number;
  /** W taken out while the compressor runs. */
  readonly cooling: number;
  /** W drawn: controller alone, compressor with fans, defrost heater. */
  readonly standing: number;
  readonly running: number;
  readonly defrosting: number;
  /** Hours between defrosts, and minutes each lasts. */
  readonly defrostEvery: number;
  readonly defrostMinutes: number;
};

/** Invented unit, ours: the shares are like those of a small room's unit. */
export const coolRoomKind: CoolRoomKind = {
  ...{ setPoint: 3, differential: 1.6, airHeat: 300, produceHeat: 1100, produceLink: 220 },
  ...{ walls: 20, door: 380, cooling: 1100, standing: 7, running: 660, defrosting: 540 },
  ...{ defrostEvery: 6, defrostMinutes: 16 },
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
};

export type CoolRoom = {
  readonly t: number;
  readonly air: number;
  readonly produce: number;
  readonly compressor: boolean;
  readonly defrost: boolean;
  readonly supply: boolean;
  readonly door: number;
  /** W; exactly 0 without supply. */
  readonly power: number;
  /** kWh on the meter. */
  readonly energy: number;
  /** J that came in through walls and door in this minute, and that the unit took out. */
  readonly gained: number;
  readonly taken: number;
};

export function firstCoolRoom(t: number, kind: CoolRoomKind): CoolRoom {
  const still = { compressor: false, defrost: false, supply: true, door: 0 };
  const { setPoint } = kind;
  return {
    ...{ t, air: setPoint, produce: setPoint, ...still },
    ...{ power: kind.standing, energy: 0, gained: 0, taken: 0 },
  };
}

/** One minute on. */
export function nextCoolRoom(last: CoolRoom, kind: CoolRoomKind, now: CoolRoomMinute): CoolRoom {
  const setPoint = now.setPoint ?? kind.setPoint;
  const strength = now.strength ?? 1;
  const minutes = Math.floor(now.t / 60_000);
  const defrost = now.supply && minutes % (kind.defrostEvery * 60) < kind.defrostMinutes;
  let compressor = last.compressor;
  if (last.air >= setPoint + kind.differential / 2) compressor = true;
  if (last.air <= setPoint - kind.differential / 2) compressor = false;
  const runs = compressor && now.supply && !defrost && strength > 0;

  const cooling = runs ? kind.cooling * strength : 0;
  const heater = defrost ? 0.3 * kind.defrosting : 0; // most of it melts ice and drains away
  const link = kind.walls + kind.door * now.door;
  const inflow = link * (now.around - last.air);
  const shared = kind.produceLink * (last.produce - last.air);
  const air = last.air + (60 * (inflow + shared + heater - cooling)) / (1000 * kind.airHeat);
  let produce = last.produce - (60 * shared) / (1000 * kind.produceHeat);
  // Crates carried in take the place of as many that were sold: what is inside stays as heavy.
  if (now.load) {
    produce += (now.load.heat / kind.produceHeat) * (now.load.temperature - produce);
  }

  const working = defrost ? kind.defrosting : runs ? kind.running : 0;
  const power = now.supply ? kind.standing + working : 0;
  return {
    t: now.t,
    air,
    produce,
    compressor: runs,
    defrost,
    supply: now.supply,
    door: now.door,
    power,
    energy: last.energy + power / 60_000,
    gained: 60 * (inflow + heater),
    taken: 60 * cooling,
  };
}
