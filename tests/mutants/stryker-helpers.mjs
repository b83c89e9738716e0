/** The functions that Stryker writes into each file with mutants, replaced by quicker ones, or by ones that tell more. */

/** Stryker's helpers, in the file with its own switches, replaced. @param {string} source @param {string} helpers */
export function withHelpers(source, helpers) {
  const from = source.indexOf('function stryCov_9fa48(');
  const end = 'return isActive(id);\n}';
  const to = source.indexOf(end, from);
  if (from < 0 || to < 0)
    throw new Error('the instrumented file does not have the helpers that were looked for');
  return `${source.slice(0, from)}${helpers}${source.slice(to + end.length)}`;
}

/** As Stryker writes them they count each hit; while mutants run, nobody asks. */
export const SWITCHING = `const stryHit_9fa48 = globalThis.__sillplateHit, stryNow_9fa48 = globalThis.__stryker__;
function stryCov_9fa48() {}
function stryMutAct_9fa48(id) { return stryNow_9fa48.activeMutant === id && stryHit_9fa48(); }
`;
/** While it is found out who notices what. */
export const NOTICING = `function stryCov_9fa48(...ids) { __passed(ids); }
function stryMutAct_9fa48() { return false; }
`;
