import { cycleEngine } from '../../src/physics/cycle/engine.ts';
import { rangeEffects } from '../../src/physics/cycle/range-effects.ts';
import { EngineRun } from '../../src/physics/cycle/speed.ts';
import { bring } from './cycle.ts';

// Heavy, and of no use to the page itself: imported by workers and by the command.
bring({ cycleEngine, EngineRun, rangeEffects });
