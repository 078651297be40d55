import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Answer, cams, edge, evaluate, folder, inCheckout, isAbout, run } from './command.ts';

inCheckout();

describe('--list', () => {
  it('names every cell with its role, kind, unit and chapter, chapter by chapter', async () => {
    const { code, out } = await run(['--list']);
    expect(code).toBe(0);
    const list = JSON.parse(out) as readonly Record<string, string>[];
    expect(list.find((c) => c.id === 'bore')).toEqual({
      id: 'bore',
      role: 'input',
      kind: 'scalar',
      unit: 'in',
      chapter: 'block',
    });
    expect(list.find((c) => c.id === 'pistonTravel')).toMatchObject({
      role: 'result',
      kind: 'curve',
      unit: 'in',
      xUnit: '°',
    });
    expect(list.find((c) => c.id === 'fuelVerdict')).toMatchObject({
      role: 'result',
      kind: 'verdict',
      chapter: 'fuel',
    });
    expect([...new Set(list.map((c) => c.chapter))].slice(0, 6)).toEqual([
      'block',
      'chamber',
      'cam',
      'compression',
      'air',
      'fuel',
    ]);
    const si = JSON.parse((await run(['--list', '--units', 'si'])).out) as readonly Record<string, string>[];
    expect(si.find((c) => c.id === 'bore')!.unit).toBe('mm');
    // All of them can be asked for.
    const ids = list.map((c) => c.id!);
    expect(Object.keys(await evaluate(edge, '--get', ids.join(',')))).toEqual(ids);
  });
});

describe('a call that cannot be answered', () => {
  it.concurrent.each<readonly [string, readonly string[], RegExp]>([
    ['no words at all', [], /Usage: evaluate FILE\.json/],
    ['no file', ['--get', 'bore'], /Name one notebook file/],
    ['two files', [edge, cams, '--get', 'bore'], /Name one notebook file/],
    ['nothing asked for', [edge], /--get/],
    ['an option without its value', [edge, '--get'], /--get needs a value/],
    ['an unknown option', [edge, '--give', 'bore'], /--give is not known/],
    ['an unknown id', [edge, '--get', 'boar'], /no "boar"/],
    ['an id of every object', [edge, '--get', '__proto__'], /no "__proto__"/],
    ['an unknown id to set', [edge, '--set', 'boar=4', '--get', 'bore'], /no "boar"/],
    ['no value to set', [edge, '--set', 'bore', '--get', 'bore'], /Write "bore" as ID=VALUE/],
    ['junk to set', [edge, '--set', 'bore=wide', '--get', 'bore'], /^bore: .*wide/],
    ['a bad unit', [edge, '--set', 'bore=3psi', '--get', 'bore'], /^bore: That unit does not fit here/],
    ['a choice that is none', [edge, '--set', 'tappet=soft', '--get', 'bore'], /^tappet: .*hydraulic, solid/],
    ['a computed value to set', [edge, '--set', 'dynamicRatio=8', '--get', 'bore'], /--hold dynamicRatio=/],
    ['an input to hold', [edge, '--hold', 'bore=4', '--get', 'bore'], /--set bore=/],
    ['units that are none', [edge, '--units', 'metric', '--get', 'bore'], /us or si/],
    ['an unknown variant', [cams, '--variant', 'odd', '--get', 'bore'], /no variant "odd".*early, late/],
    ['a variant where there are none', [edge, '--variant', 'odd', '--get', 'bore'], /no variant "odd".*none/],
    ['a file that is not there', ['nowhere.json', '--get', 'bore'], /"nowhere\.json" cannot be read/],
    ['a folder', ['scenarios', '--get', 'bore'], /"scenarios" cannot be read/],
    ['a file that is not JSON', ['src/evaluate.mjs', '--get', 'bore'], /"src\/evaluate\.mjs" is not JSON/],
    ['a sweep without its step', [edge, '--sweep', 'bore=4..5', '--get', 'bore'], /ID=FROM\.\.TO\/STEP/],
    ['a sweep without its end', [edge, '--sweep', 'bore=4/1', '--get', 'bore'], /ID=FROM\.\.TO\/STEP/],
    ['a step of nothing', [edge, '--sweep', 'bore=4..5/0', '--get', 'bore'], /step of a sweep is a figure above zero/],
    ['a step backward', [edge, '--sweep', 'bore=4..5/-1', '--get', 'bore'], /step of a sweep is a figure above zero/],
    ['a step of junk', [edge, '--sweep', 'bore=4..5/x', '--get', 'bore'], /step of a sweep is a figure above zero/],
    ['a step without end', [edge, '--sweep', 'bore=4..5/Infinity', '--get', 'bore'], /step of a sweep/],
    ['an end of junk', [edge, '--sweep', 'bore=4..wide/1', '--get', 'bore'], /^bore: .*wide/],
    ['a sweep of nothing known', [edge, '--sweep', 'boar=4..5/1', '--get', 'bore'], /no "boar"/],
    ['a sweep of a choice', [edge, '--sweep', 'tappet=4..5/1', '--get', 'bore'], /"tappet" is not a figure/],
    ['a sweep of very many points', [edge, '--sweep', 'bore=4..5/0.00001', '--get', 'bore'], /at most 10000 points/],
  ])('%s: one line on the error output, and exit code 2', async (_, words, line) => {
    const { code, out, err } = await run(words);
    expect(out).toBe('');
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(err).toMatch(line);
    expect(err).not.toMatch(/\bat .*\.m?[jt]s\b/); // no trace of a crash
    expect(code).toBe(2);
  });
});

describe('files of one’s own', () => {
  const file = (name: string, text: string): string => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };

  it('may say as little as what differs', async () => {
    const { code, out } = await run([
      file('bare.json', '{"version":1,"base":1,"inputs":{"cylinders":4}}'),
      '--get',
      'displacement',
    ]);
    expect(code).toBe(0);
    isAbout((JSON.parse(out) as Record<string, Answer>).displacement!.value, '184.2'); // half of 368.4
  });

  it('that are spoiled in parts are read without them, with a line for each, and the JSON stays pure', async () => {
    const { code, out, err } = await run([
      file('spoiled.json', '{"version":1,"base":1,"inputs":{"bore":"wide","boar":3}}'),
      '--get',
      'bore',
    ]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({ bore: { value: 4.07, unit: 'in', state: 'ready' } });
    expect(err.trim().split('\n')).toHaveLength(2);
    expect(err).toMatch(/Bore could not be read/);
    expect(err).toMatch(/“boar”/);
  });

  it.each(['[1,2]', '"bore"', 'null', '12'])('that hold %s are no notebook', async (text) => {
    const { code, out, err } = await run([file('other.json', text), '--get', 'bore']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/is not a notebook\.\n$/);
  });
});
