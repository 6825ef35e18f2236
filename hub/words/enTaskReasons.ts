import type { Evidence, TaskKind } from '../contract/index.ts';

// Why a task is asked for, one sentence for each fact that carries a decision.

/** At most one decimal, none where it would be zero, and a true minus sign. */
export const figure = (value: Evidence['value']): string => {
  if (typeof value !== 'number') return value ?? 'not known';
  const rounded = Math.abs(value) >= 100 ? Math.round(value) : Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded).replace('-', '−');
};

const counted = (value: Evidence['value'], one: string, many: string) =>
  `${figure(value)} ${figure(value) === '1' ? one : many}`;
const hours = (value: Evidence['value']) => counted(value, 'hour', 'hours');
const minutes = (value: Evidence['value']) =>
  typeof value === 'number' && value >= 120
    ? hours(value / 60)
    : counted(typeof value === 'number' ? Math.round(value) : value, 'minute', 'minutes');

type Say = (fact: Evidence) => string;

export const sentences: Readonly<Record<string, Say>> = {
  'wet-hours': ({ value }) => `Leaves have been wet for ${hours(value)}.`,
  'outside-drier-by': ({ value }) => `Outside air holds ${figure(value)} g/m³ less water.`,
  'outside-damper-by': ({ value }) =>
    `Outside air holds ${figure(value)} g/m³ more water, but the heat goes first.`,
  'inside-temperature': ({ value, limit }) =>
    `It is ${figure(value)} °C inside; venting starts at ${figure(limit)} °C.`,
  'heat-limit-near': ({ value, limit }) =>
    `It is ${figure(value)} °C inside, close to the limit of ${figure(limit)} °C.`,
  'outside-cooler-by': ({ value }) => `Outside is ${figure(value)} °C cooler.`,
  'night-needs-warmth': ({ value }) =>
    `Close again before dusk: the low outside tonight is about ${figure(value)} °C.`,
  'tonight-outside-low': ({ value }) => `The low outside tonight is about ${figure(value)} °C.`,
  'film-not-enough': ({ value }) =>
    `That is ${figure(value)} °C below what the crop bears: film alone does not keep it, so cover inside or move trays.`,
  'purge-first': ({ value }) =>
    `Outside air holds ${figure(value)} g/m³ less water: air the house for a quarter of an hour first.`,
  'closed-stays-damp': ({ value }) =>
    `It is at ${figure(value)} % humidity inside, and closed it stays damp.`,
  'chance-of-damage': ({ value, limit }) =>
    limit === null
      ? `The chance of damage tonight is ${figure(value)} %.`
      : `The chance of damage tonight is ${figure(value)} %; covering pays from ${figure(limit)} %.`,
  'tonight-low': ({ value, limit }) =>
    `Tonight’s low is about ${figure(value)} °C; damage begins at ${figure(limit)} °C.`,
  'under-cover': ({ value }) => `It is ${figure(value)} °C under the covers.`,
  'open-air': ({ value }) => `It is ${figure(value)} °C in the open, past the danger.`,
  'door-open-minutes': ({ value }) => `The door has been open for ${minutes(value)}.`,
  'steep-rise': ({ value }) =>
    `The air rose by ${figure(value)} °C in minutes and stays up, as with an open door.`,
  'room-air': ({ value, limit }) =>
    `The air in the room is at ${figure(value)} °C; the limit is ${figure(limit)} °C.`,
  'room-power': ({ value }) => `The cooling draws ${figure(value)} W.`,
  'off-minutes': ({ value }) => `Cooling has been off for ${minutes(value)}.`,
  'minutes-to-limit': ({ value }) => `The air reaches the limit in about ${minutes(value)}.`,
  'above-limit-minutes': ({ value }) => `The air has been over the limit for ${minutes(value)}.`,
  'produce-estimate': ({ value }) => `The middle of a crate is at about ${figure(value)} °C.`,
  'cycle-bottom-above': ({ value }) =>
    `The coldest the room gets is now ${figure(value)} °C above the set temperature.`,
  'one-long-rise': ({ value }) =>
    `The room warms without a break and is at ${figure(value)} °C; the cause is not clear.`,
  'silent-hours': ({ value }) => `It has been silent for ${hours(value)}.`,
  'stuck-hours': ({ value }) => `It has said the same value for ${hours(value)}.`,
  battery: ({ value, unit }) => `Its battery is at ${figure(value)} ${unit}.`,
  'doubtful-readings': ({ value }) => `${figure(value)} of its readings in 24 hours were doubtful.`,
  'rule-broke': ({ value }) => `Cannot say: a rule broke down (${figure(value)}).`,
  vents: ({ value }) => `The vents are ${figure(value)}, as somebody said.`,
  covers: ({ value }) => `The covers are ${figure(value)}, as somebody said.`,
  'night-goes-first': () => 'The cold of the night goes first.',
  'still-too-warm-to-close': () => 'It is still too warm inside to close.',
  'stay-open-dry': ({ value }) =>
    `With a low of about ${figure(value)} °C outside it can stay open and dry.`,
  'outside-freezing': ({ value }) =>
    `Outside air is at ${figure(value)} °C: frost is worse than wet leaves.`,
};

/** For each kind the pairs of facts that make its reason; the first pair that is there is said. */
export const reasons: Partial<Record<TaskKind, readonly (readonly string[])[]>> = {
  'open-up': [
    ['night-goes-first'],
    ['outside-freezing'],
    ['heat-limit-near', 'outside-cooler-by'],
    ['inside-temperature', 'outside-damper-by'],
    ['wet-hours', 'outside-drier-by', 'night-needs-warmth'],
    ['wet-hours', 'outside-drier-by'],
    ['inside-temperature', 'outside-cooler-by'],
  ],
  'close-up': [
    ['still-too-warm-to-close'],
    ['stay-open-dry'],
    ['tonight-outside-low', 'film-not-enough'],
    ['tonight-outside-low', 'purge-first'],
    ['tonight-outside-low', 'closed-stays-damp'],
  ],
  cover: [['chance-of-damage', 'tonight-low']],
  'shut-door': [
    ['door-open-minutes', 'room-air'],
    ['steep-rise', 'room-air'],
  ],
  'run-generator': [
    ['off-minutes', 'minutes-to-limit'],
    ['off-minutes', 'room-air'],
  ],
  'see-to-unit': [
    ['off-minutes', 'room-air'],
    ['one-long-rise'],
    ['cycle-bottom-above', 'room-air'],
  ],
  'move-produce': [
    ['above-limit-minutes', 'produce-estimate'],
    ['minutes-to-limit', 'produce-estimate'],
  ],
};
