/**
 * Runs in the reader's browser: a box that finds an answer or a statement by a reader's words, on any page of the packet.
 * Without it the pages are what they are.
 *
 * A plain script, and so are the two that it asks for when someone first goes to the box: the search, and what there is
 * to be found. It makes the box itself, so that a page has nothing dead in it. What is found is put in as text, never as
 * markup.
 */
(() => {
  const ENGINE = 'assets/search-engine.js';
  const DATA = 'search-data.js';
  /** More than these are for another question. */
  const MOST = 8;
  /** Letters of an answer. */
  const LONGEST = 280;
  const SAY_FAILED = 'The search could not be loaded.';
  const SAY_NOTHING = 'Nothing in this packet fits that.';

  interface Entry {
    readonly href: string;
    readonly title: string;
    readonly text: string;
    readonly known: string;
    readonly section: string;
  }
  type Find = (asked: string) => readonly { readonly entry: Entry }[];
  interface Handed {
    sillplateSearch?: { openSearch(entries: readonly Entry[], words: unknown): Find };
    sillplateSearchData?: { words: unknown; notKnown: string; entries: readonly Entry[] };
  }
  const handed = globalThis as Handed;

  const form = document.createElement('form');
  const field = document.createElement('input');
  const status = document.createElement('p');
  const list = document.createElement('ol');
  let loading: Promise<Find> | undefined;
  /** The question that is answered last: an earlier one that comes in late is dropped. */
  let asked = '';

  function make(): void {
    form.setAttribute('role', 'search');
    form.className = 'search';
    const label = document.createElement('label');
    label.htmlFor = 'search-field';
    label.textContent = 'Ask this packet';
    field.id = 'search-field';
    field.type = 'search';
    field.autocomplete = 'off';
    field.maxLength = 200;
    field.placeholder = 'how old is the roof';
    status.setAttribute('role', 'status');
    list.hidden = true;
    list.setAttribute('aria-label', 'Found');
    form.append(label, field, status, list);
    document.querySelector('body > header')?.after(form);
  }

  /** Both scripts, once, on first use. */
  const ready = (): Promise<Find> => {
    loading ??= Promise.all([script(ENGINE), script(DATA)]).then(() => {
      const { sillplateSearch: search, sillplateSearchData: data } = handed;
      if (search === undefined || data === undefined) throw new Error(SAY_FAILED);
      return search.openSearch(data.entries, data.words);
    });
    return loading;
  };

  const script = (address: string): Promise<void> =>
    new Promise((resolve, reject) => {
      const made = document.createElement('script');
      made.src = address;
      made.addEventListener('load', () => resolve());
      made.addEventListener('error', () => reject(new Error(SAY_FAILED)));
      document.head.append(made);
    });

  async function answer(): Promise<void> {
    const words = field.value.trim();
    asked = words;
    if (words === '') {
      close();
      return;
    }
    let find: Find;
    try {
      find = await ready();
    } catch {
      loading = undefined;
      status.textContent = SAY_FAILED;
      return;
    }
    if (asked === words) show(find(words).slice(0, MOST));
  }

  function show(found: readonly { readonly entry: Entry }[]): void {
    list.replaceChildren(...found.map(({ entry }) => item(entry)));
    list.hidden = found.length === 0;
    const count = found.length;
    status.replaceChildren(count === 0 ? `${SAY_NOTHING} ` : `${count} found`);
    const notKnown = handed.sillplateSearchData?.notKnown ?? '';
    if (count > 0 || notKnown === '') return;
    const way = document.createElement('a');
    way.href = notKnown;
    way.textContent = 'What is not known, and whom to ask';
    status.append(way);
  }

  function item({ href, title, text, known, section }: Entry): HTMLLIElement {
    const made = document.createElement('li');
    const link = document.createElement('a');
    link.href = href;
    link.textContent = title;
    const words = document.createElement('p');
    words.textContent = text === title ? '' : shortened(text);
    const behind = document.createElement('p');
    behind.className = 'from';
    behind.textContent = [known, section].filter((part) => part !== '').join(' · ');
    made.append(link, words, behind);
    return made;
  }

  /** Cut between words. */
  function shortened(text: string): string {
    if (text.length <= LONGEST) return text;
    const cut = text.slice(0, LONGEST);
    return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), 1))} …`;
  }

  function close(): void {
    list.hidden = true;
    list.replaceChildren();
    status.replaceChildren();
  }

  /** Up and down through the field and what was found. */
  function step(by: 1 | -1): void {
    const stops = [field, ...list.querySelectorAll('a')];
    const at = stops.indexOf(document.activeElement as HTMLInputElement);
    stops[Math.min(stops.length - 1, Math.max(0, at + by))]?.focus();
  }

  function listen(): void {
    // Fetched on the way to the first letter, so that it is there by then; a failure is told when something is asked.
    field.addEventListener('focus', () => ready().catch(() => {}), { once: true });
    field.addEventListener('input', () => void answer());
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      void answer().then(() => list.querySelector('a')?.focus());
    });
    form.addEventListener('keydown', (event) => {
      if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
        event.preventDefault();
        step(event.key === 'ArrowDown' ? 1 : -1);
      }
      if (event.key !== 'Escape' || (list.hidden && status.textContent === '')) return;
      event.preventDefault();
      asked = '';
      close();
      field.focus();
    });
    // What was found stands above the text: it goes before the page moves to where a link on the same page leads.
    list.addEventListener('click', (event) => {
      if (event.target instanceof HTMLAnchorElement && event.target.pathname === location.pathname) close();
    });
  }

  make();
  listen();
})();
