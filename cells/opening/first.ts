import { compile } from '../../src/graph/compile.ts';
import { displacement } from '../block/displacement.ts';
import { crankingPressure } from '../compression/cranking-pressure.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { staticRatio } from '../chamber/static-ratio.ts';
import { opening } from './opening.ts';

/**
 * The few cells that the first screen shows, with all they stand on: what can be shown before the rest is loaded. No
 * chapters yet.
 */
export const first = {
  cells: compile([
    ...opening.fields,
    opening.here,
    opening.low,
    ...Object.values(opening.plate.from),
    displacement,
    staticRatio,
    dynamicRatio,
    crankingPressure,
  ]).byId,
  chapters: [],
  opening,
};
