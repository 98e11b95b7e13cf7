import type { Image, Paragraph } from 'mdast';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { ChartRequest } from './evaluated.js';

/**
 * The chart that a paragraph holding one image asks for, or null where the image is a picture or there is none. An address
 * such as `dots?sheet=by_station&value=interception` names a chart kind and a sheet; the image's text is the caption.
 */
export function readChart(file: string, paragraph: Paragraph, problems: Problem[]): ChartRequest | null {
  const [image, ...others] = paragraph.children;
  if (image?.type !== 'image' || others.length > 0 || !/^[a-z-]+\?/.test(image.url)) return null;
  const [kind = '', words = ''] = image.url.split('?');
  const options = Object.fromEntries(new URLSearchParams(words));
  const { sheet, ...rest } = options;
  if (sheet === undefined) {
    problems.push(incomplete(file, image, image.url, 'an address with "sheet=NAME"', 'Name the sheet to draw.'));
    return null;
  }
  if ((image.alt ?? '').trim() === '') {
    problems.push(incomplete(file, image, '', 'a caption between the square brackets', 'Say what the chart shows.'));
  }
  const { line, column } = image.position!.start;
  const name = [kind, sheet, ...Object.values(rest)].join('-').replace(/[^a-z0-9]+/gi, '-');
  return {
    name,
    kind,
    caption: image.alt ?? '',
    sheet,
    options: rest,
    line,
    column,
  };
}

function incomplete(file: string, image: Image, seen: string, wanted: string, remedy: string): Problem {
  const { line, column } = image.position!.start;
  return {
    code: 'chart-incomplete',
    severity: 'sets aside',
    place: inDocument(file, line, column),
    seen,
    wanted,
    remedy,
  };
}
