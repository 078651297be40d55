import type { Store } from '../../src/notebook/store.ts';
import { type DrawnLobe, fitted } from '../physics/valve/drawn-lobe.ts';
import { drawnClearance } from '../physics/valve/drawn-valve.ts';
import { figureOf, valueOf } from './notebooks.ts';

export type Side = 'intake' | 'exhaust';
const fifty = 0.05 * 0.0254;

/** The lobe that a notebook's card asks for, by the other hand: from inputs alone. */
export function drawnLobe(store: Store, side: Side): DrawnLobe {
  const [seat, at050] = [figureOf(store, `${side}Duration`), figureOf(store, `${side}Duration050`)];
  return fitted(figureOf(store, `${side}LobeLift`), [figureOf(store, 'seatLift'), seat], [fifty, at050]);
}

/** Where the lobe peaks, rad after the top dead center of the gas exchange, from the card and the advance. */
export function drawnPeak(store: Store, side: Side): number {
  const [card, advance] = [figureOf(store, 'intakeCenterline'), figureOf(store, 'camAdvance')];
  return side === 'intake' ? card - advance : -(2 * figureOf(store, 'lobeSeparation') - card + advance);
}

/**
 * Smallest gap between a notebook's valve and piston as drawn: head, crown and linkage from the inputs and the deck
 * clearance as held. With the lash of a solid left out.
 */
export function drawnGap(store: Store, side: Side): ReturnType<typeof drawnClearance> {
  return drawnClearance({
    throw: figureOf(store, 'stroke') / 2,
    rod: figureOf(store, 'rod'),
    line: -figureOf(store, 'pinOffset'),
    deck: figureOf(store, 'deckClearance'),
    gasket: figureOf(store, 'gasketThickness'),
    seatDepth: figureOf(store, `${side}SeatDepth`),
    milling: figureOf(store, 'milling'),
    reliefDepth: figureOf(store, `${side}ReliefDepth`) + figureOf(store, 'reliefCut'),
    valveAngle: figureOf(store, `${side}ValveAngle`),
    headRadius: figureOf(store, `${side}ValveDiameter`) / 2,
    crown: valueOf(store, 'crownAtValve') as 'relief' | 'flat',
    peak: drawnPeak(store, side),
    lobe: drawnLobe(store, side),
    rocker: figureOf(store, 'rockerRatio'),
  });
}
