import { showNumber } from '../../notebook/shown.js';
import type { DataTable } from '../drawn.js';
import { textMark } from '../text-mark.js';
import { inReadingOrder, type PartFinding } from './part-findings.js';

/** The drawing as a table: the parts most often fouled first, then those with none or too few looks. */
export function partTable(
  chart: string,
  parts: readonly PartFinding[],
  heads: { readonly value: string; readonly skipped: boolean; readonly looks: boolean },
): DataTable {
  const sorted = inReadingOrder(parts);
  const optional = <Cell>(wanted: boolean, cell: Cell): Cell[] => (wanted ? [cell] : []);
  return {
    head: [
      'Part',
      'Place',
      heads.value,
      'Interval',
      'Counted',
      ...optional(heads.looks, 'Looked at'),
      ...optional(heads.skipped, 'Skipped'),
    ],
    rows: [
      ...sorted.map((part) => [
        part.component,
        part.place,
        part.standing === 'none found' ? 'none found' : part.shown,
        part.interval,
        part.counted,
        ...optional(heads.looks, part.looks === null ? '' : showNumber(part.looks, 'whole', '')),
        ...optional(heads.skipped, `${part.skippedShown}${part.oftenSkipped ? ' (often)' : ''}`),
      ]),
    ],
    rowIds: sorted.map(({ component }) => partAddress(chart, component)),
    open: true,
  };
}

/** The address of a part's row in the table of its drawing; short, since a page has hundreds of them and their charts long names. */
export function partAddress(chart: string, component: string): string {
  return `craft-${textMark(chart)}-part-${component.replaceAll(/[^a-z]+/g, '-')}`;
}
