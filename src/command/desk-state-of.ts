import { createHash } from 'node:crypto';
import { knownNames } from '../notebook/known-names.js';
import { shownNotebook } from '../notebook/withhold/shown-notebook.js';
import { type DeskPart, deskParts } from '../report/desk/desk-parts.js';
import type { DeskState, Having, SentPart } from '../report/desk/desk-state.js';
import { shipPart } from '../report/desk/shipped-part.js';
import { pageParts } from '../report/page-parts.js';
import type { DeskSession, EditOutcome, OpenText } from './desk-session.js';
import { differentLines } from './different-lines.js';
import { pageContextOf } from './page-context-of.js';

/** The parts of the desk for a text. */
export function partsOf(session: DeskSession, { text, read, workings }: OpenText): readonly DeskPart[] {
  return deskParts(text, read, workings.notebook, session.draw);
}

/** The parts of the report for a text. */
export function reportPartsOf(session: DeskSession, { workings }: OpenText): readonly DeskPart[] {
  const { notebook } = shownNotebook(workings);
  const { cell, ...about } = pageContextOf(workings);
  const context = cell === undefined ? about : { ...about, cell: 'asked' as const };
  const { parts } = pageParts(notebook, context, session.draw, session.sheets(workings));
  return parts.map(({ key, elements }) => ({ key, kind: 'rest', first: 0, last: 0, elements }));
}

/** All that an open page must know, without what it has. */
export function deskState(
  session: DeskSession,
  open: OpenText,
  parts: readonly DeskPart[],
  { refused, line }: EditOutcome,
  having: Having,
  wantsNames: boolean,
): DeskState {
  const sent = parts.map(({ key, kind, first, last, elements }): SentPart => {
    const { html, ...part } = shipPart(key, first, last, elements);
    return having.marks[key] === part.mark ? { ...part, kind } : { ...part, kind, html };
  });
  const { elsewhere } = session;
  const names = wantsNames ? knownNames(open.workings) : [];
  const namesMark = createHash('sha256').update(JSON.stringify(names)).digest('hex').slice(0, 16);
  return {
    file: session.name,
    version: session.open.version,
    parts: sent,
    canUndo: session.canUndo,
    canRedo: session.canRedo,
    unsaved: session.isUnsaved,
    elsewhere:
      elsewhere === null
        ? null
        : { fingerprint: elsewhere.fingerprint, lines: differentLines(session.open.text, elsewhere.text) },
    refused,
    line,
    namesMark,
    ...(namesMark === having.namesMark ? {} : { names }),
  };
}
