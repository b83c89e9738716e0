/** A terminal that remembers what it was told. */
export function quietly() {
  const said = { out: '', error: '' };
  const nothing = { step: () => undefined, photo: () => undefined, stop: () => undefined };
  const terminal = {
    out: (/** @type {string} */ text) => {
      said.out += text;
    },
    error: (/** @type {string} */ text) => {
      said.error += text;
    },
    colour: false,
    progress: () => nothing,
  };
  return { terminal, said };
}
