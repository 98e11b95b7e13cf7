import type { Element } from 'hast';
import { h } from 'hastscript';
import { askChart } from '../../chart/ask-chart.js';
import type { ChartOption, Unfit } from '../../chart/chart-kind.js';
import { driveNotRecorded } from '../../chart/craft/craft-drawing.js';
import { craftOptions, craftPicture } from '../../chart/kinds/craft.js';
import { enoughEvents } from '../../finding/small-numbers.js';
import type { ChartRequest, EvaluatedNotebook, EvaluatedSheet } from '../../notebook/evaluated.js';
import { writtenWords } from '../../record/written-numbers.js';
import { words } from '../words.js';
import { drawnBy } from './drawn-by.js';
import { handoutAddress } from './handout-address.js';
import { handoutCautions } from './handout-cautions.js';
import { type HandoutPart, handoutParts } from './handout-parts.js';
import { tools, waysToLook } from './where-to-look.js';

const column = (word: string, meaning: string): ChartOption => ({ word, takes: 'column', needed: false, meaning });

/**
 * A handout is asked for as a chart is: `![Caption](handout?sheet=…&craft=…&value=…)`. It takes the words of a drawn craft,
 * since it is the same drawing from the same sheet and so can say nothing else, and stands in the page, since a page is one
 * file: a paper of its own when the page is printed, and the only one when its own address was followed first.
 */
const asHandout = {
  name: 'handout',
  options: [
    ...craftOptions,
    column('rate', 'The column with craft fouled per looks, said beside the value.'),
    column('sole', 'The column with the sole-site share, said beside the value.'),
    { word: 'most', takes: 'number', needed: false, meaning: 'At most so many parts are listed; without it, 8.' },
  ] satisfies readonly ChartOption[],
};

/** A one-page handout for a craft type, or what is wrong with the request. */
export function handout(
  request: ChartRequest,
  sheet: EvaluatedSheet,
  notebook: EvaluatedNotebook,
): { readonly element: Element } | { readonly unfit: readonly Unfit[] } {
  const checked = askChart(request, asHandout, sheet);
  if ('unfit' in checked) return checked;
  const picture = craftPicture(checked.asked, request.name, null, drawnBy(request, notebook));
  if ('code' in picture) return { unfit: [picture] };
  const { asked, caption } = picture;
  const { first, alsoFouled, alsoSkipped } = handoutParts(
    asked,
    picture.parts,
    Number(asked.settings.get('most') ?? 8),
  );
  const untold = picture.drawing.drive === driveNotRecorded ? picture.counted : [];
  const id = handoutAddress(request, notebook);
  const children = [
    h('h3', { id: `${id}-title` }, [caption]),
    h('p', { className: ['handout-from'] }, [
      words.handout.from(notebook.title),
      ...untold.flatMap((said) => [' ', said]),
    ]),
    h('div', { className: ['handout-drawing'], role: 'group', tabIndex: 0, ariaLabelledBy: `${id}-title` }, [
      picture.svg(words.handout.drawing),
    ]),
    first.length === 0 ? h('p', [words.handout.nothing]) : partList(first),
    ...(first.some(({ part }) => part.rank === null) ? [h('p', [words.handout.unplaced(enoughEvents)])] : []),
    ...named(words.handout.alsoFouled, alsoFouled),
    ...named(words.handout.alsoSkipped, alsoSkipped),
    h('p', [
      h('strong', [words.handout.bring]),
      toolsFor([...first.map(({ part }) => part), ...alsoFouled, ...alsoSkipped]),
    ]),
    h('p', { className: ['handout-cautions'] }, [h('strong', [words.handout.cautions]), handoutCautions.join(' ')]),
  ];
  return {
    element: h('details', { className: ['handout-fold'] }, [
      h('summary', [words.handout.summary(caption)]),
      h('p', { className: ['handout-alone'] }, [h('a', { href: `#${id}` }, [words.handout.alone])]),
      h('section', { id, className: ['handout'], ariaLabelledBy: `${id}-title` }, children),
    ]),
  };
}

function partList(parts: readonly HandoutPart[]): Element {
  const { place, part, how, found, perLooks, mind } = words.handout;
  return h('table', { className: ['handout-parts'] }, [
    h('thead', [h('tr', [place, part, how, found, writtenWords(perLooks), mind].map(head))]),
    h(
      'tbody',
      parts.map((one) =>
        h('tr', [
          h('td', [one.part.rank === null ? '•' : one.part.place]),
          h('th', { scope: 'row' }, [one.part.component]),
          h('td', [waysToLook[one.part.component]?.look ?? '']),
          h('td', [one.found]),
          h('td', { className: ['number'] }, [one.rate]),
          h('td', [one.mind]),
        ]),
      ),
    ),
  ]);
}

function named(lead: string, parts: readonly { readonly component: string }[]): Element[] {
  return parts.length === 0 ? [] : [h('p', [h('strong', [lead]), parts.map(({ component }) => component).join(', ')])];
}

function head(text: string): Element {
  return h('th', { scope: 'col' }, [text]);
}

function toolsFor(parts: readonly { readonly component: string }[]): string {
  const wanted = new Set(parts.flatMap(({ component }) => waysToLook[component]?.tools ?? []));
  return tools.filter((tool) => wanted.has(tool)).join(', ');
}
