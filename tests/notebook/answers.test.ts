import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answersOf, whatChanged } from '../../src/notebook/answers.ts';
import type { Document } from '../../src/notebook/document.ts';
import { restore } from '../../src/notebook/restore.ts';
import { catalogue, example, opened, quick, scenario, scenarios } from './notebooks.ts';

const sent = (document: Document): Document => ({ ...document, answers: answersOf(opened(document), '0.1.0') });
const changes = (document: Document, release = '0.1.0'): readonly string[] => whatChanged(catalogue, document, release);
/** What arrives, had the sender seen something else. */
const saw = (values: Record<string, number | string>): Document => {
  const document = sent(example);
  return { ...document, answers: { ...document.answers!, values: { ...document.answers!.values, ...values } } };
};

describe('the answers that travel', () => {
  it('are those of the pins, in SI or in a word', () =>
    expect(sent(example).answers).toEqual({
      release: '0.1.0',
      values: {
        displacement: 0.00603772,
        staticRatio: 9.53826,
        dynamicRatio: 7.84185,
        crankingPressure: 1198720,
        fuelVerdict: 'borderline',
      },
    }));
  it('are of the variant one looks at, and leave out what has no answer', () => {
    const { answers } = sent({ ...scenario('two-cams'), chosen: 'late' });
    expect(answers!.values.fuelVerdict).toBe('comfortable');
    expect(Object.keys(sent({ ...example, held: {} }).answers!.values)).toEqual(['displacement']);
  });
});

describe('what has changed since', () => {
  it.each(Object.keys(scenarios))('is nothing where nothing has: %s', (name) => {
    const document = sent(scenario(name));
    expect(changes(document)).toEqual([]);
    expect(changes(restore(JSON.parse(JSON.stringify(document)), catalogue, example).document, '9.9.9')).toEqual([]);
  });
  it('is nothing, whatever figure rounds up on its way and down on the page', () => {
    const figures = quick.filter((c) => c.role !== 'input' && c.kind.name === 'scalar').map((c) => c.id);
    fc.assert(
      fc.property(
        fc.constantFrom(...figures),
        fc.integer({ min: 1, max: 2000 }),
        fc.double({ min: -1e-7, max: 1e-7, noNaN: true }),
        (id, n, hair) => {
          const held = { ...example.held, [id]: (n / 200) * (1 + hair) };
          const document = sent({ ...example, held, pins: [id] });
          expect(changes(document)).toEqual([]);
        },
      ),
      { numRuns: 500, seed: 20260708 },
    );
    const document = { ...example, held: { ...example.held, dynamicRatio: 7.844_999_8 } };
    expect(changes(sent(document))).toEqual([]);
  }, 40_000);
  it('is a sentence for each answer, in the reader’s units, and why', () => {
    const document = saw({ dynamicRatio: 7.9, fuelVerdict: 'comfortable', displacement: 0.006 });
    expect(changes(document, '0.2.0')).toEqual([
      'Displacement: the sender saw 366.1 in³, here it is 368.4 in³.',
      'Dynamic compression ratio: the sender saw 7.90, here it is 7.84.',
      'Fuel verdict, here: the sender saw comfortable, here it is borderline.',
      'The sender’s release was 0.1.0, this is 0.2.0: its formulas differ.',
    ]);
    const metric = { ...document, units: { system: 'si', fields: {} } } as const;
    expect(changes(metric, '0.1.0')).toEqual([
      'Displacement: the sender saw 6000 cm³, here it is 6038 cm³.',
      'Dynamic compression ratio: the sender saw 7.90, here it is 7.84.',
      'Fuel verdict, here: the sender saw comfortable, here it is borderline.',
      'The link was changed on its way.',
    ]);
  });
  it('is said too where there is no answer any more', () => {
    const { answers } = sent(example);
    const document: Document = { ...example, held: {}, answers: answers! };
    expect(changes(document).slice(0, -1)).toEqual([
      'Static compression ratio: the sender saw 9.54, here it is no answer.',
      'Dynamic compression ratio: the sender saw 7.84, here it is no answer.',
      'Cranking pressure: the sender saw 174 psi, here it is no answer.',
      'Fuel verdict, here: the sender saw borderline, here it is without an answer.',
    ]);
  });
  it('is nothing where nothing came along, and nothing of what is no figure', () => {
    expect(changes(example)).toEqual([]);
    expect(changes(saw({ fuelGrade: '93', linkage: 1, motoredPressure: 3 }))).toEqual([]);
  });
});
