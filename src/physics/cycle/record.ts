import type { EngineCycle } from './cycle.ts';
import { cycleDegrees } from './neighbors.ts';
import { block } from './pipe/column.ts';
import type { Pipe } from './pipe/pipe.ts';

/** The gas of one pipe through a cycle. */
export interface PipeRecord {
  /** m from the valve, centers of the cells, rising */
  readonly place: Float64Array;
  /** Pa absolute, row by row: entry i * place.length + k at angle i and place k */
  readonly pressure: Float64Array;
  /** Speed of sound, m/s, the mean of all cells at all angles. */
  readonly sound: number;
}

/** One cycle of one cylinder, every two crank degrees from 180 before firing top to 540 after it. */
export interface CycleRecord {
  /** rad from firing top dead center, 361 of them */
  readonly angle: Float64Array;
  /** Pa absolute: in the cylinder, at the runner's end and at the primary's start, both at the valve. */
  readonly cylinderPressure: Float64Array;
  readonly intakePressure: Float64Array;
  readonly exhaustPressure: Float64Array;
  /** kg/s through the valves, the mean of the two degrees around; + in through the intake and out through the exhaust */
  readonly intakeFlow: Float64Array;
  readonly exhaustFlow: Float64Array;
  /** m2, effective: where above 0 the valve is open */
  readonly intakeArea: Float64Array;
  readonly exhaustArea: Float64Array;
  readonly runner: PipeRecord;
  readonly primary: PipeRecord;
  /** Of the air, Pa absolute. */
  readonly outside: number;
}

const degree = Math.PI / 180;
const apart = 2; // degrees
const entries = cycleDegrees / apart + 1;

/**
 * Walks a cycle and records it.
 *
 * @param cycle settled at that speed; goes on by one cycle
 * @param speed rad/s
 */
export function recordOf(cycle: EngineCycle, speed: number): CycleRecord {
  const { engine, chamber, runner, primary } = cycle;
  const column = (): Float64Array => new Float64Array(entries);
  const [cylinderPressure, intakePressure, exhaustPressure] = [column(), column(), column()];
  const [drawn, expelled] = [new Float64Array(cycleDegrees + 1), new Float64Array(cycleDegrees + 1)];
  const rows = { runner: rowsOf(runner), primary: rowsOf(primary) };

  const look = (at: number): void => {
    drawn[at] = at === 0 ? 0 : chamber.massIn;
    expelled[at] = at === 0 ? 0 : chamber.massOut - chamber.leaked;
    if (at % apart !== 0) return;
    const i = at / apart;
    cylinderPressure[i] = chamber.gas.p;
    intakePressure[i] = runner.end.pressure;
    exhaustPressure[i] = primary.start.pressure;
    rows.runner.take(i, true);
    rows.primary.take(i, false);
  };
  look(0);
  cycle.turn(speed, look);

  return {
    angle: column().map((_, i) => (i * apart - 180) * degree),
    cylinderPressure,
    intakePressure,
    exhaustPressure,
    intakeFlow: flowOf(drawn, speed),
    exhaustFlow: flowOf(expelled, speed),
    intakeArea: column().map((_, i) => engine.intakeArea[i * apart]!),
    exhaustArea: column().map((_, i) => engine.exhaustArea[i * apart]!),
    runner: rows.runner.record(),
    primary: rows.primary.record(),
    outside: engine.airPressure,
  };
}

/** Mass that has passed by each degree, kg, as a flow every two: of the degree before and the one after. */
function flowOf(passed: Float64Array, speed: number): Float64Array {
  const time = (apart * degree) / speed;
  const around = passed[1]! + passed[cycleDegrees]! - passed[cycleDegrees - 1]!; // where the cycle closes
  return new Float64Array(entries).map((_, i) => {
    const at = i * apart;
    return (at === 0 || at === cycleDegrees ? around : passed[at + 1]! - passed[at - 1]!) / time;
  });
}

function rowsOf(pipe: Pipe) {
  const { cells, dx } = pipe;
  const pressure = new Float64Array(entries * cells);
  const sounds = pipe.state.subarray(block.sound * (cells + 2) + 1, block.sound * (cells + 2) + 1 + cells);
  let sound = 0;
  return {
    take(i: number, backward: boolean): void {
      for (let k = 0; k < cells; k++) {
        pressure[i * cells + k] = pipe.p[backward ? cells - 1 - k : k]!;
        sound += sounds[k]! / (entries * cells);
      }
    },
    record: (): PipeRecord => ({ place: new Float64Array(cells).map((_, k) => (k + 0.5) * dx), pressure, sound }),
  };
}
