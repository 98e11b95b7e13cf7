import type { WrittenFile } from './export-file.js';

/** Every exported file with its rows and fingerprint, and what made them. */
export interface Manifest {
  readonly seed: number;
  readonly scale: number;
  readonly files: readonly WrittenFile[];
}
