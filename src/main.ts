import { catalogue as cells, chapters, opening } from '../cells/index.ts';
import { version as release } from '../package.json' with { type: 'json' };
import example from '../scenarios/edge-of-premium.json' with { type: 'json' };
import type { Explorer } from './graph/explorer.ts';
import { Desk } from './notebook/desk.ts';
import type { Document, Scenario } from './notebook/document.ts';
import { Slots } from './notebook/slots.ts';
import { Store } from './notebook/store.ts';
import { afterFrame } from './views/frame.ts';
import { NotebookPage } from './views/notebook-page.ts';
import { Pool } from './workers/pool.ts';
import './views/look.css';

// The one place where catalogue, workers, store, desk and page meet.
const catalogue = { cells, chapters, opening };

const scenarios = import.meta.glob<Scenario>('../scenarios/*.json', { import: 'default' });
/** The starting points in the order of the page. */
const order = ['two-ratios', 'edge-of-premium', 'two-cams', 'mountain-six', 'milled-four'].map((name) => `../scenarios/${name}.json`);

const cores = Math.max(2, (navigator.hardwareConcurrency || 2) - 1);
const pool = new Pool(
  () => new Worker(new URL('./workers/slow.worker.ts', import.meta.url), { type: 'module' }),
  cores,
);
/** What is still to come besides slow cells: sweeps in the workers, figures being loaded. */
let outstanding = 0;
const explorer: Explorer = {
  sweep(task, report) {
    outstanding++;
    let running = true;
    const end = (): void => {
      if (running) outstanding--;
      running = false;
      afterFrame(mark);
    };
    const stop = pool.sweep(task, (news) => {
      if (news.is !== 'waiting') end();
      report(news);
    });
    return () => {
      stop();
      end();
    };
  },
};

const desk = new Desk({
  catalogue,
  example: example as unknown as Document,
  slots: new Slots(storageOf('localStorage'), storageOf('sessionStorage')),
  release,
  address: (fragment) => history.replaceState(null, '', `${location.pathname}${location.search}${fragment ?? ''}`),
});
const store = new Store({ catalogue, open: await desk.begin(location.hash), runner: pool });
const page = Object.assign(new NotebookPage(), {
  store,
  explorer,
  opened: desk.opened(matchMedia('(max-width: 700px)').matches ? ['compression'] : ['block', 'chamber', 'compression']),
});
const told = (): void => void Object.assign(page, { notices: desk.notices, saved: desk.saved });
desk.sit(store, told);
told();

/** Tells tests what is painted, and when nothing is left to come. */
function mark(): void {
  const { dataset } = document.documentElement;
  dataset.settled = String(store.revision);
  if (!store.live.busy && outstanding === 0) dataset.complete = String(store.revision);
}
const share = async (): Promise<void> => void (page.fragment = await desk.fragment());
store.watchAll(() => {
  if (page.sharing) void share();
  afterFrame(mark);
});

page.addEventListener('share', () => void share());
page.addEventListener('opened', (event) => desk.saveOpened((event as CustomEvent<string>).detail.split(' ')));
page.addEventListener('start', (event) => void start((event as CustomEvent<string>).detail));
page.addEventListener('save-file', () => void saveFile());
page.addEventListener('open-file', () => {
  const picker = Object.assign(document.createElement('input'), { type: 'file', accept: '.json,application/json' });
  picker.addEventListener('change', () => void openFile(picker.files?.[0]));
  picker.click();
});
addEventListener('hashchange', () => void desk.follow(location.hash));
addEventListener('pagehide', () => desk.save());

async function start(path: string): Promise<void> {
  const chosen = await scenarios[path]?.();
  if (!chosen) return;
  await desk.open(chosen, `Started from ${chosen.title}`);
  scrollTo(0, 0);
}
async function saveFile(): Promise<void> {
  const link = Object.assign(document.createElement('a'), {
    href: URL.createObjectURL(new Blob([await desk.file()], { type: 'application/json' })),
    download: `${store.document.title.toLowerCase().replace(/[^a-z0-9]+/g, '-') || 'notebook'}.json`,
  });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
async function openFile(file: File | undefined): Promise<void> {
  if (!file) return;
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
function storageOf(name: 'localStorage' | 'sessionStorage'): Storage | null {
  try {
    return window[name];
  } catch {
    return null; // private windows and some settings refuse it
  }
}

document.body.append(page);
afterFrame(mark);
// Fields, chapters, figures and the other starting points load behind the first readouts.
outstanding++;
void Promise.all([import('./views/behind.ts'), ...order.map((path) => scenarios[path]!())]).then(([, ...documents]) => {
  outstanding--;
  page.starts = documents.map(({ title, sentence, guide }, i) => ({ id: order[i]!, title, sentence, guide }));
  page.ready = true;
  afterFrame(mark);
});
