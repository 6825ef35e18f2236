// A unit is a number that remembers what it measures. The brand exists only for the
// compiler; at run time these are plain numbers and cost nothing.
declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

export type Celsius = Unit<'°C'>;
/** A temperature difference; one kelvin is one degree Celsius of difference. */
export type Kelvin = Unit<'K'>;
export type Percent = Unit<'%'>;
export type Kilopascal = Unit<'kPa'>;
export type GramsPerCubicMetre = Unit<'g/m³'>;
export type Hours = Unit<'h'>;
export type Minutes = Unit<'min'>;
export type DegreeDays = Unit<'°C d'>;
/** 0 to 1. */
export type Probability = Unit<'probability'>;
export type Instant = Unit<'ms since 1970, UTC'>;

export const celsius = (value: number) => value as Celsius;
export const kelvin = (value: number) => value as Kelvin;
export const percent = (value: number) => value as Percent;
export const kilopascal = (value: number) => value as Kilopascal;
export const gramsPerCubicMetre = (value: number) => value as GramsPerCubicMetre;
export const hours = (value: number) => value as Hours;
export const minutes = (value: number) => value as Minutes;
export const degreeDaysOf = (value: number) => value as DegreeDays;
export const probability = (value: number) => value as Probability;
export const instant = (value: number) => value as Instant;

export const MINUTE = 60_000; // ms
export const HOUR = 3_600_000; // ms
