/**
 * The end of a test run: every skipped test with its reason, then one plain line with the three counts.
 *
 * A test is skipped by name only: the reason stands in the name of the test or of the group it is in, or was
 * given to `skip()`. With `SILLPLATE_NO_SKIPS=1` a run that skipped anything has failed.
 */
import type { Reporter, TestCase, TestModule, TestRunEndReason } from 'vitest/node';

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** The three counts; a file that could not be loaded is a failure of its own. */
export function countTests(modules: readonly TestModule[], unhandled: number): Counts {
  const counts = { passed: 0, failed: unhandled, skipped: 0 };
  for (const module of modules) {
    const tests = [...module.children.allTests()];
    counts.failed += module.errors().length;
    for (const test of tests) {
      const { state } = test.result();
      if (state === 'passed') counts.passed += 1;
      else if (state === 'skipped') counts.skipped += 1;
      else counts.failed += 1;
    }
  }
  return counts;
}

export const closingLine = ({ passed, failed, skipped }: Counts): string =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** Whether the run counts as failed for what it left out. */
export const mustFail = (counts: Counts, noSkips: boolean): boolean => noSkips && counts.skipped > 0;

function skippedLine(test: TestCase): string {
  const result = test.result();
  const note = result.state === 'skipped' && result.note !== undefined ? `: ${result.note}` : '';
  return `  skipped  ${test.module.relativeModuleId} > ${test.fullName}${note}`;
}

export default class NoSilentSkips implements Reporter {
  onTestRunEnd(
    modules: readonly TestModule[],
    unhandled: readonly unknown[],
    reason: TestRunEndReason,
  ): void {
    const counted = countTests(modules, unhandled.length);
    // Something went wrong outside every test: the preparation of a project, for one.
    const outside = counted.failed === 0 && reason !== 'passed' ? 1 : 0;
    const counts = { ...counted, failed: counted.failed + outside };
    const skipped = modules.flatMap((module) => [...module.children.allTests('skipped')]);
    const noSkips = process.env.SILLPLATE_NO_SKIPS === '1';
    const lines = skipped.map(skippedLine);
    if (mustFail(counts, noSkips)) {
      lines.push('  no test may be skipped here (SILLPLATE_NO_SKIPS=1)');
      process.exitCode = 1;
    }
    // After the summary of the usual reporter, which writes on the same occasion.
    setImmediate(() => process.stdout.write(`${[...lines, closingLine(counts)].join('\n')}\n`));
  }
}
