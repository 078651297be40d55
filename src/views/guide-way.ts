import type { Trial } from '../notebook/guide.ts';
import type { Store } from '../notebook/store.ts';
import { lower } from './words.ts';

/** Where a trial sends the reader: the link's target, and its name. */
export function wayOf({ document, catalogue }: Store, trial: Trial): { readonly to: string; readonly name: string } {
  if (trial.is === 'field') return { to: trial.move.id, name: lower(trial.move.label) };
  if (trial.is === 'choose')
    return { to: 'top', name: document.variants.find((v) => v.id === trial.variant)?.name ?? '' };
  const { number } = catalogue.chapters.find((c) => c.id === trial.chapter)!;
  return { to: trial.figure, name: `the figure in chapter ${number}` };
}

/**
 * Takes the reader there: to a field or a button that is on the page already, or to a figure, whose chapter is opened as
 * its own button opens it. Any other field is left to the page, which follows the link. True where the reader is far from
 * the guide then.
 */
export function follow(event: Event, { document: notebook }: Store, trial: Trial): boolean {
  if (trial.is === 'open') {
    taken(event);
    void open(trial.chapter, trial.figure);
    return true;
  }
  const near =
    trial.is === 'field'
      ? document.getElementById(`three-${trial.move.id}`)
      : document.querySelectorAll<HTMLElement>('[aria-label="Variants"] button')[
          notebook.variants.findIndex((v) => v.id === trial.variant)
        ];
  if (!near) return true;
  taken(event);
  near.focus({ preventScroll: true });
  const field = near.closest('.field');
  // What is far down must not come to rest under the tools at the foot of the window.
  if (field) field.scrollIntoView({ block: 'nearest' });
  else if (!isInSight(near)) near.scrollIntoView({ block: 'center' });
  return false;
}
function isInSight(place: Element): boolean {
  const { top, bottom } = place.getBoundingClientRect();
  return top >= 64 && bottom <= innerHeight - 64; // between the strip and the tools
}
function taken(event: Event): void {
  event.preventDefault();
  event.stopPropagation();
}
async function open(chapter: string, figure: string): Promise<void> {
  document.querySelector<HTMLElement>(`#chapter-${chapter} button[aria-expanded='false']`)?.click();
  // The chapter draws itself a frame or two later.
  for (let frame = 0; frame < 30 && !document.getElementById(figure); frame++)
    await new Promise((done) => requestAnimationFrame(done));
  const place = document.getElementById(figure);
  if (!place) return;
  place.scrollIntoView({ block: 'start' });
  place.tabIndex = -1;
  place.focus({ preventScroll: true });
}
