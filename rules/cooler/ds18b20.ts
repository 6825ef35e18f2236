import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { expectCount } from '../statistics/index.ts';
import { type Celsius, celsius } from '../units.ts';

const STEPS = 16; // per °C at 12 bits
const WORD = 0x10000;
const SIGN = 0x8000;
const FASTEST = 93.75; // ms at 9 bits; each bit more doubles it
const COARSEST = 0.5; // °C at 9 bits; each bit more halves it

/** The value its register holds after power-on, before any conversion, °C. */
export const POWER_ON = celsius(85);

/**
 * Temperature of a DS18B20 from its raw 16-bit word: two's complement in sixteenths of a degree.
 * 85 may be a power-on value and 127.9375 a starved probe; see readingFlags.
 * Source: Maxim DS18B20 data sheet, temperature register format.
 * @throws RangeError unless raw is a whole number from 0 to 65,535
 */
export const ds18b20 = orUnknown(function ds18b20(raw: number): Celsius {
  expectCount('raw word', raw, 0, WORD - 1);
  return celsius((raw >= SIGN ? raw - WORD : raw) / STEPS);
});

/**
 * How long a DS18B20 takes to convert, ms, and how fine its steps are, °C.
 * Source: Maxim DS18B20 data sheet, table of resolution.
 * @throws RangeError unless bits is a whole number from 9 to 12
 */
export const ds18b20Conversion = orUnknown(function ds18b20Conversion(bits: number): {
  readonly milliseconds: number;
  readonly step: number;
} {
  expectCount('bits', bits, 9, 12);
  return { milliseconds: FASTEST * 2 ** (bits - 9), step: COARSEST / 2 ** (bits - 9) };
});

/**
 * Whether 85 °C is a power-on value and has to be thrown away: exactly 85, and either the first
 * since a restart or more than 5 K from the last good value. Read again after 750 ms.
 * Source: Maxim DS18B20 data sheet for the value; 5 K from memory.
 * @param lastGood °C; null when there is none, which is as after a restart
 * @throws RangeError for a value outside -300..300 °C
 */
export function isPowerOnValue(value: number, lastGood: number | null, first = false): boolean {
  expectRange('temperature', value, -300, 300, '°C');
  const far = lastGood === null || Math.abs(value - lastGood) > POWER_ON_FAR;
  return value === POWER_ON && (first || far);
}

const POWER_ON_FAR = 5; // K
