import type { BookTable } from '../../record/book.js';
import type { NumberColumn } from '../../record/column.js';
import { numberAt } from '../../record/column.js';

import type { Records } from '../../record/records.js';
import { calendarFields } from './calendar-fields.js';
import { numbersOf } from './columns-of.js';
import type { CraftLooks } from './craft-looks.js';
import { codedColumn, codedField, numberField, numbersByRow, yesNoColumn, yesNoField } from './derived-fields.js';
import { firstOfSeason } from './first-of-season.js';
import { type FieldSource, lazyTable } from './lazy-table.js';
import type { LocalTimes } from './local-time.js';
import { once } from './once.js';
import { recordedFields } from './recorded-fields.js';
import { settings, stationSetting } from './station-setting.js';
import { lastStatus, waterStatuses } from './water-status.js';

/** What the fields of inspections are derived from besides their own records; made when first asked for. */
export interface InspectionGround {
  readonly local: () => LocalTimes;
  readonly looks: () => CraftLooks;
  readonly clusterOf: () => Uint32Array;
}

/** When it was, where, and which water came before it. */
function timeAndPlaceFields(records: Records, { local }: InspectionGround): FieldSource[] {
  const { rowCount } = records.inspections;
  const known = (row: number): boolean => local().minute[row]! >= 0;
  const whenKnown = (valueAt: (row: number) => number | null): NumberColumn =>
    numbersByRow(rowCount, (row) => (known(row) ? valueAt(row) : null));
  const daysSince = once((): NumberColumn => {
    const last = numbersOf(records.inspections, 'last_on_water');
    return whenKnown((row) => {
      const day = numberAt(last, row);
      return day === null || day > local().day[row]! ? null : local().day[row]! - day;
    });
  });
  return [
    ...calendarFields(() => ({ day: local().day, known })),
    {
      field: { ...numberField('date', null, 'The day it began, by the station’s own clock.'), kind: 'date' },
      build: () => whenKnown((row) => local().day[row]!),
    },
    {
      field: numberField('hour', null, 'The hour in which it began, 0 to 23, by the station’s own clock.'),
      build: () => whenKnown((row) => Math.floor(local().minute[row]! / 60)),
    },
    {
      field: numberField('minute', null, 'The minute of the hour at which it began, 0 to 59.'),
      build: () => whenKnown((row) => local().minute[row]! % 60),
    },
    {
      field: codedField('setting', settings, 'Where its station stands.'),
      build: () => stationSetting(records, records.inspections),
    },
    {
      field: codedField(
        'last_status',
        waterStatuses,
        'The status its last water had on that day; missing where the water is not known, or had no status yet.',
      ),
      build: () => lastStatus(records, local()),
    },
    {
      field: numberField(
        'days_since_water',
        'days',
        'Days from its last day on the water to the inspection; missing where that day lies after it.',
      ),
      build: daysSince,
    },
    waterDaysField(daysSince),
  ];
}

/** How long ago a craft was last on the water, in classes in showing order; common practice, no source. */
export const waterDays = ['under 5 days', '5 to 30 days', 'over 30 days'] as const;

function waterDaysField(daysOf: () => NumberColumn): FieldSource {
  return {
    field: codedField('days_class', waterDays, 'Days from its last day on the water to the inspection, in classes.'),
    build: () => {
      const days = daysOf();
      const classOf = (count: number): number => (count < 5 ? 1 : count <= 30 ? 2 : 3);
      const codes = Uint8Array.from(days.values, (count, row) => (numberAt(days, row) === null ? 0 : classOf(count)));
      return codedColumn(waterDays, codes);
    },
  };
}

/** How it went, and what its checks say of the craft as a whole. */
function courseFields(records: Records, { local, looks }: InspectionGround): FieldSource[] {
  const { inspections } = records;
  return [
    {
      field: numberField('minutes', 'minutes', 'From start to finish; missing where the finish lies before the start.'),
      build: () => {
        const start = numbersOf(inspections, 'started_at');
        const finish = numbersOf(inspections, 'finished_at');
        return numbersByRow(inspections.rowCount, (row) => {
          const from = numberAt(start, row);
          const to = numberAt(finish, row);
          return from === null || to === null || to < from ? null : (to - from) / 60_000;
        });
      },
    },
    {
      field: yesNoField(
        'first_of_season',
        'Whether it is the first full inspection of that craft in its season; missing where the craft is not known.',
      ),
      build: () => firstOfSeason(inspections, local()),
    },
    {
      field: numberField(
        'parts_looked',
        'parts',
        'Parts looked at, one with sides counted once; missing where no part was recorded at all.',
      ),
      build: () =>
        numbersByRow(inspections.rowCount, (row) => {
          const parts = looks().partsLooked[row]!;
          return parts < 0 ? null : parts;
        }),
    },
    {
      field: numberField(
        'parts_fouled',
        'parts',
        'Parts with mussels, one with sides counted once; missing where no part was looked at.',
      ),
      build: () =>
        numbersByRow(inspections.rowCount, (row) => {
          const parts = looks().partsFouled[row]!;
          return parts < 0 ? null : parts;
        }),
    },
    {
      field: yesNoField(
        'mussels_on_parts',
        'Whether mussels were found on any part; no only where parts were looked at, missing where none was.',
      ),
      build: () => yesNoColumn(looks().mussels),
    },
    {
      field: yesNoField(
        'established',
        'Whether attached mussels above trace were found on any part; missing where stage or number was left open, or never told.',
      ),
      build: () => yesNoColumn(looks().established),
    },
  ];
}

/** Inspections with their time, place, water and the sum of their checks. */
export function inspectionsTable(records: Records, ground: InspectionGround): BookTable {
  const { definition, rowCount, origin } = records.inspections;
  return lazyTable({
    name: definition.name,
    row: definition.row,
    counted: 'inspections',
    rowCount,
    sources: [
      ...recordedFields(records, 'inspections'),
      ...timeAndPlaceFields(records, ground),
      ...courseFields(records, ground),
    ],
    clusterOf: ground.clusterOf,
    origin,
  });
}
