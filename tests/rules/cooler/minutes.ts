import fc from 'fast-check';
import { instant, MINUTE } from '../../../rules/units.ts';

/** Readings by the minute of their time. */
export const series = (points: readonly (readonly [minute: number, value: number])[]) =>
  points.map(([minute, value]) => ({ t: instant(minute * MINUTE), value }));
/** Up to 40 readings, 1 to 90 minutes apart. */
export const anySeries = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.double({ min: -5, max: 20, noNaN: true })), {
    maxLength: 40,
  })
  .map((steps) => {
    let minute = 0;
    return series(
      steps.map(([step, value]) => {
        minute += step;
        return [minute, value] as const;
      }),
    );
  });
