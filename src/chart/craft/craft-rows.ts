import type { AskedChart, Unfit } from '../chart-kind.js';
import { chartWords } from '../chart-words.js';
import { type CraftDrawing, driveNotRecorded } from './craft-drawing.js';
import { type Limits, partFindings } from './part-findings.js';

const words = chartWords.craft;

/** The craft of a sheet that are drawn, and the drawing that stands for them. */
export interface CraftRows {
  readonly drawing: CraftDrawing;
  /** The request with only the rows that tell of those craft. */
  readonly asked: AskedChart;
  /** The caption, with the drive where the sheet tells drives apart. */
  readonly caption: string;
  /** Which craft are counted and which of their type are not, as sentences; none where the sheet tells neither type nor drive. */
  readonly counted: readonly string[];
}

/**
 * The rows of a craft as it is drawn. Where none of its drive were recorded, or too few to say anything of any part, those of
 * its type whose drive is not recorded stand in their place, if they say more; else what is wrong.
 */
export function craftRows(whole: AskedChart, build: CraftDrawing, limits: Limits): CraftRows | Unfit {
  const own = rowsOfCraft(whole, build);
  const any = build.anyDrive;
  const untold = any === null || !splitBy(whole, 'drive') ? null : rowsOfCraft(whole, any);
  const drawing = untold !== null && worth(untold, limits) > worth(own, limits) ? any! : build;
  const asked = drawing === build ? own : untold!;
  if (asked.sheet.rows.length === 0) return noRows(whole, build);
  const { drive, watercraftType: type } = drawing;
  const { caption } = whole.request;
  if (type === null || !splitBy(whole, 'watercraft_type')) return { drawing, asked, caption, counted: [] };
  if (drive === null || !splitBy(whole, 'drive')) {
    return { drawing, asked, caption, counted: [words.countedType(type)] };
  }
  if (drawing === build) {
    const left = untold !== null && untold.sheet.rows.length > 0 ? [words.leftUntold] : [];
    return {
      drawing,
      asked,
      caption: words.withDrive(caption, drive),
      counted: [words.countedBuild(type, drive), ...left],
    };
  }
  const left =
    rowsOf(whole, { watercraft_type: type, drive: null }).length > asked.sheet.rows.length ? [words.leftTold] : [];
  const lower = sameCraftThroughout(asked) ? [words.lowerThere] : [];
  return {
    drawing,
    asked,
    caption: words.withoutDrive(caption),
    counted: [words.countedUntold(type), ...left, ...lower],
  };
}

/**
 * The request with only those rows of its sheet that tell of the craft drawn: where the sheet is split by watercraft_type or
 * drive, the rows of its type and drive; else all.
 */
export function rowsOfCraft(asked: AskedChart, drawing: CraftDrawing): AskedChart {
  const rows = rowsOf(asked, { watercraft_type: drawing.watercraftType ?? driveNotRecorded, drive: drawing.drive });
  return { ...asked, sheet: { ...asked.sheet, rows } };
}

/** The rows with those values in the key columns of those names; null is any value. */
function rowsOf({ sheet }: AskedChart, wanted: Readonly<Record<string, string | null>>): AskedChart['sheet']['rows'] {
  return sheet.rows.filter(({ cells }) =>
    sheet.columns.every(({ role, name }, at) => {
      const value = role === 'key' ? (wanted[name] ?? null) : null;
      if (value === null) return true;
      const cell = cells[at]!;
      return value === driveNotRecorded ? cell.kind === 'missing' : cell.kind === 'text' && cell.text === value;
    }),
  );
}

function splitBy({ sheet }: AskedChart, name: string): boolean {
  return sheet.columns.some((column) => column.role === 'key' && column.name === name);
}

/** Whether the rows say of any part how often it was fouled, or that it may not be told. */
function tells(asked: AskedChart, limits: Limits): boolean {
  return partFindings(asked, limits).some(({ standing }) => standing !== 'too few looks');
}

/** How much rows are worth drawing: 0 where there are none, 2 where they tell something. */
function worth(asked: AskedChart, limits: Limits): number {
  if (asked.sheet.rows.length === 0) return 0;
  return tells(asked, limits) ? 2 : 1;
}

/** Whether every part's value is a share of the same craft, whichever of them carry it. */
function sameCraftThroughout({ sheet, columns }: AskedChart): boolean {
  const { at } = columns.get('value')!;
  const counts = sheet.rows.map(({ cells }) => {
    const cell = cells[at]!;
    return cell.kind === 'number' ? cell.denominator : null;
  });
  return counts.length > 1 && counts[0] !== null && new Set(counts).size === 1;
}

function noRows(whole: AskedChart, { watercraftType, drive }: CraftDrawing): Unfit {
  const isTyped = whole.sheet.rows.some(({ cells }) =>
    whole.sheet.columns.some(({ role, name }, at) => {
      return role === 'key' && /^(watercraft_type|drive)$/.test(name) && cells[at]!.kind === 'text';
    }),
  );
  const craft = words.craftOf(watercraftType, drive);
  if (isTyped)
    return { code: 'no-such-craft', seen: whole.sheet.name, wanted: craft, remedy: words.noSuchCraft(craft) };
  return {
    code: 'nothing-to-draw',
    seen: whole.sheet.name,
    wanted: `rows of the craft drawn: ${craft}`,
    remedy:
      whole.sheet.rows.length === 0
        ? 'Nothing fell into this sheet: look at its rows and conditions.'
        : 'The records do not say which craft these were. Fill watercraft_type in the crosswalk, take the drawing out, or ask the sheet of this craft alone.',
  };
}
