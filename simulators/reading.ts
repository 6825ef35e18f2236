// The names every probe uses on the wire.
export type Quantity =
  | 'temperature'
  | 'humidity'
  | 'soil-moisture'
  | 'soil-temperature'
  | 'light'
  | 'rain'
  | 'wind'
  | 'power'
  | 'energy'
  | 'door'
  | 'battery';

/** °C, %RH, %, lx, mm since the last report, m/s, W, kWh, 0 or 1, % or V. */
export type Reading = {
  readonly probe: string;
  readonly quantity: Quantity;
  /** ms since 1970, by the probe's own clock. */
  readonly t: number;
  readonly value: number;
};
