// The part of psychrolib that tests hold rules/air against; the package brings no types.
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** °C to Pa; over ice below 0.01 °C */
    GetSatVapPres(air: number): number;
    /** °C, 0..1 */
    GetTDewPointFromRelHum(air: number, humidity: number): number;
    /** °C, 0..1, Pa */
    GetTWetBulbFromRelHum(air: number, humidity: number, pressure: number): number;
    /** °C, 0..1, Pa to kg/kg */
    GetHumRatioFromRelHum(air: number, humidity: number, pressure: number): number;
  };
  export = psychrolib;
}
