import { Pipe } from '../../../../src/physics/cycle/pipe/pipe.ts';

/** Air as the published shock tubes have it. */
export const gamma = 1.4;
export const R = 287;

type Spec = ConstructorParameters<typeof Pipe>[0];

/** A pipe without friction or heat, of air; what is given overrides that. */
export const smoothPipe = (spec: Partial<Spec> & Pick<Spec, 'cells' | 'length' | 'startArea'>): Pipe =>
  new Pipe({
    endArea: spec.startArea,
    gamma,
    R,
    friction: 0,
    heatFactor: 0,
    wallTemperature: 300,
    lossHeads: 0,
    ...spec,
  });

/** The longest step that is usual. */
export const usualStep = (pipe: Pipe): number => (0.8 * pipe.dx) / pipe.wave;

/** One step with something done at both ends; returns its length in s. */
export function step(pipe: Pipe, ends: (pipe: Pipe) => void, dt = usualStep(pipe)): number {
  pipe.reconstruct(dt);
  ends(pipe);
  pipe.update(dt);
  return dt;
}

/** Walls at both ends. */
export const walls = (pipe: Pipe): void => {
  pipe.start.solve(1e5, 300, 0, 0);
  pipe.end.solve(1e5, 300, 0, 0);
};

/** Temperature after an isentropic change of pressure by a ratio, K. */
export const isentropic = (T: number, ratio: number): number => T * ratio ** ((gamma - 1) / gamma);
