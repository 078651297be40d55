import { writeFileSync } from 'node:fs';
import type { Reporter, TestCase, TestModule } from 'vitest/node';

const shown = 10;

/** Prints the slowest tests, and writes what was counted to the file named in VITEST_COUNTS. */
export default class Counts implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const tests = modules.flatMap((m) => [...m.children.allTests()]);
    const broken = modules.filter((m) => m.errors().length > 0).length;
    const of = (state: string): number => tests.filter((t) => t.result().state === state).length;
    const time = (t: TestCase): number => t.diagnostic()?.duration ?? 0;
    const slowest = tests.toSorted((a, b) => time(b) - time(a)).slice(0, shown);
    process.stdout.write(
      `\nThe ${slowest.length} slowest tests\n${slowest.map((t) => `${(time(t) / 1000).toFixed(2).padStart(7)} s  ${t.module.relativeModuleId} > ${t.fullName}`).join('\n')}\n`,
    );
    const file = process.env.VITEST_COUNTS;
    if (file) writeFileSync(file, JSON.stringify({ passed: of('passed'), failed: of('failed') + broken }));
  }
}
