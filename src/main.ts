import { first } from '../cells/opening/first.ts';
import example from '../scenarios/edge-of-premium.json' with { type: 'json' };
import type { Document } from './notebook/document.ts';
import { glance } from './notebook/glance.ts';
import { Slots } from './notebook/slots.ts';
import { Store } from './notebook/store.ts';
import { NotebookPage } from './views/notebook-page.ts';
import './views/look.css';

// The first readouts, from the few cells they need; all else is loaded behind them and takes over.
const slots = new Slots(storageOf('localStorage'), storageOf('sessionStorage'));
const at = { catalogue: first, example: example as unknown as Document, slots };
const seen = await glance(location.hash, at);
const page = Object.assign(new NotebookPage(), {
  store: new Store({ catalogue: first, open: { document: seen, opened: seen } }),
});
document.body.append(page);
const { takeOver } = await import('./whole.ts');
await takeOver(page, at);

function storageOf(name: 'localStorage' | 'sessionStorage'): Storage | null {
  try {
    return window[name];
  } catch {
    return null; // private windows and some settings refuse it
  }
}
