import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { root } from '../../../src/numerics/root.ts';
import { Cylinder } from '../../../src/physics/cycle/cylinder.ts';
import { freshCharge } from '../../../src/physics/cycle/gas/fresh.ts';
import { gasolineVaporEnthalpy } from '../../../src/physics/cycle/gas/gasoline-vapor.ts';
import { enthalpy, total } from '../../../src/physics/cycle/gas/molar.ts';
import { molarGasConstant } from '../../../src/physics/cycle/gas/species.ts';
import { gasoline, gasTables } from '../../../src/physics/cycle/gas/tables.ts';
import { closedCycle, ordinary, volumeAt } from './closed-cylinder.ts';

const tables = gasTables(1.12, 0.008);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const filled = (p: number, T: number, burnt: number, V: number): Cylinder => {
  const cylinder = new Cylinder(tables);
  cylinder.fill(p, T, burnt, V);
  return cylinder;
};

describe('Cylinder', () => {
  it('finds the temperature and pressure it was filled with, from wherever it starts to look', () =>
    fc.assert(
      fc.property(number(250, 3300), number(200, 3500), number(0.2, 150), number(0, 1), (T, start, bar, burnt) => {
        const cylinder = filled(bar * 1e5, T, burnt, 3e-4);
        cylinder.T = start;
        cylinder.state();
        expect(Math.abs(cylinder.T - T)).toBeLessThan(0.02); // at 3200 K and 2 bar; it asks for 1e-4 a pass
        expect(Math.abs(cylinder.p / (bar * 1e5) - 1)).toBeLessThan(1e-5);
        cylinder.state(); // once more from next to the answer
        expect(Math.abs(cylinder.T - T)).toBeLessThan(1e-3);
        expect(cylinder.floors).toBe(0);
      }),
      { numRuns: 1000 },
    ));

  it('burns at constant energy: mass and energy stay exactly, temperature and pressure rise', () => {
    const cylinder = filled(18e5, 700, 0.05, 6e-5);
    const { m, U } = cylinder;
    cylinder.burnt = 1;
    cylinder.state();
    expect(cylinder.m).toBe(m);
    expect(cylinder.U).toBe(U);
    expect(cylinder.T).toBeGreaterThan(2500);
    expect(cylinder.p / 18e5).toBeGreaterThan(3.5);
  });

  it('burned at once at ratio 8 from 350 K and 1 atm comes within 1 % of the 2886 K and 7.2 MPa of isooctane', () => {
    // another equilibrium program on NASA TM-4513, 1993; stoichiometric, no residual
    const cylinder = new Cylinder(gasTables(1, 0));
    cylinder.fill(101_325, 350, 0, 1);
    for (let i = 1; i <= 1000; i++) {
      cylinder.expand(8 ** (-i / 1000));
      cylinder.state();
    }
    cylinder.burnt = 1;
    cylinder.state();
    expect(Math.abs(cylinder.T / 2886 - 1)).toBeLessThan(0.01); // gasoline, with less hydrogen, burns some 20 K hotter
    expect(Math.abs(cylinder.p / 7.2e6 - 1)).toBeLessThan(0.01);
  });

  it('loses as energy exactly what it does as work, and gains what flows in, to rounding', () =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number(0.9, 1.1), number(-0.05, 0.08), number(0, 1)), { maxLength: 60 }),
        (acts) => {
          const cylinder = filled(1.2e5, 420, 0.1, 4e-4);
          const [mass, energy] = [cylinder.m, cylinder.U];
          let [m, U, burnt] = [0, 0, 0];
          for (const [stretch, share, comes] of acts) {
            U -= cylinder.expand(cylinder.V * stretch);
            const dm = share * cylinder.m;
            const composition = dm > 0 ? comes : cylinder.burnt;
            const h = dm > 0 ? -2e5 : cylinder.enthalpy();
            burnt += dm * composition;
            cylinder.add(dm, composition, h);
            U += dm * h;
            m += dm;
            cylinder.state();
          }
          expect(Math.abs(cylinder.m - mass - m)).toBeLessThan(1e-12 * mass);
          expect(Math.abs(cylinder.U - energy - U)).toBeLessThan(1e-12 * (Math.abs(energy) + 1e3));
          expect(Math.abs(cylinder.m * cylinder.burnt - 0.1 * mass - burnt)).toBeLessThan(1e-12 * mass);
        },
      ),
    ));

  it('compressed without heat in steps of a degree comes within 0.05 % of the isentrope’s pressure', () => {
    // the judge integrates cv/T of the gases themselves, no table, until it balances R ln of the volumes
    const { peak } = closedCycle({ ...ordinary, residual: 0, spark: null, walls: false });
    const charge = freshCharge(gasoline, ordinary.equivalenceRatio, 0.008);
    const R = molarGasConstant * (total(charge.air) + charge.fuel);
    const energy = (T: number): number => enthalpy(charge.air, T) + charge.fuel * gasolineVaporEnthalpy(T) - R * T;
    const volumes = volumeAt(ordinary.ratio, -120) / volumeAt(ordinary.ratio, 0);
    const excess = (T: number): number => {
      const n = 2000;
      const step = (T - ordinary.temperature) / n;
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const low = ordinary.temperature + i * step;
        sum += (energy(low + step) - energy(low)) / (low + step / 2);
      }
      return sum - R * Math.log(volumes);
    };
    const T = root(excess, 500, 1000, 1e-9)!;
    expect(Math.abs(peak / (1e5 * volumes * (T / ordinary.temperature)) - 1)).toBeLessThan(5e-4);
  });

  it('gives back what compression of burned, dissociating gas took, and is as it was', () => {
    const cylinder = filled(30e5, 2500, 1, 1e-4);
    let work = 0;
    for (let i = 1; i <= 500; i++) {
      work += cylinder.expand(1e-4 * 4 ** (i / 500));
      cylinder.state();
    }
    const out = work;
    for (let i = 499; i >= 0; i--) {
      work += cylinder.expand(1e-4 * 4 ** (i / 500));
      cylinder.state();
    }
    expect(Math.abs(work / out)).toBeLessThan(1e-4);
    expect(Math.abs(cylinder.T - 2500)).toBeLessThan(0.1);
  });

  it('counts it when no temperature fits its energy, and stays a number', () => {
    const cylinder = filled(1e5, 300, 0, 4e-4);
    cylinder.U -= 1e6 * cylinder.m;
    cylinder.state();
    expect(cylinder.floors).toBe(1);
    expect(cylinder.T).toBe(100);
    expect(cylinder.p).toBeGreaterThan(0);
    cylinder.U = NaN;
    cylinder.state();
    expect(cylinder.floors).toBe(2);
    expect(cylinder.T).toBe(100);
  });

  it('keeps the enthalpy of what leaves with its own state: energy over mass and R T', () => {
    const cylinder = filled(4e5, 1100, 1, 4e-4);
    expect(cylinder.enthalpy()).toBeCloseTo(cylinder.U / cylinder.m + cylinder.R * 1100, 6);
  });
});
