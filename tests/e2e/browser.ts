import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';

const modules = join(dirname(fileURLToPath(import.meta.url)), '../../node_modules');

/** Places where a Chromium may be installed already. */
const installed: Readonly<Record<string, readonly string[]>> = {
  linux: ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'].map((name) => `/usr/bin/${name}`),
  darwin: ['Google Chrome', 'Chromium'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`),
  win32: [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
    .filter((folder) => folder !== undefined)
    .map((folder) => join(folder, 'Google/Chrome/Application/chrome.exe')),
};

/**
 * The Chromium that ships inside an npm package (Linux, x64), unpacked once beside the other modules, so that
 * installing the packages is all a test needs. Its own launcher is not used.
 */
function packaged(): string | undefined {
  const shipped = join(modules, '@sparticuz/chromium');
  if (process.platform !== 'linux' || process.arch !== 'x64' || !existsSync(shipped)) return undefined;
  const { version } = JSON.parse(readFileSync(join(shipped, 'package.json'), 'utf8')) as { version: string };
  const home = join(modules, '.cache', `chromium-${version}`);
  const file = join(home, 'chromium');
  if (existsSync(file)) return file;
  const fresh = `${home}.${process.pid}`;
  const unpack = (name: string): Buffer => brotliDecompressSync(readFileSync(join(shipped, 'bin', name)));
  mkdirSync(fresh, { recursive: true });
  writeFileSync(join(fresh, 'chromium'), unpack('chromium.br'), { mode: 0o755 });
  for (const name of ['al2023', 'fonts', 'swiftshader'])
    execFileSync('tar', ['-x', '-C', fresh], { input: unpack(`${name}.tar.br`) });
  const fonts = join(home, 'fonts'); // the configuration that ships names other folders
  writeFileSync(
    join(fresh, 'fonts.conf'),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${fonts}</dir><cachedir>${home}/fonts-cache</cachedir></fontconfig>\n`,
  );
  try {
    renameSync(fresh, home);
  } catch {
    rmSync(fresh, { recursive: true, force: true }); // another run was first
  }
  return file;
}

/** What the packaged Chromium needs to find the libraries and fonts that ship beside it, where the machine has none. */
function environment(path: string): NodeJS.ProcessEnv {
  const home = dirname(path);
  if (!existsSync(join(home, 'lib'))) return process.env;
  const has = (...files: readonly string[]): boolean => files.some((file) => existsSync(file));
  const libraries = has('/usr/lib/x86_64-linux-gnu/libnss3.so', '/usr/lib64/libnss3.so', '/usr/lib/libnss3.so');
  return {
    ...process.env,
    ...(libraries ? {} : { LD_LIBRARY_PATH: join(home, 'lib') }),
    ...(has('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_FILE: join(home, 'fonts.conf') }),
  };
}

function find(): string {
  const given = process.env.BROWSER_PATH;
  if (given) return given;
  const found =
    [chromium.executablePath(), ...(installed[process.platform] ?? [])].find((path) => path && existsSync(path)) ??
    packaged();
  if (!found) throw new Error('No Chromium was found. Install Chrome, or set BROWSER_PATH to one.');
  return found;
}

/** Starts a headless Chromium: one named in BROWSER_PATH, an installed one, or the packaged one. */
export function launch(): Promise<Browser> {
  const path = find();
  return chromium.launch({
    executablePath: path,
    env: environment(path),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}
