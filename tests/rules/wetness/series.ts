import fc from 'fast-check';
import { celsius, HOUR, instant, percent } from '../../../rules/units.ts';
import type { WetReading } from '../../../rules/wetness/index.ts';

export const rule = { at: 90, below: 87, mergeGapHours: 4 };

/** The instant so many hours into the series. */
export const at = (hour: number) => instant(1_750_000_000_000 + hour * HOUR);

export const reading = (hour: number, temperature: number, humidity: number): WetReading => ({
  t: at(hour),
  temperature: celsius(temperature),
  humidity: percent(humidity),
});

export const hourly = (humidities: readonly number[], temperatures: readonly number[] = []) =>
  humidities.map((humidity, hour) => reading(hour, temperatures[hour] ?? 15, humidity));

/** Some days of readings at unequal steps, with gaps. */
export const anySeries: fc.Arbitrary<WetReading[]> = fc
  .array(
    fc.record({
      step: fc.oneof(
        { weight: 8, arbitrary: fc.constant(1) },
        { weight: 1, arbitrary: fc.integer({ min: 2, max: 9 }) },
        { weight: 1, arbitrary: fc.constant(0.25) },
      ),
      humidity: fc.double({ min: 60, max: 100, noNaN: true }),
      temperature: fc.double({ min: -5, max: 35, noNaN: true }),
    }),
    { maxLength: 60 },
  )
  .map((steps) => {
    let hour = 0;
    return steps.map(({ step, humidity, temperature }) => {
      hour += step;
      return reading(hour, temperature, humidity);
    });
  });
