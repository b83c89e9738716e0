/**
 * Finds the programs that the outside checks compare with, before the tests run.
 *
 * On Debian and as root it installs what is missing; anywhere else it says which checks will be left out and
 * why. It never fails by itself: a check without its program is skipped by name, and the list at the end of
 * the run shows it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const starts = (command, ...words) =>
  spawnSync(command, words, { stdio: 'ignore', timeout: 60_000 }).error === undefined;
const succeeds = (command, ...words) =>
  spawnSync(command, words, { stdio: 'ignore', timeout: 60_000 }).status === 0;
/** `convert` is the name of other programs, too. */
const says = (word, command, ...words) =>
  spawnSync(command, words, { encoding: 'utf8', timeout: 60_000 }).stdout?.includes(word) === true;

/** A package for Python in a folder of its own, beside the packages of Node; the system keeps what it has. */
const python = new URL('../../node_modules/.cache/python', import.meta.url);
const importsPython = (module) =>
  spawnSync('python3', ['-c', `import ${module}`], {
    stdio: 'ignore',
    env: { ...process.env, PYTHONPATH: fileURLToPath(python) },
    timeout: 60_000,
  }).status === 0;

const browser = JSON.parse(readFileSync(new URL('browser.json', import.meta.url), 'utf8'));

/** `checks` completes the sentence "left out: …". */
const TOOLS = [
  {
    name: 'Chromium',
    debian: ['chromium'],
    found: () =>
      [process.env.CHROMIUM_PATH, ...browser.places].some((file) => file !== undefined && existsSync(file)),
    checks: 'the pages in a real browser (accessibility, width, no request to another host)',
  },
  {
    name: 'qpdf',
    debian: ['qpdf'],
    found: () => succeeds('qpdf', '--version'),
    checks: 'the structure of the PDF',
  },
  {
    name: 'poppler-utils (pdftotext, pdftoppm, pdfinfo, pdffonts, pdfimages)',
    debian: ['poppler-utils'],
    found: () =>
      ['pdftotext', 'pdftoppm', 'pdfinfo', 'pdffonts', 'pdfimages'].every((tool) => starts(tool, '-v')),
    checks: 'the words, the reading order, the ink and the pictures of the PDF',
  },
  {
    name: 'Java and Maven, which fetches veraPDF',
    debian: ['default-jdk-headless', 'maven'],
    found: () => succeeds('java', '-version') && succeeds('mvn', '-version'),
    checks: 'the PDF against PDF/A-3b and PDF/UA-1',
  },
  {
    name: 'GNU units',
    debian: ['units'],
    found: () => succeeds('units', '--version'),
    checks: 'lengths and areas beside another program’s',
  },
  {
    name: 'Python 3 with shapely, as /usr/bin/python3',
    debian: ['python3', 'python3-shapely'],
    found: () => succeeds('/usr/bin/python3', '-c', 'import shapely.geometry'),
    checks: 'areas of outlines beside another library’s',
  },
  {
    name: 'hledger',
    debian: ['hledger'],
    found: () => succeeds('hledger', '--version'),
    checks: 'the journal of a house’s costs, its balance and its totals',
  },
  {
    name: 'ledger',
    debian: ['ledger'],
    found: () => says('Ledger', 'ledger', '--version'),
    checks: 'the same journal in a second program',
  },
  {
    name: 'LibreOffice (soffice, its spreadsheet)',
    debian: ['libreoffice-calc-nogui'],
    found: () => succeeds('soffice', '--version'),
    checks: 'the workbook of a house’s costs, cell by cell',
  },
  {
    name: 'ExifTool',
    debian: ['libimage-exiftool-perl'],
    found: () => succeeds('exiftool', '-ver'),
    checks: 'what is left in the pictures beside the picture, and what a camera wrote',
  },
  {
    name: 'libheif’s programs (heif-enc, heif-convert, heif-info)',
    debian: ['libheif-examples'],
    found: () => ['heif-enc', 'heif-convert', 'heif-info'].every((tool) => starts(tool, '-h')),
    checks: 'HEIC pictures beside another decoder’s, and whatever needs one made',
  },
  {
    name: 'ImageMagick (convert)',
    debian: ['imagemagick'],
    found: () => says('ImageMagick', 'convert', '-version'),
    checks: 'colours, orientations and ink colours of photos beside another program’s',
  },
  {
    name: 'vipsthumbnail',
    debian: ['libvips-tools'],
    found: () => succeeds('vipsthumbnail', '--version'),
    checks: 'the photos of  npm run bench  beside another program’s',
  },
  {
    name: 'age',
    debian: ['age'],
    found: () => succeeds('age', '--version') && starts('age-keygen', '--version'),
    checks: 'sealed bags opened and made by another program',
  },
  {
    name: 'zip and unzip',
    debian: ['zip', 'unzip'],
    found: () => succeeds('zip', '-v') && succeeds('unzip', '-v'),
    checks: 'packed bags opened and made by other programs',
  },
  {
    name: 'GNU parallel, rsync, jq, ip and sshd',
    debian: ['parallel', 'rsync', 'jq', 'iproute2', 'openssh-client', 'openssh-server'],
    found: () =>
      ['parallel', 'rsync', 'jq'].every((tool) => succeeds(tool, '--version')) &&
      succeeds('ip', '-V') &&
      existsSync('/usr/sbin/sshd'),
    checks: 'many houses over two hosts',
  },
  {
    name: 'bagit for Python, by the Library of Congress',
    debian: succeeds('python3', '-m', 'pip', '--version') ? [] : ['python3', 'python3-pip'],
    pypi: 'bagit==1.9.0',
    found: () => importsPython('bagit'),
    checks: 'bags beside another validator’s',
  },
];

const say = (line) => process.stdout.write(`checks: ${line}\n`);
const missing = () => TOOLS.filter((tool) => !tool.found());

let absent = missing();
if (absent.length > 0 && mayInstall()) {
  const packages = absent.flatMap((tool) => tool.debian);
  if (packages.length > 0) {
    say(`installing ${packages.join(', ')}`);
    const trouble = install(packages);
    if (trouble !== undefined) say(`could not install: ${trouble}`);
  }
  for (const tool of absent.filter((one) => one.pypi !== undefined && !one.found())) {
    say(`installing ${tool.pypi} below node_modules/.cache`);
    const refused = installPython(tool.pypi);
    if (refused !== undefined) say(`could not install ${tool.pypi}: ${refused}`);
  }
  absent = missing();
}
for (const tool of absent)
  say(`${tool.name} is not here; left out: ${tool.checks}. On Debian: ${byHand(tool)}`);
if (absent.length === 0) say('every program that the outside checks compare with is here');

function mayInstall() {
  const isRoot = typeof process.getuid === 'function' && process.getuid() === 0;
  return isRoot && existsSync('/usr/bin/apt-get') && isDebian();
}

function isDebian() {
  try {
    return /^ID(_LIKE)?=.*debian/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

/** The last lines of what apt-get said if it failed. */
function install(packages) {
  const quiet = ['-qq', '-o', 'Acquire::Retries=3', '-o', 'Dpkg::Use-Pty=0'];
  for (const words of [
    ['update', ...quiet],
    ['install', '-y', '--no-install-recommends', ...quiet, ...packages],
  ]) {
    const run = spawnSync('apt-get', words, {
      encoding: 'utf8',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      maxBuffer: 2 ** 26,
    });
    if (run.status !== 0)
      return `apt-get ${words[0]}: ${(run.error?.message ?? run.stderr).trim().split('\n').slice(-3).join(' ')}`;
  }
  return undefined;
}

/** The last lines of what pip said if it failed. */
function installPython(name) {
  const run = spawnSync('python3', ['-m', 'pip', ...pipWords(name)], { encoding: 'utf8', timeout: 300_000 });
  if (run.status === 0) return undefined;
  return (run.error?.message ?? run.stderr ?? '').trim().split('\n').slice(-3).join(' ');
}

function pipWords(name) {
  const folder = path.relative(process.cwd(), fileURLToPath(python));
  return ['install', '--quiet', '--disable-pip-version-check', '--no-compile', '--target', folder, name];
}

function byHand(tool) {
  return [
    ...(tool.debian.length === 0 ? [] : [`apt-get install ${tool.debian.join(' ')}`]),
    ...(tool.pypi === undefined ? [] : [`python3 -m pip ${pipWords(tool.pypi).join(' ')}`]),
  ].join('; ');
}
