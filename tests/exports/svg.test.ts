import { describe, expect, it } from 'vitest';
import { standalone } from '../../src/exports/svg.ts';
import { drawn, engines, figures, valuesOf } from '../plots/drawn.ts';
import { elementsOf } from '../plots/markup.ts';

const tokens: Readonly<Record<string, string>> = {
  ink: '#18202a',
  paper: '#f8f9f6',
  hand: '#2b3db0',
  'ink-2': '#434d57',
};
const token = (name: string): string => tokens[name] ?? '#123456';
const picture = (body: string, title = 'A figure'): string =>
  standalone({ width: 700, height: 300, body, title }, token);

describe('a picture that stands by itself', () => {
  it('has its size, its name space and a ground', () => {
    const [svg, , , ground] = elementsOf(picture('<path d="M0 0"/>'));
    expect(svg).toMatchObject({
      name: 'svg',
      attributes: { xmlns: 'http://www.w3.org/2000/svg', width: '700', height: '300', viewBox: '0 0 700 300' },
    });
    expect(ground).toMatchObject({ name: 'rect', attributes: { width: '100%', height: '100%', fill: '#f8f9f6' } });
  });
  it('has a title, in which nothing is markup', () => {
    const titles = elementsOf(picture('', 'Ratio <b> & "closing"')).filter((e) => e.name === 'title');
    expect(titles.map((e) => e.text)).toEqual(['Ratio <b> & "closing"']);
  });
  it('has the colors of where it stood in place of their names', () => {
    const svg = picture('<path stroke="var(--hand)" style="fill:var(--ink);stroke:var(--paper)"/>');
    expect(elementsOf(svg).at(-1)!.attributes).toEqual({ stroke: '#2b3db0', style: 'fill:#18202a;stroke:#f8f9f6' });
  });
  it('draws nothing in a color that has no name here', () => {
    const svg = standalone({ width: 1, height: 1, body: '<path fill="var(--gone)"/>', title: '' }, () => '');
    expect(elementsOf(svg).at(-1)!.attributes.fill).toBe('none');
  });

  const [, open] = engines[0]!;
  it.each(figures.map((f) => [f.form, f] as const))('needs nothing from the page: %s', (form, figure) => {
    const svg = picture(drawn(form, valuesOf(open(), figure)).body);
    const elements = elementsOf(svg);
    expect(svg).not.toMatch(/var\(|url\((?!#)|href/);
    const style = elements.find((e) => e.name === 'style')!.text;
    const classes = elements.flatMap((e) => e.attributes.class?.split(' ') ?? []).filter((name) => name !== '');
    for (const name of classes) expect(style).toContain(`.${name}{`);
    const ids = elements.flatMap((e) => e.attributes.id ?? []);
    for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
  });
});
