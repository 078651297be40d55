import { type PowerTables, powerTables } from './powers.ts';
import { type FlowTable, flowTable } from './orifice.ts';

/** A pipe and the gas in it. */
export interface PipeSpec {
  /** Number of cells, 2 or more. */
  readonly cells: number;
  /** m */
  readonly length: number;
  /** Area at the start, m2. The diameter changes evenly from one end to the other. */
  readonly startArea: number;
  /** Area at the end, m2. */
  readonly endArea: number;
  /** Ratio of specific heats, one for the whole pipe. */
  readonly gamma: number;
  /** Gas constant, J/kg/K. */
  readonly R: number;
  /** Fanning friction factor: wall shear over the dynamic pressure. */
  readonly friction: number;
  /** Wall heat over what the Reynolds analogy gives; 0: none. */
  readonly heatFactor: number;
  /** K */
  readonly wallTemperature: number;
  /** Bends and entry: velocity heads lost over the whole length, either way. */
  readonly lossHeads: number;
}

/**
 * The blocks that the numbers of a column lie in, one after another in one array; each has room for a cell more at
 * either end. One array because the loop over the cells is a seventh quicker with one than with one for each.
 */
export const block = {
  rho: 0,
  u: 1,
  p: 2,
  burnt: 3,
  sound: 4,
  /** 1 / rho */
  lightness: 5,
  /** What is conserved, per volume: rho is above; rho u, total energy, rho burnt. */
  momentum: 6,
  energy: 7,
  burntDensity: 8,
  /** Area of the face towards the end, m2. */
  area: 9,
  /** 1 / volume of the cell, 1/m3. */
  perVolume: 10,
  /** How much larger the face towards the end is than the one towards the start, m2. */
  widening: 11,
  /** The same as a share of the cell's mean area. */
  taper: 12,
} as const;

const blocks = 13;

/** Pressure and density that a cell is not let fall under, Pa and kg/m3: far below anything in an engine. */
export const leastPressure = 500;
export const leastDensity = 1e-3;

/** The numbers of a pipe: geometry, gas constants, the state of each cell, and what passes through the two end faces. */
export class Column {
  readonly cells: number;
  readonly length: number;
  /** Length of a cell, m. */
  readonly dx: number;
  readonly startArea: number;
  readonly endArea: number;
  readonly gamma: number;
  readonly R: number;
  /** Heat capacity at constant pressure, J/kg/K. */
  readonly cp: number;
  readonly wallTemperature: number;
  /** Deceleration by the wall over u|u|, 1/m. */
  readonly drag: number;
  /** Wall heat over rho (|u| + floor) (Tw - T), per volume: J/kg/K/m. */
  readonly warming: number;
  readonly flows: FlowTable;
  readonly powers: PowerTables;

  /** All cells, in blocks. */
  readonly state: Float64Array;
  /** Density, kg/m3, of the cells from start to end; these four are windows into the state, always up to date. */
  readonly rho: Float64Array;
  /** Speed towards the end, m/s. */
  readonly u: Float64Array;
  /** Pressure, Pa. */
  readonly p: Float64Array;
  /** Mass share of burnt gas. */
  readonly burnt: Float64Array;
  /** Half a step on, rho, u, p, burnt on the faces of the end cells: first cell's outer and inner, last one's the same. */
  readonly edges: Float64Array;
  /** Through the start face and the end face, towards the end: kg/s, N, W, kg/s of burnt. */
  readonly fluxes: Float64Array;

  /** Fastest |u| + sound speed, m/s: a step may take CFL dx / wave. */
  wave: number;
  /** How many times a floor was needed; stays 0 unless something is wrong. */
  floors: number;

  constructor(spec: PipeSpec) {
    const { cells, length, startArea, endArea, gamma, R } = spec;
    const stride = cells + 2;
    const cp = (gamma * R) / (gamma - 1);
    const diameter = Math.sqrt((2 * (startArea + endArea)) / Math.PI); // of the mean area
    this.cells = cells;
    this.length = length;
    this.dx = length / cells;
    this.startArea = startArea;
    this.endArea = endArea;
    this.gamma = gamma;
    this.R = R;
    this.cp = cp;
    this.wallTemperature = spec.wallTemperature;
    this.drag = (2 * spec.friction) / diameter + spec.lossHeads / (2 * length);
    this.warming = (spec.heatFactor * 2 * spec.friction * cp) / diameter; // Reynolds analogy: h = f/2 rho u cp
    this.flows = flowTable(gamma);
    this.powers = powerTables(gamma);
    const state = new Float64Array(blocks * stride);
    const window = (name: keyof typeof block): Float64Array =>
      state.subarray(block[name] * stride + 1, block[name] * stride + 1 + cells);
    this.state = state;
    this.rho = window('rho');
    this.u = window('u');
    this.p = window('p');
    this.burnt = window('burnt');
    this.edges = new Float64Array(16);
    this.fluxes = new Float64Array(8);
    this.wave = 0;
    this.floors = 0;
    const areaAt = (share: number): number =>
      (Math.sqrt(startArea) + (Math.sqrt(endArea) - Math.sqrt(startArea)) * share) ** 2;
    for (let i = 1; i <= cells; i++) {
      const [near, far] = [areaAt((i - 1) / cells), areaAt(i / cells)];
      state[block.area * stride + i] = far;
      state[block.perVolume * stride + i] = 2 / ((near + far) * this.dx);
      state[block.widening * stride + i] = far - near;
      state[block.taper * stride + i] = (2 * (far - near)) / (near + far);
    }
  }
}
