// The part of the psychrolib package that the check uses; the package brings no types.
declare module 'psychrolib' {
  interface OtherProgram {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(tempC: number): number;
    GetHumRatioFromRelHum(tempC: number, rhFrac: number, pressurePa: number): number;
    GetTDewPointFromRelHum(tempC: number, rhFrac: number): number;
    GetTWetBulbFromRelHum(tempC: number, rhFrac: number, pressurePa: number): number;
    GetMoistAirEnthalpy(tempC: number, ratio: number): number;
    GetMoistAirVolume(tempC: number, ratio: number, pressurePa: number): number;
    GetMoistAirDensity(tempC: number, ratio: number, pressurePa: number): number;
  }
  const program: OtherProgram;
  export = program;
}
