import { HOUR, MINUTE, type SmallHub } from './smallFarm.ts';

/** An invented farm with a patch that has a probe in the open, and one beneath its cloches. */
export const frostFarm = ({ patch = '', probes = '' } = {}) => `
farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: outside, name: Outside, kind: outdoor }
  - { id: south-patch, name: South patch, kind: patch, crop: strawberry, covers: cloches, cover: { minutes: 35, value: 900, damage: -1.1 }${patch} }
probes:
  - { id: mast, place: outside, spot: air, every: 20m }
  - { id: flower, place: south-patch, spot: canopy, every: 20m }
  - { id: cloche, place: south-patch, spot: under-cover, every: 20m }
${probes}
crops:
  - { id: strawberry, base: 3, price: 8 }
`;

const DAY = 24 * HOUR;
/** How cold one night is: as nights are, warmer and colder by turns, without a table. */
const coldOf = (t: number) => {
  const night = Math.floor((t - 12 * HOUR) / DAY); // from noon to noon
  return ((night * 7) % 11) - 5;
};

/** An autumn's readings each twenty minutes: cooling from the afternoon to the morning. */
export function temperatureAt(t: number): number {
  const since = (((t - 15 * HOUR) % DAY) + DAY) % DAY; // ms after 15:00 UTC
  const day = 16 + 0.2 * coldOf(t);
  const fall = 17 + 0.8 * coldOf(t);
  const cooling = since < 15 * HOUR ? Math.sqrt(since / (15 * HOUR)) : (DAY - since) / (9 * HOUR);
  return Math.round((day - fall * cooling) * 100) / 100;
}

/** Lets time go by from `from` to `to`: readings each twenty minutes, a look each hour. */
export function nightsGoBy(
  { clock, core }: Pick<SmallHub, 'clock' | 'core'>,
  from: number,
  to: number,
  { onHour = () => {}, shift = 0 }: { onHour?: (t: number) => void; shift?: number } = {},
) {
  for (let t = from; t <= to; t += 20 * MINUTE) {
    clock.set(t);
    const temperature = temperatureAt(t + shift);
    const read = (probe: string, quantity: 'temperature' | 'humidity', value: number) => ({
      ...{ probe, quantity, t, value },
    });
    const batch = [
      read('mast', 'temperature', temperature),
      read('mast', 'humidity', 70 + ((t / (20 * MINUTE)) % 7)),
      read('flower', 'temperature', temperature - 1),
      read('cloche', 'temperature', temperature + 0.5),
    ];
    core.intake.receiveReadings(batch, t, (error) => {
      if (error) throw error;
    });
    core.intake.flush();
    if (t % HOUR !== 0) continue;
    onHour(t);
    core.look();
  }
}
