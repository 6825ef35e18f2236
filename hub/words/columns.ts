// Headings of files that programs read (CSV): the same in every language, with units in their names.

export const pickColumns = {
  at: 'picked',
  place: 'place',
  crop: 'crop',
  kg: 'kg',
  lostKg: 'sorted_out_kg',
  minutes: 'minutes',
  walkMinutes: 'walk_minutes',
  pickers: 'pickers',
  price: 'price',
  note: 'note',
} as const;

export const recordColumns = {
  day: 'day',
  aboveHours: 'above_limit_h',
  belowHours: 'at_or_below_limit_h',
  unknownHours: 'not_known_h',
  highest: 'highest_c',
  lowest: 'lowest_c',
  meanKinetic: 'mean_kinetic_c',
  knownShare: 'known_share',
  gaps: 'gaps',
} as const;

export const actionColumns = {
  at: 'time',
  saw: 'seen',
  did: 'done',
  by: 'by',
  core: 'core_reading_c',
  corrected: 'corrected_later',
} as const;

export const lossColumns = {
  day: 'day',
  place: 'place',
  crop: 'crop',
  amount: 'amount',
  unit: 'unit',
  ofAmount: 'of_amount',
  ofUnit: 'of_unit',
  share: 'share_0_to_1',
  kg: 'kg',
  money: 'money',
  look: 'what_it_looked_like',
  batch: 'batch',
  lot: 'lot',
  state: 'state',
  by: 'by',
  enteredAt: 'entered_at',
  note: 'note',
  photo: 'photo',
} as const;
