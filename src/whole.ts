import { catalogue as cells, chapters, compared, cycle, opening } from '../cells/index.ts';
import { version as release } from '../package.json' with { type: 'json' };
import { Memory } from './graph/memory.ts';
import { Desk } from './notebook/desk.ts';
import type { Document, Scenario } from './notebook/document.ts';
import type { Slots } from './notebook/slots.ts';
import { Others } from './notebook/others.ts';
import { Store } from './notebook/store.ts';
import './views/behind.ts';
import { fileName, pickFile, saveFile } from './views/files.ts';
import { afterFrame } from './views/frame.ts';
import type { NotebookPage } from './views/notebook-page.ts';
import { Counted } from './workers/counted.ts';
import { Pool } from './workers/pool.ts';

// The one place where catalogue, workers, store, desk and page meet.
const catalogue = { cells, chapters, opening, cycle, compared };

const scenarios = import.meta.glob<Scenario>('../scenarios/*.json', { import: 'default' });
/** The starting points in the order of the page. */
const starts = ['two-ratios', 'edge-of-premium', 'two-cams', 'mountain-six', 'milled-four'].map(
  (name) => `../scenarios/${name}.json`,
);
const worker = (): Worker => new Worker(new URL('./workers/slow.worker.ts', import.meta.url), { type: 'module' });

interface Given {
  /** What a first visit opens. */
  readonly example: Document;
  readonly slots: Slots;
}

/** The whole notebook takes the page over from the first readouts. */
export async function takeOver(page: NotebookPage, { example, slots }: Given): Promise<void> {
  const desk = new Desk({
    catalogue,
    example,
    slots,
    release,
    address: (fragment) => history.replaceState(null, '', `${location.pathname}${location.search}${fragment ?? ''}`),
  });
  const [open, ...scenarioOf] = await Promise.all([
    desk.begin(location.hash),
    ...starts.map((path) => scenarios[path]!()),
  ]);
  const pool = new Pool(worker, Math.max(2, (navigator.hardwareConcurrency || 2) - 1));
  const explorer = new Counted(pool, () => afterFrame(mark));
  const memory = new Memory();
  const store = new Store({ catalogue, open, runner: pool, explorer, memory });
  const others = (store.others = new Others(store, { runner: pool, memory }));

  /** Tells tests what is painted, and when nothing is left to come. */
  const mark = (): void => {
    const { dataset } = document.documentElement;
    dataset.settled = String(store.revision);
    if (!store.live.busy && !others.busy && explorer.outstanding === 0) dataset.complete = String(store.revision);
  };
  const share = async (): Promise<void> => void (page.fragment = await desk.fragment());
  store.watchAll(() => {
    if (page.sharing) void share();
    afterFrame(mark);
  });
  others.watchAll(() => afterFrame(mark));
  const tell = (): void => void Object.assign(page, { notices: desk.notices, saved: desk.saved });
  desk.sit(store, tell);
  tell();

  const on = (type: string, act: (detail: string) => void): void =>
    page.addEventListener(type, (event) => act((event as CustomEvent<string>).detail));
  on('share', () => void share());
  on('opened', (ids) => desk.saveOpened(ids.split(' ')));
  on('start', (path) => void begin(desk, scenarioOf[starts.indexOf(path)]!));
  on('save-file', () => void save(desk, store.document.title));
  on('open-file', () => pickFile('.json,application/json', (file) => void openFile(desk, file)));
  addEventListener('hashchange', () => void desk.follow(location.hash));
  addEventListener('pagehide', () => desk.save());

  const isSmall = matchMedia('(max-width: 700px)').matches;
  Object.assign(page, {
    store,
    opened: desk.opened(isSmall ? ['compression'] : ['block', 'chamber', 'compression']),
    starts: scenarioOf.map(({ title, sentence, guide }, i) => ({ id: starts[i]!, title, sentence, guide })),
    ready: true,
  });
  afterFrame(mark);
  // What is compiled before it is needed answers a second sooner.
  setTimeout(() => pool.warm('engineAtSpeed'), 500);
}

async function begin(desk: Desk, chosen: Scenario): Promise<void> {
  await desk.open(chosen, `Started from “${chosen.title}”`);
  scrollTo(0, 0);
}
async function save(desk: Desk, title: string): Promise<void> {
  saveFile(`${fileName(title, 'notebook')}.json`, await desk.file(), 'application/json');
}
async function openFile(desk: Desk, file: File): Promise<void> {
  let saved: unknown;
  try {
    saved = JSON.parse(await file.text());
  } catch {
    // It is said below, as for what is JSON but no notebook.
  }
  if (typeof saved === 'object' && saved !== null && !Array.isArray(saved))
    await desk.open(saved, `Opened ${file.name}`);
  else desk.note(`“${file.name}” is not a notebook file.`);
}
