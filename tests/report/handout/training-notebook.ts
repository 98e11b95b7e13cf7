import { type CraftDrawing, drawnComponents } from '../../../src/chart/craft/craft-drawing.js';
import { drawings } from '../../../src/chart/craft/drawings.js';
import type { Block, ChartRequest, EvaluatedNotebook, EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import { inventedSites } from '../../chart/craft/craft-sheet.js';
import { key, missing, text } from '../../chart/small-sheet.js';
import { sampleNotebook } from '../sample-notebook.js';

const options = { part: 'component', value: 'share', looks: 'looked', skipped: 'skipped', classes: '10,20,40' };

function requestOf(kind: 'craft' | 'handout', { name, title }: CraftDrawing): ChartRequest {
  const caption = kind === 'craft' ? title : `Where to look: ${title}`;
  return {
    name: `${kind}-${name}`,
    kind,
    caption,
    sheet: name,
    options: { ...options, craft: name },
    line: 1,
    column: 1,
  };
}

function sheetOf(drawing: CraftDrawing): EvaluatedSheet {
  return {
    ...inventedSites(drawing, drawnComponents(drawing).length > 10 ? 'usual' : 'all'),
    name: drawing.name,
  };
}

/** A sheet by type and drive in which no drive is recorded. */
function untoldSheetOf(drawing: CraftDrawing): EvaluatedSheet {
  const { columns, rows, ...sheet } = sheetOf(drawing);
  const [type, drive] = [text(drawing.watercraftType!), missing('not recorded')];
  return {
    ...sheet,
    columns: [key('watercraft_type'), key('drive'), ...columns],
    rows: rows.map(({ cells }) => ({ cells: [type, drive, ...cells] })),
  };
}

function notebookOf(of: readonly CraftDrawing[], sheet: (drawing: CraftDrawing) => EvaluatedSheet): EvaluatedNotebook {
  return {
    ...sampleNotebook,
    name: 'training',
    title: 'Training, invented',
    blocks: (['craft', 'handout'] as const).flatMap((kind) =>
      of.map((drawing): Block => ({ kind: 'chart', chart: requestOf(kind, drawing) })),
    ),
    figures: new Map(),
    inputs: new Map(),
    sheets: new Map(of.map((drawing): [string, EvaluatedSheet] => [drawing.name, sheet(drawing)])),
    problems: [],
  };
}

/** A notebook of every drawing and its handout, from invented figures of every standing. */
export const trainingNotebook = notebookOf(drawings, sheetOf);

/** The drawings for craft of any drive that show more than those of one. */
export const untoldDrawings = drawings.flatMap(({ views, anyDrive }) =>
  anyDrive === null || anyDrive.views.length === views.length ? [] : [anyDrive],
);

/** The same of records that never say the drive. */
export const untoldNotebook = notebookOf(untoldDrawings, untoldSheetOf);
