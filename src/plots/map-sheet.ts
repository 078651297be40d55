import { between, type Place } from './grid.ts';
import type { Relief } from './map-relief.ts';
import type { Box } from './room.ts';

/** A map's relief laid out in a frame of px. */
export interface MapSheet {
  readonly frame: Box;
  /** A place on the relief in px. */
  readonly px: (place: Place) => Place;
  readonly hasAnswer: (x: number, y: number) => boolean;
  /** The number of the verdict's word at a place in px; −1 where there is no answer. */
  readonly wordAt: (x: number, y: number) => number;
}

export function mapSheet({ value, known, over }: Relief, frame: Box): MapSheet {
  const { across, up } = value;
  const px = ([u, v]: Place): Place => [
    frame.x + (frame.width * u) / (across - 1),
    frame.y + frame.height - (frame.height * v) / (up - 1),
  ];
  const at = (x: number, y: number): Place => [
    ((x - frame.x) / frame.width) * (across - 1),
    ((frame.y + frame.height - y) / frame.height) * (up - 1),
  ];
  const [du, dv] = [(known.across - 1) / (across - 1), (known.up - 1) / (up - 1)];
  const hasAnswer = (x: number, y: number): boolean => {
    const [u, v] = at(x, y);
    return Number.isFinite(between(known, u * du, v * dv));
  };
  const wordAt = (x: number, y: number): number =>
    hasAnswer(x, y) ? over.filter((surface) => between(surface, ...at(x, y)) >= 0).length : -1;
  return { frame, px, hasAnswer, wordAt };
}

/** The path of a line of places in px. */
export const joined = (places: readonly Place[]): string =>
  `M${places.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
