import { type Atoms, dryAir, massOf, type Moles } from './species.ts';

/** A hydrocarbon, by the atoms in a mean molecule. */
interface Fuel {
  readonly carbon: number;
  readonly hydrogen: number;
  /** kg/mol */
  readonly molarMass: number;
}

/** Moist air and fuel vapor, unburned, per kilogram of the whole. */
export interface FreshCharge {
  /** Moles of the gases but for the fuel. */
  readonly air: Moles;
  /** Moles of fuel. */
  readonly fuel: number;
  readonly atoms: Atoms;
  /** kg of fuel to one of dry air */
  readonly fuelRatio: number;
  /** kg of dry air in one of the whole */
  readonly airShare: number;
}

/**
 * The charge before it burns.
 *
 * @param fuel what the air carries
 * @param equivalenceRatio fuel over what the air's oxygen can burn
 * @param waterRatio kg of vapor to one of dry air
 */
export function freshCharge(fuel: Fuel, equivalenceRatio: number, waterRatio: number): FreshCharge {
  const none: Atoms = { C: 0, H: 0, O: 0, N: 0, Ar: 0 };
  const { O2: oxygen, Ar: argon, N2: nitrogen } = dryAir;
  const airMass = massOf({ ...none, O: 2 * oxygen, N: 2 * nitrogen, Ar: argon }); // kg, of one mole

  const fuelMoles = (equivalenceRatio * oxygen) / (fuel.carbon + fuel.hydrogen / 4);
  const fuelRatio = (fuelMoles * fuel.molarMass) / airMass;
  const waterMoles = (waterRatio * airMass) / massOf({ ...none, H: 2, O: 1 });
  const perKilogram = 1 / (airMass * (1 + fuelRatio + waterRatio));

  const gases = {
    N2: nitrogen,
    O2: oxygen,
    Ar: argon,
    CO2: 0,
    H2O: waterMoles,
    CO: 0,
    H2: 0,
    OH: 0,
    O: 0,
    H: 0,
    NO: 0,
  };
  const air = Object.fromEntries(Object.entries(gases).map(([name, n]) => [name, n * perKilogram])) as Moles;
  const fuelPerKilogram = fuelMoles * perKilogram;
  return {
    air,
    fuel: fuelPerKilogram,
    atoms: {
      C: fuelPerKilogram * fuel.carbon,
      H: fuelPerKilogram * fuel.hydrogen + 2 * air.H2O,
      O: 2 * air.O2 + air.H2O,
      N: 2 * air.N2,
      Ar: air.Ar,
    },
    fuelRatio,
    airShare: 1 / (1 + fuelRatio + waterRatio),
  };
}
