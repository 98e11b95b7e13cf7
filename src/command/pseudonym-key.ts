import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Problem } from '../problem/problem.js';
import { wholeFile } from '../problem/problem.js';

const fewestBytes = 16;

/**
 * The key for pseudonyms: the bytes of a file, or without one a key made by chance and thrown away (`kept` is false). A
 * file that cannot be read, or is too short to keep a secret, is a problem; its bytes are never shown.
 */
export function readKey(file: string | undefined): { bytes: Uint8Array; kept: boolean } | { problem: Problem } {
  if (file === undefined) return { bytes: randomBytes(32), kept: false };
  const bad = (code: string, seen: string, remedy: string): { problem: Problem } => ({
    problem: {
      code,
      severity: 'stops',
      place: wholeFile(file),
      seen,
      wanted: `a key file of at least ${fewestBytes} bytes`,
      remedy,
    },
  });
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch {
    return bad('no-such-file', 'no readable file', 'Check the path given to --key.');
  }
  if (bytes.length < fewestBytes) {
    return bad(
      'short-key',
      `${bytes.length} bytes`,
      'Make one with: head -c 32 /dev/urandom > KEYFILE, and keep it out of the project.',
    );
  }
  return { bytes, kept: true };
}
