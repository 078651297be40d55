import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');

/** Which layer may import which; every layer may import itself. A layer is a folder under src, a file there, or the cells. */
const layers: Readonly<Record<string, readonly string[] | 'everything'>> = {
  'src/references.ts': [],
  'src/numerics': [],
  'src/units': [],
  'src/offline': [],
  'src/physics': ['src/numerics'],
  'src/formula': ['src/units', 'src/numerics'],
  'src/graph': ['src/units', 'src/numerics', 'src/references.ts', 'src/formula'],
  'src/plots': ['src/units', 'src/graph'],
  cells: ['src/physics', 'src/graph', 'src/units', 'src/numerics', 'src/references.ts'],
  'src/imports': ['src/units', 'src/numerics', 'src/formula'],
  'src/notebook': ['src/graph', 'src/units', 'src/formula'],
  'src/workers': ['src/graph', 'cells', 'src/formula'],
  'src/exports': ['src/plots', 'src/graph', 'src/units'],
  'src/views': ['src/notebook', 'src/plots', 'src/imports', 'src/exports', 'src/formula', 'src/graph', 'src/units'],
  'src/main.ts': 'everything',
  'src/whole.ts': 'everything',
  'src/headless.ts': 'everything',
};

const layerOf = (file: string): string | undefined =>
  Object.keys(layers).find((layer) => file === layer || file.startsWith(`${layer}/`));

/** What a file imports of ours, from its own folder or another, types too: static, dynamic, a worker's address. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8');
  const named = ts.preProcessFile(text, true, true).importedFiles.map((found) => found.fileName);
  const addresses = [...text.matchAll(/new URL\(\s*['"](\.[^'"]*\.ts)['"]/g)].map((found) => found[1]!);
  const patterns = [...text.matchAll(/import\.meta\.glob[^(]*\(\s*\[?\s*['"](\.[^'"]*)['"]/g)].flatMap((found) =>
    files.filter((other) => matches(other, join(dirname(file), found[1]!))).map((other) => `./${within(file, other)}`),
  );
  return [...new Set([...named, ...addresses, ...patterns])]
    .filter((name) => name.startsWith('.'))
    .map((name) => normalize(join(dirname(file), name.replace(/[?#].*$/, ''))));
}
const within = (file: string, other: string): string => other.slice(dirname(file).length + 1);
const matches = (file: string, pattern: string): boolean =>
  new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`).test(file);

const files = ['src', 'cells']
  .flatMap((folder) => readdirSync(join(root, folder), { recursive: true }).map((name) => join(folder, String(name))))
  .filter((name) => name.endsWith('.ts'))
  .toSorted();
const imports = new Map(files.map((file) => [file, importsOf(file)]));

it('finds the files and what they import', () => {
  expect(files.length).toBeGreaterThan(150);
  expect(imports.get('src/notebook/base.ts')).toContain('src/notebook/bases/1.json');
  expect(imports.get('src/workers/slow.worker.ts')).toContain('cells/index.ts');
  expect(imports.get('cells/index.ts')).toContain('cells/cam/intake-closing.ts');
});

describe('the layers', () => {
  it('hold every file', () => expect(files.filter((file) => layerOf(file) === undefined)).toEqual([]));

  it('import only what lies under them', () => {
    const wrong = files.flatMap((file) => {
      const mine = layerOf(file)!;
      const may = layers[mine]!;
      if (may === 'everything') return [];
      return imports
        .get(file)!
        .filter((other) => {
          const theirs = layerOf(other);
          return theirs === undefined || (theirs !== mine && !may.includes(theirs));
        })
        .map((other) => `${file} imports ${other}`);
    });
    expect(wrong).toEqual([]);
  });

  it('keep packages out of what is only arithmetic', () => {
    const bare = ['src/numerics', 'src/units', 'src/physics', 'src/formula', 'src/graph', 'src/references.ts', 'cells'];
    const known = ['src/graph/draws.ts imports d3-random']; // a page that draws nothing never loads it
    const wrong = files
      .filter((file) => bare.includes(layerOf(file)!))
      .flatMap((file) =>
        ts
          .preProcessFile(readFileSync(join(root, file), 'utf8'), true, true)
          .importedFiles.map((found) => found.fileName)
          .filter((name) => !name.startsWith('.'))
          .map((name) => `${file} imports ${name}`),
      );
    expect(wrong.toSorted()).toEqual(known);
  });
});

it('no files import one another in a ring, types included', () => expect(ringsIn(imports)).toEqual([]));

it('a ring would be found', () => {
  const ring = new Map([
    ['a', ['b']],
    ['b', ['c', 'd']],
    ['c', []],
    ['d', ['a']],
  ]);
  expect(ringsIn(ring)).toEqual(['a > b > d > a']);
});

/** Each ring once, as the way round. */
function ringsIn(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const rings: string[] = [];
  const done = new Set<string>();
  const way: string[] = [];
  const visit = (file: string): void => {
    const at = way.indexOf(file);
    if (at >= 0) {
      rings.push([...way.slice(at), file].join(' > '));
      return;
    }
    if (done.has(file)) return;
    way.push(file);
    for (const other of graph.get(file) ?? []) visit(other);
    way.pop();
    done.add(file);
  };
  for (const file of graph.keys()) visit(file);
  return rings;
}

it('no file passes on what another one exports, save the index of the cells', () => {
  const passing = files.filter((file) => {
    const source = ts.createSourceFile(file, readFileSync(join(root, file), 'utf8'), ts.ScriptTarget.ESNext);
    const imported = new Set<string>();
    for (const statement of source.statements)
      if (ts.isImportDeclaration(statement)) {
        const bindings = statement.importClause?.namedBindings;
        if (bindings && ts.isNamedImports(bindings)) for (const each of bindings.elements) imported.add(each.name.text);
      }
    return source.statements.some(
      (statement) =>
        ts.isExportDeclaration(statement) &&
        (statement.moduleSpecifier !== undefined ||
          (statement.exportClause !== undefined &&
            ts.isNamedExports(statement.exportClause) &&
            statement.exportClause.elements.some((each) => imported.has((each.propertyName ?? each.name).text)))),
    );
  });
  expect(passing.filter((file) => file !== 'cells/index.ts')).toEqual([]);
});

it('exports have names: there is no default export', () => {
  const nameless = files.filter((file) => /^export default /m.test(readFileSync(join(root, file), 'utf8')));
  expect(nameless).toEqual([]);
});

it('the top of the project holds its few files and folders and nothing else', () => {
  const ignored = readFileSync(join(root, '.gitignore'), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.replace(/\/$/, ''));
  const top = readdirSync(root).filter((name) => !ignored.some((pattern) => matches(name, pattern)));
  const known = [
    'README.md',
    'DEVELOPERS.md',
    'LICENSE',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'vite.config.ts',
    'src',
    'cells',
    'scenarios',
    'tests',
  ];
  expect(top).toContain('package.json');
  expect(top.filter((name) => !name.startsWith('.') && !known.includes(name))).toEqual([]);
});
