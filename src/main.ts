import { catalogue as cells, chapters, opening as first } from '../cells/index.ts';
import { version as release } from '../package.json' with { type: 'json' };
import edge from '../scenarios/edge-of-premium.json' with { type: 'json' };
import milled from '../scenarios/milled-four.json' with { type: 'json' };
import mountain from '../scenarios/mountain-six.json' with { type: 'json' };
import cams from '../scenarios/two-cams.json' with { type: 'json' };
import type { Explorer } from './graph/explorer.ts';
import { answersOf, whatChanged } from './notebook/answers.ts';
import type { Document } from './notebook/document.ts';
import type { Open } from './notebook/history.ts';
import { pack, unpack } from './notebook/link.ts';
import { restore, type Restored } from './notebook/restore.ts';
import { Slots } from './notebook/slots.ts';
import { Store } from './notebook/store.ts';
import { afterFrame } from './views/frame.ts';
import { NotebookPage, type Notice } from './views/notebook-page.ts';
import { Pool } from './workers/pool.ts';
import './views/look.css';

// The one place where catalogue, workers, store and page meet.
const catalogue = { cells, chapters, opening: first };
const scenarios = { edge, cams, mountain, milled } as unknown as Readonly<Record<string, Document>>;
const example = scenarios.edge!;
const mended = (anything: unknown): Restored => restore(anything, catalogue, example);

const cores = Math.max(2, (navigator.hardwareConcurrency || 2) - 1);
const pool = new Pool(
  () => new Worker(new URL('./workers/slow.worker.ts', import.meta.url), { type: 'module' }),
  cores,
);
const slots = new Slots(storageOf('localStorage'), storageOf('sessionStorage'));

/** Whose notebook is open: the reader's own, or a copy that came with a link. */
let visit: string | null = null;
/** What a newer release wrote is looked at, not overwritten. */
let readOnly = false;
let sweeping = 0;
let loading = 0;

const explorer: Explorer = {
  sweep(task, report) {
    sweeping++;
    const stop = pool.sweep(task, (news) => {
      if (news.is !== 'waiting') end();
      report(news);
    });
    let running = true;
    const end = (): void => {
      if (!running) return;
      running = false;
      sweeping--;
      afterFrame(mark);
    };
    return () => {
      stop();
      end();
    };
  },
};

const begun = await opening();
const store = new Store({ catalogue, open: begun.open, runner: pool });
const page = Object.assign(new NotebookPage(), {
  store,
  explorer,
  starts: Object.entries(scenarios).map(([id, { title, sentence }]) => ({ id, title, sentence })),
  notices: begun.notices,
  opened:
    slots.opened() ??
    new Set(matchMedia('(max-width: 700px)').matches ? ['compression'] : ['block', 'chamber', 'compression']),
});

/** What to open: a link's copy if there is one, else what the reader had, else the example. */
async function opening(): Promise<{ readonly open: Open; readonly notices: readonly Notice[] }> {
  const link = await unpack(location.hash);
  const mine = slots.mine();
  const own = mine ? mended(mine.document) : null;
  const open: Open = own
    ? { document: own.document, opened: mine?.opened === undefined ? own.document : mended(mine.opened).document }
    : { document: example, opened: example };
  const notices: Notice[] = own && own.repairs.length > 0 ? [dismissible(own.repairs.join(' '))] : [];
  readOnly = own?.newer ?? false;
  if (link === null) return { open, notices };
  if ('fault' in link)
    return { open, notices: [dismissible(`${link.fault} What you had is shown instead.`), ...notices] };
  return visited(link.saved, location.hash);
}

/** A link opens as a copy; what the reader had stays where it is. */
function visited(saved: unknown, hash: string): { readonly open: Open; readonly notices: readonly Notice[] } {
  const { document, repairs, newer } = mended(saved);
  readOnly = newer;
  visit = hash;
  const edited = slots.visit(hash);
  const open = edited
    ? { document: mended(edited.document).document, opened: document }
    : { document, opened: document };
  const said = [
    'This is a copy from a link. What you had before is kept.',
    ...repairs,
    ...(edited ? [] : whatChanged(catalogue, document, release)),
  ].join(' ');
  return {
    open,
    notices: [
      {
        text: said,
        actions: [
          { label: 'Keep as mine', act: keep },
          { label: 'Back to mine', act: back },
        ],
      },
    ],
  };
}

function dismissible(text: string): Notice {
  const notice: Notice = {
    text,
    actions: [{ label: 'Dismiss', act: () => (page.notices = page.notices.filter((n) => n !== notice)) }],
  };
  return notice;
}
/** The copy becomes the reader's own; what that was is put aside, not away. */
function keep(): void {
  visit = null;
  readOnly = false;
  history.replaceState(null, '', location.pathname + location.search);
  putAside();
  save();
}
function back(): void {
  visit = null;
  history.replaceState(null, '', location.pathname + location.search);
  const mine = slots.mine();
  const own = mine ? mended(mine.document) : null;
  readOnly = own?.newer ?? false;
  store.open(own?.document ?? example, 'Went back to my notebook');
  page.notices = [];
}
/** Keeps what is in the reader's slot within reach before something else goes there. */
function putAside(): void {
  const aside = slots.putAside();
  if (!aside) {
    page.notices = [];
    return;
  }
  const notice: Notice = {
    text: 'Your notebook from before is put aside.',
    actions: [
      {
        label: 'Get it back',
        act: () => {
          store.open(mended(aside.document).document, 'Got my notebook back');
          page.notices = page.notices.filter((n) => n !== notice);
        },
      },
      { label: 'Dismiss', act: () => (page.notices = page.notices.filter((n) => n !== notice)) },
    ],
  };
  page.notices = [notice];
}

function save(): void {
  if (readOnly) return;
  const open: Open = { document: store.document, opened: store.opened };
  const fault = visit === null ? slots.save(open) : slots.saveVisit(visit, open);
  page.saved = fault ?? (visit === null ? 'Saved in this browser.' : 'This copy is kept until its tab is closed.');
}
let saving = 0;
store.watchAll(() => {
  clearTimeout(saving);
  saving = window.setTimeout(save, 400);
  if (page.sharing) void share();
  afterFrame(mark);
});
addEventListener('pagehide', save);

/** Tells tests what is painted, and when nothing is left to come. */
function mark(): void {
  const { dataset } = document.documentElement;
  dataset.settled = String(store.revision);
  if (!store.live.busy && sweeping === 0 && loading === 0) dataset.complete = String(store.revision);
}

async function share(): Promise<void> {
  const document: Document = { ...store.document, answers: answersOf(store, release) };
  page.fragment = await pack(document, example);
}
page.addEventListener('opened', (event) => slots.saveOpened((event as CustomEvent<string>).detail.split(' ')));
page.addEventListener('share', () => void share());
page.addEventListener('start', (event) => {
  const chosen = scenarios[(event as CustomEvent<string>).detail];
  if (!chosen) return;
  if (visit === null) putAside();
  store.open(chosen, `Started from ${chosen.title}`);
  scrollTo(0, 0);
});
page.addEventListener('save-file', () => {
  const text = JSON.stringify({ ...store.document, answers: answersOf(store, release) }, null, 2);
  const link = Object.assign(document.createElement('a'), {
    href: URL.createObjectURL(new Blob([text], { type: 'application/json' })),
    download: `${store.document.title.toLowerCase().replace(/[^a-z0-9]+/g, '-') || 'notebook'}.json`,
  });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
});
page.addEventListener('open-file', () => {
  const picker = Object.assign(document.createElement('input'), { type: 'file', accept: '.json,application/json' });
  picker.addEventListener('change', () => void openFile(picker.files?.[0]));
  picker.click();
});
async function openFile(file: File | undefined): Promise<void> {
  if (!file) return;
  try {
    const saved: unknown = JSON.parse(await file.text());
    if (visit === null) putAside();
    const { document, repairs, newer } = mended(saved);
    readOnly = newer;
    store.open(document, `Opened ${file.name}`);
    if (repairs.length > 0) page.notices = [dismissible(repairs.join(' ')), ...page.notices];
  } catch {
    page.notices = [dismissible(`“${file.name}” is not a notebook file.`), ...page.notices];
  }
}
addEventListener('hashchange', () => {
  if (!/^#\d+\./.test(location.hash) || location.hash === visit) return;
  void unpack(location.hash).then((link) => {
    if (link === null) return;
    if ('fault' in link) {
      page.notices = [dismissible(link.fault), ...page.notices];
      return;
    }
    save();
    const { open, notices } = visited(link.saved, location.hash);
    store.open(open.document, 'Opened a link');
    page.notices = notices;
  });
});

function storageOf(name: 'localStorage' | 'sessionStorage'): Storage | null {
  try {
    return window[name];
  } catch {
    return null; // private windows and some settings refuse it
  }
}

document.body.append(page);
afterFrame(mark);
// Figures load behind the first readouts; `mark` waits for them.
loading++;
afterFrame(() => {
  void import('./views/figures.ts').then(() => {
    loading--;
    afterFrame(mark);
  });
});
