import { action } from '../../src/graph/chapter.ts';
import { Impossible } from '../../src/graph/state.ts';
import { tidy } from '../../src/units/unit.ts';
import {
  burnFactor,
  fittedFactor,
  flowFactor,
  frictionFactor,
  heatFactor,
  lossFactor,
  measuredTorque,
} from './inputs.ts';
import { peakTorque } from './peak-torque.ts';

const factors = { flow: flowFactor, burn: burnFactor, heat: heatFactor, friction: frictionFactor, loss: lossFactor };
const isFactor = (id: string): id is keyof typeof factors => Object.hasOwn(factors, id);

/** The factor a choice names. */
function factorOf(id: string): (typeof factors)[keyof typeof factors] {
  if (!isFactor(id)) throw new Impossible(['Choose what to scale.'], 'fittedFactor');
  return factors[id];
}

/** Scales one assumption until the peak of the curve is the measured one. */
export const fit = action({
  id: 'fit-factor',
  label: 'Fit to the measured peak',
  did: 'Fitted to the measured peak',
  note: 'Scales what is chosen until the peak of the curve is the one measured. The figure is right for this engine at its peak, not elsewhere and not for others.',
  group: 'What the model assumes',
  from: { fittedFactor, measuredTorque },
  solves: ({ fittedFactor, measuredTorque }) => {
    if (measuredTorque === null) throw new Impossible(['Give the measured peak first.'], 'measuredTorque');
    const vary = factorOf(fittedFactor);
    return { vary, read: peakTorque, target: measuredTorque, range: vary.slider! };
  },
  sets: ({ fittedFactor }, found) => [[factorOf(fittedFactor), tidy(Number(found.toFixed(4)))]],
});
