import { angle, backPressure, rotation, type System } from '../units/quantity.ts';
import { said, type Sheet, type Twin } from './drawing.ts';
import type { FoundWaves } from './found-waves.ts';
import { fixed } from './panel.ts';
import { pipeSpan, type PressureField } from './pressure-map.ts';
import { pressureAt } from './wave-way.ts';

const degree = Math.PI / 180;

/** A pressure over or under the outside with its sign: "+1.2 psi". */
export function signed(value: number, system: System): string {
  const { unit, digits } = backPressure[system];
  const shown = fixed(value, digits);
  return `${shown.startsWith('−') || Number(shown) === 0 ? '' : '+'}${shown} ${unit.symbol}`;
}

/** The waves in a sentence or two, for who does not see them. */
export function wavesSaid(found: FoundWaves, speed: number, turn: number, sheet: Sheet): string {
  const { pull, push, closing, blowdown, overlap } = found;
  const pressure = (value: number): string => signed(value, sheet.system);
  const heard = [
    pull ? `the piston as it draws sends a pull of ${pressure(pull.strength)} up the runner` : '',
    push ? `a push of ${pressure(push.strength)} comes back from the plenum` : '',
    closing ? `as the intake shuts there are ${pressure(closing.pressure)} at it` : '',
    blowdown ? `the opening exhaust sends a push of ${pressure(blowdown.strength)} down the primary` : '',
    overlap === null ? '' : `in the overlap there are ${pressure(overlap)} at the exhaust valve`,
  ].filter((words) => words !== '');
  return `Pressure waves in the runner and the primary over one cycle at ${said(sheet, speed, rotation)}${heard.length > 0 ? `: ${heard.join('; ')}` : ''}. A wave goes up the runner and back in ${said(sheet, turn, angle)} of crank.`;
}

/** Each pipe's pressure at the valve and halfway along it, by crank angle. */
export function wavesTwin(pipes: readonly PressureField[], system: System): Twin {
  const { unit, digits } = backPressure[system];
  const places = ['Runner at the valve', 'Runner, middle', 'Primary at the valve', 'Primary, middle'];
  return {
    columns: ['Crank angle from firing top', ...places.map((place) => `${place}, ${unit.symbol}`)],
    rows: Array.from({ length: 25 }, (_, i) => i * 30).map((a) => [
      `${a}°`,
      ...pipes.flatMap((pipe) =>
        [0, pipeSpan(pipe.places)[1] / 2].map((place) => fixed(pressureAt(pipe, a * degree, place), digits)),
      ),
    ]),
  };
}
