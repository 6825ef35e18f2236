import { expect } from 'vitest';
import type { RoomHabits, Span } from '../../../rules/cooler/index.ts';
import { decide, type PlaceNow } from '../../../rules/decide/index.ts';
import { celsius, minutes } from '../../../rules/units.ts';
import { at, type Course, coolRoom, outside, snapshot, spot } from './makeSnapshot.ts';

// One cool room on a day of 20 °C outside, looked at once.

export const now = at('2025-09-10T14:00');
const warmDay = outside(spot(now, { spot: 'air', temperature: 20, humidity: 60 }));

const told3 = { setPoint: celsius(3), limit: celsius(5), value: 600 };

type Setting = {
  readonly air?: Course;
  readonly power?: Course;
  readonly door?: Course;
  readonly product?: Course;
  readonly every?: number;
  /** What the farm file says instead. */
  readonly told?: number;
  readonly silent?: number;
  readonly hours?: number;
  readonly out?: PlaceNow | null;
  readonly standing?: string[];
  readonly habits?: RoomHabits;
  readonly supply?: readonly Span[];
};

export function lookAtRoom({ air = 3, out = warmDay, standing = [], told, ...more }: Setting) {
  const { power, door, product, habits, supply, ...rest } = more;
  const spots = [
    spot(now, { spot: 'air', temperature: air, ...rest }),
    ...(power === undefined ? [] : [spot(now, { spot: 'unit', power, ...rest })]),
    ...(door === undefined ? [] : [spot(now, { spot: 'air', probe: 'd', door, ...rest })]),
    ...(product === undefined
      ? []
      : [spot(now, { spot: 'product', temperature: product, ...rest })]),
  ];
  const asTold = spots.map((each) =>
    told === undefined ? each : { ...each, every: minutes(told) },
  );
  const kept = { ...told3, ...(habits && { habits }), ...(supply && { supply }) };
  const places = [coolRoom({ spots: asTold, coolRoom: kept }), ...(out === null ? [] : [out])];
  const outlook = decide(snapshot(now, { places, standing }));
  expect(outlook.failures).toEqual([]);
  const [room] = outlook.coolRooms;
  if (room === undefined) throw new Error('Expected a cool room, got none');
  const said = (kind: string) => {
    const found = outlook.decisions.find((d) => d.kind === kind);
    if (found === undefined) throw new Error(`Expected a decision on ${kind}, got none`);
    return found;
  };
  const acts = outlook.decisions.filter((d) => d.verdict === 'act').map(({ kind }) => kind);
  return { room, said, acts };
}
