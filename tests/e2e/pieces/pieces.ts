import { html, render, type TemplateResult } from 'lit';
import { chapters, opening } from '../../../cells/index.ts';
import type { BestItem, DrawsItem, MapItem, SweepItem } from '../../../src/notebook/document.ts';
import type { Cell } from '../../../src/graph/cell.ts';
import { type Action, action } from '../../../src/graph/chapter.ts';
import { Impossible } from '../../../src/graph/state.ts';
import type { Store } from '../../../src/notebook/store.ts';
import { degree, inch, si } from '../../../src/units/unit.ts';
import { afterFrame } from '../../../src/views/frame.ts';
import { NotebookPage } from '../../../src/views/notebook-page.ts';
import type { ReadoutRow } from '../../../src/views/readout-row.ts';
import '../../../src/views/behind.ts';
import '../../../src/views/best-panel.ts';
import '../../../src/views/chapter-action.ts';
import '../../../src/views/draws-figure.ts';
import '../../../src/views/look.css';
import '../../../src/views/make-line.ts';
import '../../../src/views/map-figure.ts';
import '../../../src/views/share-panel.ts';
import '../../../src/views/summary-strip.ts';
import '../../../src/views/verdict-note.ts';
import '../../../src/views/why-panel.ts';
import { cellOf, inputOf, scenario } from '../../notebook/notebooks.ts';
import * as at from './stores.ts';

/** What a test can have done on this page. */
export interface Pieces {
  /** Sends the message that a slow cell waits for. */
  answer(): void;
}
type Piece = readonly [id: string, title: string, TemplateResult];

const field = (store: Store, id: string, name = 'field'): TemplateResult =>
  html`<number-field .store=${store} .cell=${cellOf(id)} .name=${name}></number-field>`;
const choice = (store: Store, id: string): TemplateResult =>
  html`<choice-field .store=${store} .cell=${inputOf(id)}></choice-field>`;
const row = (store: Store, id: string, open = false): TemplateResult =>
  html`<readout-row .store=${store} .cell=${cellOf(id)} .open=${open}></readout-row>`;
const verdict = (store: Store): TemplateResult =>
  html`<verdict-note .store=${store} .here=${opening.here} .low=${opening.low}></verdict-note>`;
const drawn = (store: Store, form: string, table = false): TemplateResult =>
  html`<drawn-figure
    .store=${store}
    .figure=${[opening.plate, ...chapters.flatMap((c) => c.figures ?? [])].find((f) => f.form === form)!}
    .number=${1}
    .table=${table}
  ></drawn-figure>`;
const sweep = (store: Store, item: SweepItem, table = false): TemplateResult =>
  html`<sweep-figure .store=${store} .item=${item} .number=${2} .table=${table}></sweep-figure>`;
const map = (
  store: Store,
  more: Partial<MapItem> = {},
  { table = false, explorer = at.explorer }: { readonly table?: boolean; readonly explorer?: typeof at.explorer } = {},
): TemplateResult =>
  html`<map-figure
    .store=${store}
    .item=${{
      id: 'map',
      type: 'map',
      read: 'dynamicRatio',
      x: { vary: 'intakeClosing', from: si(40, degree), to: si(80, degree) },
      y: { vary: 'chamberVolume', from: 60e-6, to: 80e-6 },
      ...more,
    }}
    .explorer=${explorer}
    .number=${7}
    .table=${table}
  ></map-figure>`;
const draws = (
  store: Store,
  more: Partial<DrawsItem> = {},
  table = false,
  explorer = at.atOnce(store),
): TemplateResult =>
  html`<draws-figure
    .store=${store}
    .item=${{ id: 'draws', type: 'draws', read: 'dynamicRatio', ...more }}
    .explorer=${explorer}
    .number=${4}
    .table=${table}
  ></draws-figure>`;
const best = (id: string, more: Partial<BestItem> = {}): TemplateResult =>
  html`<best-panel
    .store=${at.start}
    .item=${{
      id,
      type: 'best',
      aims: [
        { sense: 'most', read: 'dynamicRatio' },
        { sense: 'most', read: 'intakeClearance' },
      ],
      vary: [
        { id: 'intakeClosing', from: si(50, degree), to: si(70, degree) },
        { id: 'reliefCut', from: 0, to: si(0.05, inch) },
      ],
      limits: [{ read: 'fuelVerdict', worst: 'borderline' }],
      budget: 30,
      ...more,
    }}
    .explorer=${at.explorer}
    .number=${5}
  ></best-panel>`;
const motored = (store: Store, table = false): TemplateResult =>
  html`<curve-figure .store=${store} .cell=${cellOf('motoredPressure')} .number=${3} .table=${table}></curve-figure>`;
const closing = (store: Store): SweepItem => store.document.page.find((p): p is SweepItem => p.id === 'closing')!;
/** Against the altitude, where the two cams are told apart. */
const height = (more: Partial<SweepItem> = {}): SweepItem => ({
  id: 'two',
  type: 'sweep',
  read: 'crankingPressure',
  vary: 'altitude',
  from: 0,
  to: 3048,
  ...more,
});
const sevenChambers = { vary: 'chamberVolume', values: [60, 62, 64, 66, 68, 70, 72].map((cc) => cc * 1e-6) };
const bigger = action({
  id: 'bigger-chamber',
  label: ({ staticRatio }) => `Set the chamber to 66 cm³, at ${staticRatio.toFixed(2)} now`,
  did: 'Set the chamber to 66 cm³',
  note: 'A stand-in, to see how it looks.',
  from: { staticRatio: cellOf('staticRatio') as Cell<number> },
  sets: () => [[inputOf('chamberVolume'), 66e-6]],
});
const later = action({
  id: 'later',
  label: 'Set what the compression says',
  note: 'It stands on slow work.',
  from: { motoredPeak: cellOf('motoredPeak') as Cell<number> },
  sets: () => [],
});
const refused = action({
  id: 'refused',
  label: 'Write what is missing',
  note: 'It has nothing to write.',
  from: { staticRatio: cellOf('staticRatio') as Cell<number> },
  sets: () => {
    throw new Impossible(['Give the measured peak first.']);
  },
});
const deed = (store: Store, which: Action): TemplateResult =>
  html`<chapter-action .store=${store} .action=${which}></chapter-action>`;
const slowSweep: SweepItem = {
  id: 'slow',
  type: 'sweep',
  read: 'motoredPeak',
  vary: 'chamberVolume',
  from: 60e-6,
  to: 80e-6,
};

// Notebooks that come to their state only once the pieces stand on the page.
const [waiting, coming, ready, stopped, fallen, fallenSweep, fallenMap, again, acted] = Array.from({ length: 9 }, () =>
  at.open(),
) as [Store, Store, Store, Store, Store, Store, Store, Store, Store];

const small: readonly Piece[] = [
  ['field-start', 'Field, at its starting value', field(at.start, 'chamberVolume')],
  ['field-changed', 'Field, changed', field(at.changed, 'bore')],
  ['field-out', 'Field, beyond the range of trust', field(at.hot, 'airTemperature')],
  ['field-fault', 'Field, in fault', field(at.shortRod, 'rod')],
  ['field-unread', 'Field, not to be read', field(at.unread, 'stroke')],
  ['field-held', 'Field, held', field(at.start, 'deckClearance')],
  ['field-free', 'Field, computed', field(at.start, 'cautionStart')],
  ['field-moved', 'Field, derived, moved', field(at.moved, 'intakeClosing')],
  ['field-empty', 'Field, not given', field(at.start, 'gaugeReading')],
  ['field-focus', 'Field, keyboard focus', field(at.start, 'rod', 'focus')],
  ['choice', 'Choice', html`${choice(at.start, 'fuelGrade')}${choice(at.start, 'closingConvention')}`],
  ['row-ready', 'Readout, ready', row(at.start, 'displacement')],
  ['row-coming', 'Readout, coming', html`${row(coming, 'motoredPressure')}${row(coming, 'motoredPeak')}`],
  ['row-waiting', 'Readout, waiting', html`${row(waiting, 'motoredPressure')}${row(waiting, 'motoredPeak')}`],
  ['row-stopped', 'Readout, stopped', row(stopped, 'motoredPressure')],
  ['row-again', 'Readout, worked out anew', html`${row(again, 'motoredPressure')}${row(again, 'motoredPeak')}`],
  ['row-elsewhere', 'Readout, fault elsewhere', row(at.shortRod, 'trappedVolume')],
  ['row-held', 'Readout, held', row(at.held, 'staticRatio')],
  ['row-out', 'Readout, out of trust', row(at.hot, 'factorJ1349')],
  ['row-none', 'Readout, not given', row(at.start, 'gaugeExponent')],
  ['why', 'Why', row(at.start, 'dynamicRatio', true)],
  ['why-reach', 'Why, out of reach', row(at.start, 'crankingPressure', true)],
  ['why-unread', 'Why, not to be read', row(at.start, 'staticRatio', true)],
  ['why-slow', 'Why, made by slow work', row(ready, 'motoredPeak', true)],
  ['do', 'Action', deed(acted, bigger)],
  ['do-waits', 'Action, waiting', deed(waiting, later)],
  ['do-refused', 'Action, with nothing to do', deed(at.start, refused)],
  [
    'words',
    'Verdict words',
    html`${row(at.comfortable, 'fuelVerdict')}${row(at.start, 'fuelVerdictLow')}${row(at.beyond, 'fuelVerdict')}`,
  ],
  ['share', 'Share', html`<share-panel .fragment=${`1.${'eJyrVkosLcmIz8nPS1WyUjA2'.repeat(20)}`}></share-panel>`],
  ['toast', 'Toast', html`<toast-line .store=${at.start} .what=${'Set intake closing to 66.9°'}></toast-line>`],
  [
    'sentence',
    'Sentence, with a fault',
    html`<sweep-sentence .store=${at.start} .item=${closing(at.start)}></sweep-sentence>`,
  ],
];

const large: readonly Piece[] = [
  ['verdict-comfortable', 'Verdict, comfortable', verdict(at.comfortable)],
  ['verdict-borderline', 'Verdict, borderline', verdict(at.start)],
  ['verdict-beyond', 'Verdict, beyond this fuel', verdict(at.beyond)],
  ['verdict-stale', 'Verdict, waiting', verdict(at.shortRod)],
  ['plate', 'Plate', drawn(at.start, 'plate')],
  ['plate-stale', 'Plate, stale', drawn(at.shortRod, 'plate')],
  ['plate-table', 'Plate, its table', drawn(at.start, 'plate', true)],
  ['travel', 'Travel', drawn(at.start, 'travel')],
  ['travel-stale', 'Travel, stale', drawn(at.shortRod, 'travel')],
  ['stack', 'Stack', drawn(at.start, 'stack')],
  ['scale', 'Scale', drawn(at.start, 'verdictScale')],
  ['scale-table', 'Scale, its table', drawn(at.start, 'verdictScale', true)],
  ['sweep', 'Sweep with bands', sweep(at.start, closing(at.start))],
  ['sweep-low', 'Sweep with dashed edges of the lowest altitude', sweep(at.mountain, closing(at.mountain))],
  ['sweep-stale', 'Sweep, stale', sweep(fallenSweep, closing(fallenSweep))],
  ['sweep-slow', 'Sweep, being worked on', sweep(ready, slowSweep)],
  ['sweep-table', 'Sweep, its table', sweep(at.start, { ...closing(at.start), id: 'closing-table' }, true)],
  ['map', 'Map with bands', map(at.start)],
  ['map-low', 'Map with dashed edges of the lowest altitude', map(at.mountain, { id: 'map-low' })],
  ['map-plain', 'Map that nobody judges', map(at.start, { id: 'map-plain', read: 'crankingPressure' })],
  ['map-table', 'Map, its table', map(at.start, { id: 'map-table' }, { table: true })],
  ['map-stale', 'Map, stale', map(fallenMap, { id: 'map-stale' })],
  [
    'map-both',
    'Map that cannot be had',
    map(at.start, { id: 'map-both', y: { vary: 'camAdvance', from: 0, to: 0.1 } }),
  ],
  ['map-slow', 'Map, being worked on', map(ready, { id: 'map-slow', read: 'motoredPeak' }, { explorer: at.halfway })],
  [
    'map-slow-bare',
    'Map, nothing of it yet',
    map(ready, { id: 'map-slow-bare', read: 'motoredPeak', x: { vary: 'bore', from: 0.1, to: 0.11 } }),
  ],
  ['draws', 'Draws, with bands', draws(at.start)],
  ['draws-table', 'Draws, their table', draws(at.start, { id: 'draws-table' }, true)],
  ['draws-plain', 'Draws of what nobody judges', draws(at.start, { id: 'draws-plain', read: 'clearanceVolume' })],
  ['draws-bare', 'Draws without a ±', draws(at.bare, { id: 'draws-bare' })],
  ['draws-stale', 'Draws, waiting', draws(at.shortRod, { id: 'draws-stale' })],
  ['draws-slow', 'Draws, slow', draws(ready, { id: 'draws-slow', read: 'motoredPeak' }, false, at.explorer)],
  ['best', 'Best of many, not looked for yet', best('best')],
  ['best-found', 'Best of many, found', best('best-found')],
  ['best-one', 'Best of many, with one aim', best('best-one', { aims: [{ sense: 'most', read: 'crankingPressure' }] })],
  ['best-slow', 'Best of many, being looked for', best('best-slow', { aims: [{ sense: 'most', read: 'peakTorque' }] })],
  ['best-none', 'Best of many, that cannot be', best('best-none', { aims: [{ sense: 'most', read: 'displacement' }] })],
  ['sweep-variants', 'Sweep of two variants', sweep(at.cams, height())],
  [
    'sweep-multiples',
    'Sweep of two variants with many lines',
    sweep(at.cams, height({ id: 'many', family: sevenChambers })),
  ],
  ['motored', 'Motored curve', motored(ready)],
  ['motored-stale', 'Motored curve, stale', motored(fallen)],
  ['motored-again', 'Motored curve, worked out anew', motored(again)],
  ['motored-table', 'Motored curve, its table', motored(ready, true)],
];
const closed: Piece = [
  'closed',
  'Chapters, closed',
  html`${chapters.map(
    (chapter) =>
      html`<chapter-section .store=${at.start} .chapter=${chapter} .items=${[]} .open=${false}></chapter-section>`,
  )}`,
];

const shown = ([id, title, piece]: Piece): TemplateResult =>
  html`<div id="piece-${id}">
    <h2>${title}</h2>
    ${piece}
  </div>`;

function pieces(): void {
  const style = document.createElement('style');
  // What lies over the page elsewhere stands among others here.
  style.textContent =
    '.strip, .toast-place, share-panel { position: static } .large { grid-template-columns: repeat(auto-fill, minmax(min(100%, 520px), 1fr)) }';
  document.head.append(style);
  render(
    html`<main class="page">
      <h1>Pieces and their states</h1>
      <nav class="strip" aria-label="Pinned answers">
        <div class="strip-in"><summary-strip .store=${at.beyond}></summary-strip></div>
      </nav>
      <div class="spec">${small.map(shown)}</div>
      <div class="spec large">${large.map(shown)}</div>
      ${shown(closed)}
    </main>`,
    document.body,
  );
}

const painted = (): Promise<void> => new Promise((done) => afterFrame(done));

/** Brings the pieces to states that only something done to them leads to. */
async function act(): Promise<void> {
  await painted();
  const find = (of: string): HTMLElement => document.querySelector<HTMLElement>(of)!;
  find('#piece-field-focus .num').classList.add('focus-shown');
  Object.assign(find('#piece-sentence sweep-sentence'), { fault: 'The two ends of a sweep differ.' });
  const aim = async (piece: string, text: string): Promise<void> => {
    await document.querySelector<ReadoutRow>(`#piece-${piece} readout-row`)!.updateComplete;
    await painted();
    const box = document.querySelector<HTMLInputElement>(`#piece-${piece} make-line input`)!;
    box.value = text;
    box.dispatchEvent(new Event('change'));
  };
  await aim('why', '7.5');
  await aim('why-reach', '900');
  await aim('why-unread', 'more');
  find('#piece-do button').click();
  for (const store of [ready, fallen, again]) at.answer(store);
  for (const look of document.querySelectorAll<HTMLElement>('best-panel:not(:has(#best)) .look button')) look.click();
  for (const found of ['best-found', 'best-one'])
    while (find(`#piece-${found} .look button`).textContent.trim() !== 'Look again') await painted();
  await painted();
  await aim('why-slow', '150');
  await painted();
  find('#piece-why-slow .make .button').click();
  at.jobOf(waiting).progress(0.62);
  at.jobOf(coming).provisional({ x: Float64Array.of(-1, 0, 0.5), y: Float64Array.of(0, 1.2e6, 0.9e6) }, 0.5);
  stopped.stop(cellOf('motoredPressure') as never);
  await painted();
  const put = (store: Store, id: string, value: number): void => store.set([[inputOf(id), value]], { what: id });
  put(fallen, 'rod', si(1.5, inch));
  put(fallenSweep, 'rod', si(1.5, inch));
  while (!document.querySelector('#piece-map-stale .frame:not(.empty)')) await painted();
  put(fallenMap, 'rod', si(1.5, inch));
  put(again, 'chamberVolume', 66e-6);
  at.jobOf(again).progress(0.2);
}

/** The whole page at its worst: notices, variants, a fault, every chapter open. */
function whole(): void {
  const page = Object.assign(new NotebookPage(), {
    store: at.cams,
    opened: new Set(chapters.map((c) => c.id)),
    ready: true,
    saved: 'Saved in this browser.',
    notices: [
      {
        text: 'This is a copy from a link. What you had before is kept.',
        actions: [
          { label: 'Keep as mine', act: () => {} },
          { label: 'Back to mine', act: () => {} },
        ],
      },
      { text: '“engine.txt” is not a notebook file.', actions: [{ label: 'Dismiss', act: () => {} }] },
    ],
    starts: ['edge-of-premium', 'mountain-six'].map((id) => ({ id, ...scenario(id) })),
  });
  document.body.append(page);
}

/** The share panel alone, as its state is told in the address. */
function share(state: string): void {
  const piece = small.find(([id]) => id === 'share')!;
  render(
    html`<main class="page">
      <h1>Share</h1>
      <div class="spec">${shown(piece)}</div>
    </main>`,
    document.body,
  );
  const panel = document.querySelector('share-panel')!;
  panel.style.position = 'static';
  if (state === 'published') panel.address = 'https://engine.example/notebook/';
  if (state === 'wrong') panel.address = 'engine.example';
  if (state === 'long') panel.longest = 100;
}

const state = new URLSearchParams(location.search).get('share');
if (location.search === '?whole') {
  whole();
  at.cams.set([[inputOf('bore'), si(4.03, inch)]], { what: 'bore' });
  at.cams.set([[inputOf('rod'), si(1.5, inch)]], { what: 'rod' });
} else if (state !== null) share(state);
else {
  pieces();
  await act();
}
(globalThis as { pieces?: Pieces }).pieces = {
  answer: () => at.answer(waiting),
};
document.documentElement.dataset.standing = 'yes';
