import { execFile } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { promisify } from 'node:util';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';

const root = join(import.meta.dirname, '../..');
/** A folder of this run alone, so that others may build meanwhile. */
const built = join(root, 'node_modules/.cache', `e2e-${process.pid}`);
/** Where on a host that serves other things as well the notebook might stand. */
const folder = '/some/path/';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built notebook, served from the top of a host. */
    readonly address: string;
    /** Where the built files lie. */
    readonly folder: string;
    /** The same files, served by another server from a folder. */
    readonly inFolder: string;
  }
}

const closes: (() => unknown)[] = [];

/** Builds the notebook as it is published, once for all these tests, and serves it twice. */
export async function setup(project: TestProject): Promise<void> {
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  await promisify(execFile)(
    process.execPath,
    [vite, 'build', '--outDir', built, '--emptyOutDir', '--logLevel', 'warn'],
    { cwd: root, env: { ...process.env, NODE_ENV: 'production' } }, // a runner of tests says "test" there
  );
  closes.push(() => rm(built, { recursive: true, force: true }));
  const server = await preview({
    root,
    configFile: false,
    logLevel: 'error',
    build: { outDir: built },
    preview: { host: '127.0.0.1', port: 0 },
  });
  closes.push(() => server.close());
  project.provide('folder', built);
  project.provide('address', server.resolvedUrls!.local[0]!);
  project.provide('inFolder', await serveInFolder());
}

export async function teardown(): Promise<void> {
  for (const close of closes.toReversed()) await close();
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
};

/** As plain as a host can be: files of one folder under one path, and nothing else. */
async function serveInFolder(): Promise<string> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url!, 'http://host');
    const name = pathname === folder ? 'index.html' : normalize(pathname.slice(folder.length));
    if (!pathname.startsWith(folder) || name.startsWith('..')) return void response.writeHead(404).end();
    readFile(join(built, name)).then(
      (text) =>
        response.writeHead(200, { 'content-type': types[extname(name)] ?? 'application/octet-stream' }).end(text),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  closes.push(() => {
    server.closeAllConnections();
    return new Promise((closed) => server.close(closed));
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}${folder}`;
}
