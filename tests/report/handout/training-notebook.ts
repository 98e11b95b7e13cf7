import { type CraftDrawing, drawnComponents } from '../../../src/chart/craft/craft-drawing.js';
import { drawings } from '../../../src/chart/craft/drawings.js';
import type { Block, ChartRequest, EvaluatedNotebook, EvaluatedSheet } from '../../../src/notebook/evaluated.js';
import { inventedSites } from '../../chart/craft/craft-sheet.js';
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

/** A notebook of every drawing and its handout, from invented figures of every standing. */
export const trainingNotebook: EvaluatedNotebook = {
  ...sampleNotebook,
  name: 'training',
  title: 'Training, invented',
  blocks: (['craft', 'handout'] as const).flatMap((kind) =>
    drawings.map((drawing): Block => ({ kind: 'chart', chart: requestOf(kind, drawing) })),
  ),
  figures: new Map(),
  inputs: new Map(),
  sheets: new Map(
    drawings.map((drawing): [string, EvaluatedSheet] => [
      drawing.name,
      { ...inventedSites(drawing, drawnComponents(drawing).length > 10 ? 'usual' : 'all'), name: drawing.name },
    ]),
  ),
  problems: [],
};
