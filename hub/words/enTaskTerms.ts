// What the terms of a task's evidence are called on screen.

/** Labels beside a value: "Leaves wet for", then 6.5 h. */
export const evidenceLabels: Readonly<Record<string, string>> = {
  'above-limit-minutes': 'Over the limit for',
  battery: 'Battery',
  'chance-of-damage': 'Chance of damage tonight',
  'closed-stays-damp': 'Humidity that stays in when closed',
  covers: 'Covers',
  'cycle-bottom-above': 'Bottom of the cooling cycle above the set temperature',
  'damage-after-sunset': 'Damage expected after sunset by',
  'daylight-in': 'Drying light begins in',
  'door-open-minutes': 'Door open for',
  'doubtful-readings': 'Doubtful readings in 24 hours',
  'drop-in-risk': 'Share of the value this is expected to spare',
  'film-not-enough': 'Night colder than the crop bears, by',
  'heard-minutes-ago': 'Last heard before',
  'heat-limit-near': 'Near the heat limit',
  'inside-humidity': 'Humidity inside',
  'inside-temperature': 'Temperature inside',
  'minutes-to-limit': 'Time until the air reaches the limit',
  'night-goes-first': 'The cold of the night goes first',
  'night-needs-warmth': 'Low outside tonight; the house needs its warmth',
  'off-minutes': 'Cooling off for',
  'one-long-rise': 'Warming without a break, now at',
  'open-air': 'Temperature in the open',
  'outside-cooler-by': 'Outside cooler by',
  'outside-damper-by': 'Outside air holds more water, by',
  'outside-drier-by': 'Outside air holds less water, by',
  'outside-freezing': 'Freezing air outside',
  'produce-estimate': 'Middle of a crate, measured or estimated',
  'purge-first': 'Damp that can be let out first',
  'room-air': 'Air in the room',
  'room-power': 'Power drawn',
  'rule-broke': 'A rule broke down',
  'silent-hours': 'Silent for',
  'since-sunrise': 'Time since sunrise',
  'stay-open-dry': 'Mild enough to stay open and dry; low outside',
  'steep-rise': 'Steepest rise of the air',
  'still-too-warm-to-close': 'Still too warm inside to close',
  'stuck-hours': 'Same value for',
  'sunset-in': 'Time to sunset',
  'too-near-sunset': 'Too near sunset to open for drying',
  'tonight-low': 'Tonight’s low',
  'tonight-outside-low': 'Tonight’s low outside',
  'under-cover': 'Temperature under the cover',
  'value-at-risk': 'Loss that covers can prevent; limit is the cost of covering',
  vents: 'Vents',
  'warms-within': 'Time constant of the room',
  'wet-hours': 'Leaves wet for',
};

/** What is missing, as it follows "Cannot say without". */
export const missingLabels: Readonly<Record<string, string>> = {
  'covers-on-or-off': 'knowing whether the covers are on',
  'door-or-room-temperature': 'the door contact or a reading of the room’s air',
  'inside-humidity': 'a humidity reading from inside',
  'inside-temperature': 'a temperature reading from inside',
  'leaf-wetness-history': 'humidity readings of the last hours',
  'night-forecast': 'a forecast for tonight from a probe in the open at this place',
  'outside-humidity': 'a humidity reading from outside',
  'outside-temperature': 'a temperature reading from outside',
  'outside-temperature-earlier': 'an earlier temperature reading from outside',
  'own-nights': 'more nights measured here',
  'probe-last-heard': 'knowing when the probe was last heard or placed',
  'room-power': 'a reading of the power the cooling draws',
  'room-temperature': 'a reading of the room’s air',
  'room-temperature-history': 'more readings of the room’s air',
  'rule-broke': 'a rule that broke down',
  'sun-times': 'a sunrise and a sunset, which this latitude does not have today',
  'tonight-outside-low': 'a forecast of tonight’s low outside',
};

// A term without a label is a fault of ours; shown as plain words it still tells more than a hole.
const plain = (term: string) => term.replaceAll('-', ' ');

export const evidenceLabel = (what: string): string => evidenceLabels[what] ?? plain(what);
export const missingLabel = (term: string): string => missingLabels[term] ?? plain(term);
