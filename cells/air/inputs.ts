import { input } from '../../src/graph/cell.ts';
import { choice, optional, scalar } from '../../src/graph/kind.ts';
import { airPressure, altitude as height, temperature, torque, wholeShare } from '../../src/units/quantity.ts';
import { fahrenheit, foot, inchOfMercury, poundFoot, si } from '../../src/units/unit.ts';

export const pressureEntry = input({
  id: 'pressureEntry',
  label: 'The barometer figure is',
  short: 'Pressure is',
  note: 'What the air really weighs here, an airfield’s altimeter setting, a weather report taken to sea level, or nothing but the altitude.',
  kind: choice([
    { id: 'station', label: 'Read here' },
    { id: 'altimeter', label: 'Altimeter setting' },
    { id: 'seaLevel', label: 'Weather report' },
    { id: 'standard', label: 'Standard' },
  ]),
  initial: 'station',
});

export const barometer = input({
  id: 'barometer',
  label: 'Barometer',
  note: 'As the line above says it was taken.',
  kind: scalar(airPressure),
  initial: si(29.2, inchOfMercury),
  hard: [si(5, inchOfMercury), si(35, inchOfMercury)],
  slider: [si(22, inchOfMercury), si(31, inchOfMercury)],
});

export const altitude = input({
  id: 'altitude',
  label: 'Altitude here',
  short: 'Altitude',
  note: 'Height above the sea.',
  kind: scalar(height),
  initial: si(650, foot),
  hard: [si(-2000, foot), si(30_000, foot)],
  slider: [0, si(10_000, foot)],
});

export const airTemperature = input({
  id: 'airTemperature',
  label: 'Air temperature',
  note: 'Where the engine breathes, not in the shade outside.',
  kind: scalar(temperature),
  initial: si(85, fahrenheit),
  hard: [si(-60, fahrenheit), si(200, fahrenheit)],
  trust: [288.15, 308.15],
  slider: [si(20, fahrenheit), si(120, fahrenheit)],
});

export const humidityEntry = input({
  id: 'humidityEntry',
  label: 'Humidity is given as',
  short: 'Humidity as',
  note: 'Any of the three tells how much of the pressure is only water.',
  kind: choice([
    { id: 'relative', label: 'Relative' },
    { id: 'dewPoint', label: 'Dew point' },
    { id: 'wetBulb', label: 'Wet bulb' },
  ]),
  initial: 'relative',
});

export const relativeHumidity = input({
  id: 'relativeHumidity',
  label: 'Relative humidity',
  note: 'At the air temperature above.',
  kind: scalar(wholeShare),
  initial: 0.45,
  hard: [0, 1],
  slider: [0, 1],
});

export const dewPoint = input({
  id: 'dewPoint',
  label: 'Dew point',
  note: 'The temperature at which this air would begin to drip.',
  kind: scalar(temperature),
  initial: si(61, fahrenheit),
  hard: [si(-100, fahrenheit), si(200, fahrenheit)],
  slider: [si(0, fahrenheit), si(90, fahrenheit)],
});

export const wetBulb = input({
  id: 'wetBulb',
  label: 'Wet bulb temperature',
  short: 'Wet bulb',
  note: 'A thermometer in a wet sock, swung in the air.',
  kind: scalar(temperature),
  initial: si(69, fahrenheit),
  hard: [si(-60, fahrenheit), si(200, fahrenheit)],
  slider: [si(20, fahrenheit), si(95, fahrenheit)],
});

export const brakeTorque = input({
  id: 'brakeTorque',
  label: 'Brake torque as read',
  note: 'From the dyno, before any correction: the measured-friction factor needs it.',
  kind: optional(scalar(torque)),
  initial: null,
  hard: [si(0.1, poundFoot), si(5000, poundFoot)],
  slider: [si(50, poundFoot), si(600, poundFoot)],
});

export const frictionTorque = input({
  id: 'frictionTorque',
  label: 'Friction torque, measured',
  note: 'Torque it takes to turn the warm engine without firing, at the same speed.',
  kind: optional(scalar(torque)),
  initial: null,
  hard: [0, si(2000, poundFoot)],
  slider: [0, si(150, poundFoot)],
});
