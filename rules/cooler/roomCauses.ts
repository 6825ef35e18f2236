// Why a cool room does not keep its cold, as far as the probes that hang there can tell.

/** `controller`: set wrong, as when a number meant in one unit of temperature is set in the other. */
export type RoomCause = 'door' | 'unit' | 'power' | 'controller' | 'probe';

export type Sureness = 'sure' | 'likely' | 'cannot-tell';

/** What is wrong, by the rule that saw it. */
export type Trouble =
  /** A contact says that the door has stood open. */
  | 'door-open'
  /** A meter says that nothing at all is drawn. */
  | 'supply-off'
  /** Meter or coil say that nothing cools, though it should. */
  | 'not-cooling'
  /** The coil is far colder than ever: no air goes over it. */
  | 'coil-starved'
  /** Above its cycle, and no way down. */
  | 'stalled'
  /** The way from top to bottom of the cycle takes far too long. */
  | 'lost-bottom'
  | 'too-cold'
  /** The cycle has kept its shape and lies elsewhere. */
  | 'set-elsewhere'
  /** The same value again and again. */
  | 'stuck';

export type RoomEvidence = {
  readonly trouble: Trouble;
  /** Whether the air left its cycle as only a door or a load makes it. */
  readonly steep: boolean;
  /** Whether it then came down some way, or never went far: what was open was shut again. */
  readonly dipped: boolean;
  /** By a contact; null without one. */
  readonly doorOpen: boolean | null;
  /** By a meter; null without one, or where it can't tell a pause from an outage. */
  readonly supplyOn: boolean | null;
  /** Whether a meter shows nothing at all, where it may always do so in a pause. */
  readonly nothingDrawn: boolean;
  /** Whether the unit cools, by meter or coil; null without either. */
  readonly cools: boolean | null;
};

export type CauseFinding = {
  /** null: several fit and none more than the others. */
  readonly cause: RoomCause | null;
  readonly sure: Sureness;
  /** All that fit, the likeliest first. */
  readonly among: readonly RoomCause[];
};

const found = (sure: Sureness, ...among: readonly RoomCause[]): CauseFinding => ({
  cause: sure === 'cannot-tell' ? null : (among[0] ?? null),
  sure,
  among,
});

/**
 * Which causes fit what was seen. What no fitted probe can tell apart is said as such: a stopped
 * unit, a cut supply and a controller set far too high all leave the same slow rise to one probe in
 * the air. It changes the words of an alarm and never its urgency.
 *
 * Source: common practice, no source; which of two likely ones is named first is ours.
 */
export function roomCauses(seen: RoomEvidence): CauseFinding {
  const { trouble, steep, dipped, doorOpen, supplyOn, nothingDrawn, cools } = seen;
  if (trouble === 'stuck') return found(cools === null ? 'likely' : 'sure', 'probe');
  if (trouble === 'supply-off') return found('sure', 'power');
  if (trouble === 'door-open' || doorOpen === true) return found('sure', 'door');
  // A door, a load or a unit that fades lifts the top alone, or makes the cycle slow.
  if (trouble === 'set-elsewhere') return found('likely', 'controller');
  // A relay that hangs cools on just as a set value far too low does.
  if (trouble === 'too-cold') return found('cannot-tell', 'controller', 'unit');
  if (trouble === 'coil-starved') return found('sure', 'unit');
  if (cools === false) {
    if (supplyOn === false) return found('sure', 'power');
    // With power and above its cycle it should work: broken, or set far too high.
    if (supplyOn === true) return found('cannot-tell', 'unit', 'controller');
    return found(nothingDrawn ? 'likely' : 'cannot-tell', 'power', 'unit', 'controller');
  }
  const door = doorOpen === null ? (['door'] as const) : [];
  if (steep && !dipped && doorOpen === null) return found('likely', 'door', 'unit');
  if (cools === true) {
    return door.length > 0 ? found('cannot-tell', 'unit', 'door') : found('likely', 'unit');
  }
  if (trouble === 'lost-bottom')
    return found('cannot-tell', 'unit', ...door, 'power', 'controller');
  return found('cannot-tell', 'power', 'unit', 'controller', ...door);
}
