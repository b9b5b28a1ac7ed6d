// Which physical constants do the formulas share? Leaves out material properties (data/materials.json).

/** Stefan-Boltzmann constant [W/m²K⁴]. Source: CODATA2018. */
export const stefanBoltzmannWPerM2K4 = 5.670374419e-8;
/** Acceleration of free fall at the latitude of central Europe, two decimals [m/s²]; 9.78 at the equator, 9.83 at the poles. */
export const gravityMPerS2 = 9.81;
/** 0 °C on the kelvin scale [K]. */
export const zeroCelsiusK = 273.15;
/** Usual air pressure at sea level [Pa]. */
export const standardPressurePa = 101_325;
/** Gas constant of dry air [J/kgK]. Source: ASHRAE2017 ch. 1. */
export const dryAirGasConstantJPerKgK = 287.042;
/** Gas constant of water vapour [J/kgK]. Source: ASHRAE2017 ch. 1. */
export const vapourGasConstantJPerKgK = 461.524;
/** Molar mass ratio of water and dry air [-]. Source: ASHRAE2017 ch. 1. */
export const waterToAirMassRatio = 0.621945;
/** Specific heat of dry air at room temperature [J/kgK]. Source: INCROPERA tab. A.4 (memory). */
export const airHeatCapacityJPerKgK = 1006;

/** Kelvin from degrees Celsius. */
export const kelvinFromCelsius = (tempC: number): number => tempC + zeroCelsiusK;
