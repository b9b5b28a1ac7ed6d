// The doors of the physics room: build a model of an enclosure, solve it at rest, run it through a day.
export { type DayOptions, simulateDay } from './day.ts';
export { type BoxGeometry, type BoxModel, boxGeometry, buildModel, modelFrom } from './model.ts';
export { bestParameters, type ParameterName, type Parameters, parameterNames } from './parameters.ts';
export { type SettledBox, type SteadyConditions, settleBox, solveSteady } from './steady.ts';
