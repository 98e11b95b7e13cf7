import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Ran, root } from '../command/run.js';

/** The package as it would be published, in a folder that has it and what it depends on, and nothing else. */
export interface Installed {
  readonly folder: string;
  /** Paths in the package, in order. */
  readonly files: readonly string[];
  /** Bytes of the tarball. */
  readonly size: number;
  readonly manifest: {
    readonly dependencies: Readonly<Record<string, string>>;
    readonly engines: { readonly node: string };
    readonly version: string;
  };
}

interface Locked {
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}

/** What a lockfile brings to whoever installs the package, by its path below the checkout. */
export function lockedForUsers(): readonly (readonly [path: string, Locked])[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>;
  };
  return Object.entries(packages).filter(([path, { dev }]) => path !== '' && dev !== true);
}

/** Packs the checkout and unpacks it where a user would have it; what it depends on is linked, so that no registry is asked. */
export function packAndInstall(): Installed {
  const folder = mkdtempSync(join(tmpdir(), 'installed-'));
  const packed = execFileSync('npm', ['pack', '--json', '--silent', '--offline', '--pack-destination', folder], {
    cwd: root,
    encoding: 'utf8',
  });
  // What the build says may stand before the account.
  const told: unknown = JSON.parse(packed.slice(packed.search(/^[[{]/m)));
  const [account] = Object.values(told as object) as {
    filename: string;
    size: number;
    files: { path: string }[];
  }[];
  const { filename, size, files } = account!;
  execFileSync('tar', ['-xzf', join(folder, filename), '-C', folder]);
  mkdirSync(join(folder, 'node_modules'));
  renameSync(join(folder, 'package'), join(folder, 'node_modules/rampbook'));
  for (const [path] of lockedForUsers()) {
    if (path.lastIndexOf('node_modules/') !== 0) continue;
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    symlinkSync(join(root, path), join(folder, path));
  }
  const manifest = JSON.parse(readFileSync(join(folder, 'node_modules/rampbook/package.json'), 'utf8'));
  return { folder, files: files.map(({ path }) => path).sort(), size, manifest };
}

/** Runs Node in the folder that the package was installed into. */
export function runThere({ folder }: Installed, words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { cwd: folder, encoding: 'utf8' });
  return { exitCode: status, out: stdout, err: stderr };
}
