/** What a maker's data sheet says of a kind of probe. */
export type SensorKind = {
  readonly quantity: 'temperature' | 'humidity';
  readonly least: number;
  readonly most: number;
  readonly unit: '°C' | '%';
  /** Typical error; `most` where the sheet gives one. */
  readonly error: { readonly typical: number; readonly most: number | null };
  /** Least time between readings, s; null where the sheet sets none. */
  readonly everySeconds: number | null;
  readonly source: string;
};

const kind = (
  quantity: SensorKind['quantity'],
  [least, most]: readonly [number, number],
  typical: number,
  source: string,
  worst: number | null = null,
  everySeconds: number | null = null,
): SensorKind => ({
  quantity,
  least,
  most,
  unit: quantity === 'temperature' ? '°C' : '%',
  error: { typical, most: worst },
  everySeconds,
  source,
});

/** Ranges outside which a reading of that kind cannot be. */
export const sensorKinds = {
  // ± 0.5 °C from -10 to 85 °C; more beyond.
  ds18b20: kind('temperature', [-55, 125], 0.5, 'Maxim DS18B20 data sheet'),
  sht31: kind('humidity', [0, 100], 2, 'Sensirion SHT3x-DIS data sheet; 63 % response in 8 s'),
  sht30: kind('humidity', [0, 100], 3, 'Sensirion SHT3x-DIS data sheet'),
  dht22: kind('temperature', [-40, 80], 0.5, 'Aosong DHT22 data sheet', null, 2),
  dht22Humidity: kind('humidity', [0, 100], 2, 'Aosong DHT22 data sheet', 5, 2),
} as const satisfies Readonly<Record<string, SensorKind>>;
