/** 0 C in kelvin. */
export const zeroCelsius = 273.15;

/** Specific gas constant of dry air, J/(kg K), of the standard atmosphere (ISO 2533: 8.31432 / 0.0289644). */
export const dryAirGasConstant = 287.05287;

/** Molar mass of water over that of dry air (ASHRAE Fundamentals 2017, ch. 1, eq. 20). */
export const waterToDryAir = 0.621945;

/** Conventional inch of mercury, Pa (NIST SP 811, App. B: 25.4 conventional millimeters of mercury). */
export const inchOfMercury = 25.4 * 133.322387415;
