import type { PlotOptions } from '@observablehq/plot';
import type { LineFigure } from './line-figure.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
  readonly marginLeft: number;
  readonly marginRight: number;
  readonly marginTop: number;
  readonly marginBottom: number;
}

/** Room for the widest figure on the left and the longest name on the right; less of both on a phone. */
export function sizeOf(figure: LineFigure, width: number, tall = true): Size {
  const narrow = width < 480;
  const names = Math.max(0, ...figure.lines.map((line) => line.name.length));
  const ticks = Math.max(...figure.y.domain.map((v) => figure.y.text(v).length));
  return {
    width,
    height: tall ? (narrow ? 360 : 430) : narrow ? 280 : 320,
    marginLeft: Math.max(34, ticks * 7.5 + 10),
    marginRight: Math.min(narrow ? 92 : 140, Math.max(16, names * 7.2 + 14)),
    marginTop: 30,
    marginBottom: 48,
  };
}

/** What Plot is asked to draw: the axes alone. Lines and bands are rewritten in place on its scales. */
export function axes(figure: LineFigure, size: Size, marks: AxisMarks): PlotOptions {
  const ticks = { x: size.width < 480 ? 4 : 6, y: 6 };
  const text = { fill: 'var(--ink-2)', fontSize: 13, tickPadding: 8 };
  return {
    ...size,
    style: { fontFamily: 'var(--sans)', fontSize: '13px', overflow: 'visible', background: 'none' },
    x: { type: 'linear', domain: [...figure.x.domain], ticks: ticks.x, label: null },
    y: { type: 'linear', domain: [...figure.y.domain], nice: true, ticks: ticks.y, label: null },
    marks: [
      marks.gridY({ ticks: ticks.y, stroke: 'var(--rule)', strokeOpacity: 1, strokeDasharray: '1 4' }),
      marks.axisX({
        ticks: ticks.x,
        tickSize: 5,
        color: 'var(--edge)',
        tickFormat: figure.x.text,
        label: null,
        ...text,
      }),
      marks.axisY({ ticks: ticks.y, tickSize: 0, tickFormat: figure.y.text, label: null, ...text }),
      marks.ruleY([figure.y.domain[0]], { stroke: 'none' }),
    ],
  };
}

/** The few of Plot's marks that are used; Plot itself is loaded when the first figure comes into view. */
export type AxisMarks = Pick<typeof import('@observablehq/plot'), 'gridY' | 'axisX' | 'axisY' | 'ruleY'>;
