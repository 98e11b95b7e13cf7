import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The program's version, from its package. */
export function programVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

/** SHA-256 over the program's own files, so that a page tells which code made it; sources and a build differ. */
export function programFingerprint(): string {
  fingerprint ??= fingerprintOfFiles();
  return fingerprint;
}

// The program does not change while it runs.
let fingerprint: string | null = null;

function fingerprintOfFiles(): string {
  const folder = fileURLToPath(new URL('..', import.meta.url));
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /(?<!\.d)\.(ts|js)$/.test(name))
    .sort();
  const hash = createHash('sha256');
  for (const name of names) hash.update(`${name}\n`).update(readFileSync(`${folder}/${name}`));
  return hash.digest('hex');
}
