import { chapters, opening } from '../../cells/index.ts';
import type { ChapterFigure } from '../../src/graph/chapter.ts';
import type { Store } from '../../src/notebook/store.ts';
import type { Drawing } from '../../src/plots/drawing.ts';
import { forms } from '../../src/plots/forms.ts';
import { laterForms } from '../../src/plots/later-forms.ts';
import type { System } from '../../src/units/quantity.ts';
import { opened, quick, scenario, scenarios, valueOf } from '../notebook/notebooks.ts';

/** Every drawn figure of what is computed at once: the plate of the opening and those of the chapters. */
export const figures: readonly ChapterFigure[] = [opening.plate, ...chapters.flatMap((c) => c.figures ?? [])].filter(
  ({ from }) => Object.values(from).every((cell) => quick.includes(cell)),
);

/** What a figure's form is given. */
export function valuesOf(store: Store, figure: ChapterFigure): Record<string, unknown> {
  const given = Object.entries(figure.from).map(([name, cell]) => [name, valueOf(store, cell.id)] as const);
  const { plusMinus } = figure;
  return {
    ...Object.fromEntries(given),
    ...(plusMinus ? { plusMinus: store.spread(plusMinus)?.plusMinus ?? 0 } : {}),
  };
}
export const drawn = (form: string, values: object, width = 700, system: System = 'us', cursor?: number): Drawing =>
  (forms[form] ?? laterForms[form]!)(values as never, {
    width,
    system,
    id: 'test',
    ...(cursor === undefined ? {} : { cursor }),
  });

/** The starting points, and each variant of those that have some. */
export const engines: readonly (readonly [name: string, store: () => Store])[] = Object.keys(scenarios).flatMap(
  (name) => {
    const { variants } = scenario(name);
    return variants.length === 0
      ? [[name, () => opened(scenario(name))] as const]
      : variants.map((v) => [`${name}, ${v.name}`, () => opened(scenario(name), v.id)] as const);
  },
);
