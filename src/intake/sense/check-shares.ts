import type { CodeField } from '../../record/field.js';
import type { DefinitionChange } from '../../record/file-sum.js';
import { tableOf } from '../../record/tables.js';
import type { Crosswalk } from '../crosswalk.js';
import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { noteTogether, positionOf } from '../set-aside.js';
import type { LocalDays } from './local-days.js';

const jump = 3;
/** A code counts as moved only where one of the two seasons used it this often. */
const enough = 20;

/** How often a program used each code of a field in one season, and where the season begins. */
interface SeasonUse {
  readonly season: number;
  readonly reading: FileReading;
  readonly row: number;
  readonly uses: Uint32Array<ArrayBuffer>;
  coded: number;
}

const yearOf = (days: number): number => new Date(days * day).getUTCFullYear();
const day = 86_400_000;
/** More days than lie between 1970 and any moment that a record may tell. */
const mostDays = 2 ** 17;
/** The mark of a day of Greenwich within which the season changes. */
const twoSeasons = 0xffff;

/** The inspections of one file with the season of each; 0 for a row that is set aside or has no start. */
interface Seasons {
  readonly reading: FileReading;
  readonly seasonOf: Uint16Array;
}

function seasonsOf(reading: FileReading, days: LocalDays): Seasons {
  const { draft, rule } = reading;
  const seasonOf = new Uint16Array(draft.rowCount);
  const starts = draft.columns.get('started_at')?.values;
  if (starts === undefined) return { reading, seasonOf };
  // Under one clock a day of Greenwich lies in one season, or in two where a year begins within it.
  const known = new Uint16Array(2 * mostDays);
  const seasonAt = (row: number, moment: number): number => yearOf(days.dayOf(reading, row, moment));
  for (let row = 0; row < draft.rowCount; row++) {
    const start = starts[row]!;
    if (draft.aside[row] === 1 || Number.isNaN(start)) continue;
    const today = Math.floor(start / day);
    let season = rule.timeZone === null ? twoSeasons : known[today + mostDays]!;
    if (season === 0) {
      const first = seasonAt(row, today * day);
      season = first === seasonAt(row, (today + 1) * day - 1) ? first : twoSeasons;
      known[today + mostDays] = season;
    }
    seasonOf[row] = season === twoSeasons ? seasonAt(row, start) : season;
  }
  return { reading, seasonOf };
}

function usesOf(files: readonly Seasons[], field: CodeField): readonly SeasonUse[] {
  const seasons = new Map<number, SeasonUse>();
  const codeCount = field.codes.codes.length + 1;
  for (const { reading, seasonOf } of files) {
    const codes = reading.draft.columns.get(field.name)?.values;
    if (codes === undefined) continue;
    let current = 0;
    let uses = new Uint32Array(0);
    for (let row = 0; row < seasonOf.length; row++) {
      const season = seasonOf[row]!;
      const code = codes[row]!;
      if (season === 0 || code === 0) continue;
      if (season !== current) {
        const use = seasons.get(season) ?? { season, reading, row, uses: new Uint32Array(codeCount), coded: 0 };
        seasons.set(season, use);
        current = season;
        uses = use.uses;
      }
      uses[code]!++;
    }
  }
  for (const use of seasons.values()) use.coded = use.uses.reduce((sum, count) => sum + count, 0);
  return [...seasons.values()].sort((a, b) => a.season - b.season);
}

/** Whether a share moved by the factor or more, up or down; whole numbers multiplied first, so that 3-fold is 3-fold. */
function jumps(before: SeasonUse, now: SeasonUse, code: number): boolean {
  const used = now.uses[code]! * before.coded;
  const usedBefore = before.uses[code]! * now.coded;
  if (Math.max(now.uses[code]!, before.uses[code]!) < enough) return false;
  return used >= jump * usedBefore || usedBefore >= jump * used;
}

function told(changes: readonly DefinitionChange[], field: CodeField, season: number): string {
  const change = changes.find(
    (one) => one.table === 'inspections' && one.field === field.name && one.season === season,
  );
  if (change === undefined) return 'no change of definition is declared';
  return `declared: it was "${change.was}" and is "${change.is}"`;
}

/**
 * Notes each code of a program's inspections whose share moved threefold or more from one season to the next, once, at the
 * later season's first kept row, with the change of definition that explains it where one is declared; common practice, no
 * source.
 */
export function checkShares(all: readonly FileReading[], crosswalks: readonly Crosswalk[], days: LocalDays): void {
  const fields = tableOf('inspections').fields.filter((field) => field.type === 'code');
  for (const { name, definitionChanges } of crosswalks) {
    const own = all.filter(({ crosswalk, draft }) => crosswalk === name && draft.table.name === 'inspections');
    const files = own.map((reading) => seasonsOf(reading, days));
    for (const field of fields) {
      const seasons = usesOf(files, field);
      for (const [index, now] of seasons.entries()) {
        const before = seasons[index - 1];
        if (before === undefined) continue;
        for (const [place, { code }] of field.codes.codes.entries()) {
          if (!jumps(before, now, place + 1)) continue;
          const [was, is] = [before, now].map((use) => `${use.uses[place + 1]!} of ${use.coded} in ${use.season}`);
          const explained = told(definitionChanges, field, now.season);
          const reason = `the share of "${code}" in ${field.name} moved threefold or more: ${was}, ${is}; ${explained}`;
          const position = positionOf(now.reading, field.name);
          noteTogether(now.reading, now.row, position, sayingOf('share-jump', reason), `${was}, ${is}`);
        }
      }
    }
  }
}
