const written = new WeakMap<Element, string>();

/** Writes markup into an element, unless it is what stands there already: most of a figure stays as a hand moves. */
export function rewrite(place: Element, markup: string): void {
  if (written.get(place) === markup) return;
  written.set(place, markup);
  place.innerHTML = markup;
}
