/**
 * Two machines as far as a network can tell: each a network namespace of its own with an sshd, joined by a bridge.
 *
 * Root and Linux only. Addresses are of the range that RFC 2544 sets aside for tests (198.18.0.0/15).
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const ip = (...words: readonly string[]): void => void execFileSync('ip', words, { stdio: 'pipe' });

/** Whether this user may make networks here. */
export function mayMakeHosts(): boolean {
  try {
    ip('netns', 'add', 'sill-try');
    ip('netns', 'del', 'sill-try');
    return process.getuid?.() === 0;
  } catch {
    return false;
  }
}

export interface Hosts {
  readonly names: readonly string[];
  /** How ssh reaches them: configuration for its -F. */
  readonly config: string;
  readonly close: () => void;
}

/** `home` is a folder for keys and settings. The caller closes them, whatever happens. */
export function openHosts(home: string): Hosts {
  const tag = `s${process.pid % 10_000}`;
  const bridge = `${tag}br`;
  const names = ['host-a', 'host-b'];
  const opened: (() => void)[] = [];
  const close = (): void => {
    for (const undo of opened.reverse()) {
      try {
        undo();
      } catch {
        // Gone already.
      }
    }
  };
  try {
    mkdirSync('/run/sshd', { recursive: true });
    const key = path.join(home, 'key');
    execFileSync('ssh-keygen', ['-q', '-t', 'ed25519', '-N', '', '-f', key]);
    ip('link', 'add', bridge, 'type', 'bridge');
    opened.push(() => ip('link', 'del', bridge));
    ip('addr', 'add', '198.18.77.1/24', 'dev', bridge);
    ip('link', 'set', bridge, 'up');
    const lines: string[] = [];
    for (const [index, name] of names.entries()) {
      const space = `${tag}-${name}`;
      const address = `198.18.77.${index + 2}`;
      const cable = `${tag}v${index}`;
      ip('netns', 'add', space);
      opened.push(() => ip('netns', 'del', space));
      ip('link', 'add', cable, 'type', 'veth', 'peer', 'name', 'eth0', 'netns', space);
      ip('link', 'set', cable, 'master', bridge);
      ip('link', 'set', cable, 'up');
      ip('-n', space, 'addr', 'add', `${address}/24`, 'dev', 'eth0');
      ip('-n', space, 'link', 'set', 'eth0', 'up');
      ip('-n', space, 'link', 'set', 'lo', 'up');
      const settings = path.join(home, `${name}.conf`);
      const pid = path.join(home, `${name}.pid`);
      writeFileSync(
        settings,
        [
          `ListenAddress ${address}`,
          `HostKey ${key}`,
          `PidFile ${pid}`,
          `AuthorizedKeysFile ${key}.pub`,
          'PasswordAuthentication no',
          'StrictModes no',
          'UsePAM no',
          'PermitRootLogin yes',
          'MaxStartups 50',
          // The start-up files of whoever runs the tests are none of this: two of them at once may get into each other's way.
          `SetEnv HOME=${home}`,
          '',
        ].join('\n'),
      );
      execFileSync('ip', ['netns', 'exec', space, '/usr/sbin/sshd', '-f', settings], { stdio: 'ignore' });
      opened.push(() => process.kill(Number(readFileSync(pid, 'utf8'))));
      lines.push(
        `Host ${name}`,
        `  HostName ${address}`,
        `  IdentityFile ${key}`,
        '  User root',
        '  StrictHostKeyChecking no',
        `  UserKnownHostsFile ${path.join(home, 'known')}`,
        '  LogLevel ERROR',
        '',
      );
    }
    const config = path.join(home, 'ssh-config');
    writeFileSync(config, lines.join('\n'));
    return { names, config, close };
  } catch (thrown) {
    close();
    throw thrown;
  }
}
