import { archivesKind } from './kinds/archives.js';
import { crosswalksKind } from './kinds/crosswalks.js';
import { diskKind } from './kinds/disk.js';
import { exportsKind } from './kinds/exports.js';
import { formulasKind } from './kinds/formulas.js';
import { killsKind } from './kinds/kills.js';
import { notebooksKind } from './kinds/notebooks.js';
import { storesKind } from './kinds/stores.js';
import type { Kind } from './trial.js';

/** Every way to torture the program; those that can be run within one process first. */
export const kinds: readonly Kind[] = [
  exportsKind,
  crosswalksKind,
  notebooksKind,
  formulasKind,
  archivesKind,
  storesKind,
  diskKind,
  killsKind,
];
