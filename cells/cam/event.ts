import { Impossible } from '../../src/graph/state.ts';

/**
 * An event as typed (rad, in its own sense), brought to the lift that is asked for. Between the seat lift and 0.050 in
 * each end of a lobe takes half the difference of its two durations: right for a symmetric lobe.
 */
export function typedEvent(typed: number, readAt: string, wantedAt: 'seat' | 'at050', ramp: number): number {
  if (readAt === 'neither')
    throw new Impossible(
      ['The events are read at neither the seat lift nor 0.050 in. Write one of the two.'],
      'eventsLift',
    );
  return readAt === wantedAt ? typed : wantedAt === 'seat' ? typed + ramp : typed - ramp;
}
