import {
  closing,
  durationBetween,
  exhaustCenterline,
  opening,
  separationFromOverlap,
} from '../../src/physics/cam-events.ts';
import rows from './cam-events.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const deg = Math.PI / 180;

const intake = (given: Given) => [given('dur_int_deg') * deg, given('ICL_deg_ATDC') * deg] as const;
const exhaust = (given: Given) =>
  [given('dur_exh_deg') * deg, exhaustCenterline(given('LSA_cam_deg') * deg, given('ICL_deg_ATDC') * deg)] as const;

/** A stock-like cam, invented: 252 degrees, lobes 109 apart, intake on 108. */
const [mild, apart, on] = [252 * deg, 109 * deg, 108 * deg];

holdAgainst(rows, numbered('CAM', 1, 22), {
  IVO_BTDC: (given) => opening(...intake(given)) / deg,
  IVC_ABDC: (given) => closing(...intake(given)) / deg,
  EVO_BBDC: (given) => closing(...exhaust(given)) / deg,
  EVC_ATDC: (given) => opening(...exhaust(given)) / deg,
  overlap: (given) => {
    // The centerline drops out of the sum, so the rows do not give one.
    const separation = given('LSA_cam_deg') * deg;
    const on = separation - 0.05;
    const opens = opening(given('dur_int_deg') * deg, on);
    return (opens + opening(given('dur_exh_deg') * deg, exhaustCenterline(separation, on))) / deg;
  },
  'lobe separation from duration and overlap': (given) =>
    separationFromOverlap(given('duration_deg') * deg, given('overlap_deg') * deg) / deg,
  'duration from events': (given) => durationBetween(given('open_BTDC') * deg, given('close_ABDC') * deg) / deg,
  'events after 5 crank degrees advance': (given) => {
    const [advance, opens, closes] = [given('advance_deg') * deg, given('IVO') * deg, given('IVC') * deg];
    const [leaves, shuts] = [given('EVO') * deg, given('EVC') * deg];
    const inlet = durationBetween(opens, closes);
    const outlet = durationBetween(leaves, shuts);
    const first = inlet / 2 - opens - advance; // earlier: nearer to top dead center for the intake
    const last = outlet / 2 - shuts + advance; // and farther before it for the exhaust
    return [opening(inlet, first), closing(inlet, first), closing(outlet, last), opening(outlet, last)].map(
      (a) => a / deg,
    );
  },
  'textbook range IVO BTDC': () => opening(mild, on) / deg,
  'textbook range IVC ABDC': () => closing(mild, on) / deg,
  'textbook range EVO BBDC': () => closing(mild, exhaustCenterline(apart, on)) / deg,
  'textbook range EVC ATDC': () => opening(mild, exhaustCenterline(apart, on)) / deg,
});
