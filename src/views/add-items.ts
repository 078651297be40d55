import type { Catalogue } from '../notebook/catalogue.ts';
import type { FigureItem, MapItem } from '../notebook/document.ts';
import { revolutionsPerMinute, si } from '../units/unit.ts';

/** A figure that any chapter can be given. */
export interface Addable {
  readonly type: FigureItem['type'];
  /** What is added, in words, with its article. */
  readonly name: string;
  /** What it shows until its sentence is changed. */
  readonly fresh: (id: string, catalogue: Catalogue) => FigureItem;
}
/** What "add-item" asks for, and after which chapter. */
export interface AddItem {
  readonly chapter: string;
  readonly add: Addable;
}

/** In the order of their buttons. */
export const addables: readonly Addable[] = [
  {
    type: 'sweep',
    name: 'a sweep',
    fresh: (id, { cells }) => {
      const [from, to] = cells.get('intakeClosing')!.slider!;
      return { id, type: 'sweep', read: 'dynamicRatio', vary: 'intakeClosing', from, to };
    },
  },
  {
    type: 'map',
    name: 'a map',
    fresh: (id, { cells }) => {
      const axis = (vary: string): MapItem['x'] => {
        const [from, to] = cells.get(vary)!.slider!;
        return { vary, from, to };
      };
      return { id, type: 'map', read: 'dynamicRatio', x: axis('intakeClosing'), y: axis('chamberVolume') };
    },
  },
  {
    type: 'draws',
    name: 'draws of every ±',
    fresh: (id) => ({ id, type: 'draws', read: 'dynamicRatio' }),
  },
  {
    type: 'best',
    name: 'the best of many',
    fresh: (id, { cells }) => ({
      id,
      type: 'best',
      aims: [
        {
          sense: 'most',
          read: 'torqueCurve',
          from: si(2500, revolutionsPerMinute),
          to: si(5000, revolutionsPerMinute),
        },
      ],
      vary: ['intakeClosing', 'chamberVolume'].map((each) => {
        const [from, to] = cells.get(each)!.slider!;
        return { id: each, from, to };
      }),
      limits: [
        { read: 'fuelVerdict', worst: 'borderline' },
        { read: 'intakeClearanceVerdict', worst: 'clear' },
        { read: 'exhaustClearanceVerdict', worst: 'clear' },
      ],
      budget: 120,
    }),
  },
];
