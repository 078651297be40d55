import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crankingGaugePressure, dynamicRatio } from '../../src/physics/compression.ts';
import { linkage, pistonDrop } from '../../src/physics/linkage.ts';
import { compressionRatio, cylinderVolume } from '../../src/physics/volumes.ts';
import { WalkedPiston } from './walked-piston.ts';

const deg = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyEngine = fc.record({
  bore: between(0.06, 0.12),
  stroke: between(0.05, 0.12),
  ratio: between(1.3, 2.2),
  offset: between(-0.002, 0.002),
  clearance: between(30e-6, 120e-6),
  closing: between(0, 100 * deg),
});
type Engine = typeof anyEngine extends fc.Arbitrary<infer E> ? E : never;

const ours = ({ bore, stroke, ratio, offset, clearance, closing }: Engine): number => {
  const l = linkage(stroke, ratio * stroke, offset);
  return dynamicRatio(clearance + cylinderVolume(bore, pistonDrop(l, closing - Math.PI)), clearance);
};

/** The volume at the bottom, less what a walk up to the closing sweeps; with the wheel's zero at the true top. */
const walked = ({ bore, stroke, ratio, offset, clearance, closing }: Engine): number => {
  const crank = new WalkedPiston(stroke / 2, ratio * stroke, -offset);
  const top = crank.deadCenter(0);
  const bottom = crank.deadCenter(-Math.PI);
  const travel = crank.height(top) - crank.height(bottom);
  const left = travel - crank.climbed(bottom, top - Math.PI + closing);
  return (clearance + (Math.PI * bore * bore * left) / 4) / clearance;
};

describe('dynamicRatio', () => {
  it('agrees with a piston walked up from the bottom on a drawn crank, pin offset and all', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        expect(Math.abs(ours(engine) / walked(engine) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('reads the wheel from the true top, so an offset pin shifts the answer by what the drawn crank says', () => {
    const engine = { bore: 0.1, stroke: 0.09, ratio: 1.6, clearance: 80e-6, closing: 65 * deg };
    const shift = ours({ ...engine, offset: 0.0015 }) - ours({ ...engine, offset: -0.0015 });
    expect(Math.abs(shift)).toBeGreaterThan(0.01);
    expect(shift).toBeCloseTo(walked({ ...engine, offset: 0.0015 }) - walked({ ...engine, offset: -0.0015 }), 9);
  });

  it('never exceeds the static ratio, and equals it when the intake closes at the true bottom', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        const l = linkage(engine.stroke, engine.ratio * engine.stroke, engine.offset);
        const fixed = compressionRatio(cylinderVolume(engine.bore, l.travel), engine.clearance);
        expect(ours(engine)).toBeLessThanOrEqual(fixed * (1 + 1e-14));
        expect(ours({ ...engine, closing: l.bottomAngle - Math.PI })).toBeCloseTo(fixed, 10);
      }),
    );
  });

  it('falls as the intake closes later', () => {
    fc.assert(
      fc.property(anyEngine, between(1 * deg, 20 * deg), (engine, later) => {
        // Started past the mark: with an offset pin the true bottom lies slightly off it.
        const closing = engine.closing + 3 * deg;
        expect(ours({ ...engine, closing: closing + later })).toBeLessThan(ours({ ...engine, closing }));
      }),
    );
  });

  it('refuses a chamber without volume', () => {
    expect(() => dynamicRatio(1, 0)).toThrow('No volume is left above the piston at top dead center.');
    expect(() => dynamicRatio(1, NaN)).toThrow(RangeError);
  });
});

describe('crankingGaugePressure', () => {
  it('is nothing without compression and follows the air outside', () => {
    expect(crankingGaugePressure(95e3, 1, 1.25)).toBe(0);
    expect(crankingGaugePressure(50e3, 8, 1.25)).toBeCloseTo(crankingGaugePressure(100e3, 8, 1.25) / 2, 6);
  });

  it("is Boyle's law at an exponent of one", () => expect(crankingGaugePressure(100e3, 8, 1)).toBeCloseTo(700e3, 6));
});
