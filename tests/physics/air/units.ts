// Written out here rather than taken from src/units, so that a slip there cannot hide one in the physics.

export const kelvin = (celsius: number): number => celsius + 273.15;
export const celsius = (kelvins: number): number => kelvins - 273.15;
export const kelvinFromFahrenheit = (fahrenheit: number): number => (fahrenheit + 459.67) / 1.8;

export const inHg = 3386.389; // Pa, conventional (NIST SP 811, App. B)
export const mmHg = 133.3224; // Pa, conventional (NIST SP 811, App. B)
export const psi = 6894.757; // Pa (NIST SP 811, App. B)
export const foot = 0.3048; // m, exact
export const cubicInch = 1.6387064e-5; // m3, exact
export const poundFoot = 1.355818; // N m (NIST SP 811, App. B)
