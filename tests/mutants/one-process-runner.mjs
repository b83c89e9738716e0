/**
 * A test runner for Stryker that stays in one process: program and tests are loaded once, a mutant is a switch. Stryker
 * plans, keeps the time and reports; what it copied is only read for the files that hold mutants.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { DryRunStatus, MutantRunStatus, TestStatus } from '@stryker-mutator/api/test-runner';
import { isInSample } from './sample.mjs';
import { Session } from './session.mjs';
import { testFiles } from './which-tests.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));

class OneProcessRunner {
  /** @param {import('@stryker-mutator/api/logging').Logger} log */
  constructor(log) {
    this.log = log;
    this.sandbox = process.cwd();
    this.instrumented = instrumentedFiles(this.sandbox);
    this.session = new Session(root, testFiles(root, [...this.instrumented.keys()]), this.instrumented);
    /** What the first process learnt, for those that come behind it. */
    this.notes = path.join(this.sandbox, 'learnt.json');
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    process.chdir(root);
    if (existsSync(this.notes)) await this.session.resume(JSON.parse(readFileSync(this.notes, 'utf8')));
    else {
      const learnt = await this.session.learn();
      writeFileSync(this.notes, JSON.stringify(learnt));
      const failing = Object.keys(learnt.failed);
      if (failing.length > 0)
        this.log.warn('left out, as they fail with the program as it is: %s', failing.join(' | '));
    }
  }

  async dispose() {
    const { leaks } = this.session;
    if (leaks > 0) this.log.warn('after the mutants of %d files a test failed with none of them on', leaks);
  }

  /** @returns {Promise<import('@stryker-mutator/api/test-runner').CompleteDryRunResult>} */
  async dryRun() {
    const { tests = [], fixed = {} } = this.session.learnt ?? {};
    return {
      status: DryRunStatus.Complete,
      tests: tests.map(({ id, name, ms }) => ({
        id,
        name,
        timeSpentMs: ms,
        status: /** @type {const} */ (TestStatus.Success),
      })),
      mutantCoverage: { static: fixed, perTest: Object.fromEntries(this.session.coverage()) },
    };
  }

  /**
   * @param {import('@stryker-mutator/api/test-runner').MutantRunOptions} options
   * @returns {Promise<import('@stryker-mutator/api/test-runner').MutantRunResult>}
   */
  async mutantRun({ activeMutant, sandboxFileName, testFilter, mutantActivation, hitLimit }) {
    if (!isInSample(activeMutant.id))
      return { status: MutantRunStatus.Error, errorMessage: 'not in the sample' };
    const fate = await this.session.run({
      id: activeMutant.id,
      file: path.join(root, path.relative(this.sandbox, sandboxFileName)),
      atLoad: mutantActivation === 'static',
      tests: testFilter,
      hitLimit,
    });
    if (fate.kind === 'survived') return { status: MutantRunStatus.Survived, nrOfTests: fate.ran };
    if (fate.kind === 'endless') return { status: MutantRunStatus.Timeout };
    return {
      status: MutantRunStatus.Killed,
      killedBy: fate.by === '' ? [] : [fate.by],
      failureMessage: fate.message,
      nrOfTests: fate.ran,
    };
  }
}

/** @param {string} sandbox @returns {Map<string, string>} text by the project's own file */
function instrumentedFiles(sandbox) {
  const folder = path.join(sandbox, 'src/tally');
  return new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .sort()
      .map(
        (name) =>
          /** @type {const} */ ([
            path.join(root, 'src/tally', name),
            readFileSync(path.join(folder, name), 'utf8'),
          ]),
      )
      .filter(([, text]) => text.includes('stryMutAct_9fa48')),
  );
}

/** @param {import('@stryker-mutator/api/logging').Logger} log */
const made = (log) => new OneProcessRunner(log);
made.inject = tokens(commonTokens.logger);

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'one-process', made)];
