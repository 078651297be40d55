// The package ships no types; these are the calls the tests use, in its SI mode (degrees Celsius, Pa).
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(dryBulb: number): number;
    GetTDewPointFromVapPres(dryBulb: number, vaporPressure: number): number;
    GetHumRatioFromVapPres(vaporPressure: number, pressure: number): number;
    GetVapPresFromHumRatio(ratio: number, pressure: number): number;
    GetHumRatioFromTWetBulb(dryBulb: number, wetBulb: number, pressure: number): number;
    GetTWetBulbFromHumRatio(dryBulb: number, ratio: number, pressure: number): number;
    GetMoistAirDensity(dryBulb: number, ratio: number, pressure: number): number;
    GetStandardAtmPressure(altitude: number): number;
    GetStandardAtmTemperature(altitude: number): number;
    GetSeaLevelPressure(station: number, altitude: number, dryBulb: number): number;
    GetStationPressure(seaLevel: number, altitude: number, dryBulb: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
