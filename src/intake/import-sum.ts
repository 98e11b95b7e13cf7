import { createHash } from 'node:crypto';
import type { FileSum, ImportSum, RuleChange, WithdrawnSeasons } from '../record/file-sum.js';
import type { Crosswalk } from './crosswalk.js';
import { countKept } from './kept-values.js';
import { countByCode } from './ledger.js';
import { missingByReason } from './missing-times.js';
import type { FileReading } from './read-file.js';
import { consequenceOf, plainChoices } from './rules/rule-choices.js';
import type { Withdrawn } from './withdrawing/withdrawn.js';

function countReasons({ leftOut }: FileReading): Readonly<Record<string, number>> {
  const counts = new Map<string, number>();
  for (const { because } of leftOut) counts.set(because, (counts.get(because) ?? 0) + 1);
  return Object.fromEntries(counts);
}

/** How many kept rows were read as a person mended them. */
function countMended({ draft, mended }: FileReading): number {
  const lines = new Set(mended.map(({ line }) => line));
  let count = 0;
  if (lines.size === 0) return count;
  for (let row = 0; row < draft.rowCount; row++) {
    if (draft.aside[row] === 0 && lines.has(draft.places.lineOf(row))) count++;
  }
  return count;
}

/** What became of one file's rows. */
function fileSum(reading: FileReading): FileSum {
  const { draft } = reading;
  const kept = countKept(draft.aside, draft.rowCount);
  const mended = countMended(reading);
  return {
    file: reading.file,
    fingerprint: reading.fingerprint,
    crosswalk: reading.crosswalk,
    table: draft.table.name,
    read: reading.read,
    kept,
    setAside: reading.read - kept - reading.leftOut.length,
    leftOut: reading.leftOut.length,
    leftOutBecause: countReasons(reading),
    missing: missingByReason(reading.missing, reading.rule),
    ...(mended > 0 ? { mended } : {}),
    folded: draft.fold === null ? 0 : kept * draft.fold.columns.length,
    problems: countByCode(reading, 'set aside'),
    notes: countByCode(reading, 'notes'),
  };
}

/** The earliest cut-off of the crosswalks that read washes, else of all: beyond it not every wash is told of. */
function asOfAll(crosswalks: readonly Crosswalk[]): Pick<ImportSum, 'asOf' | 'asOfWords'> {
  const telling = crosswalks.filter(({ asOf }) => asOf !== null);
  const washing = telling.filter(({ files }) => files.some(({ table }) => table.name === 'decontaminations'));
  const [first, ...others] = washing.length > 0 ? washing : telling;
  if (first === undefined) return { asOf: null };
  const { asOf, asOfWords } = others.reduce((earliest, one) => (one.asOf! < earliest.asOf! ? one : earliest), first);
  return { asOf, asOfWords };
}

/** The changes of meaning that the crosswalks tell of, each once. */
function changesOf(crosswalks: readonly Crosswalk[]): ImportSum['definitionChanges'] {
  const changes = crosswalks.flatMap(({ definitionChanges }) => definitionChanges);
  return [...new Map(changes.map((change) => [JSON.stringify(change), change])).values()];
}

/** The rules that the crosswalks set otherwise, in their order. */
function ruleChangesOf(crosswalks: readonly Crosswalk[]): readonly RuleChange[] {
  return crosswalks.flatMap(({ name, choices }) =>
    [...choices.made.values()].map(({ code, consequence, limits, because }): RuleChange => {
      const usual = consequenceOf(plainChoices, code);
      return { crosswalk: name, code, usual, set: consequence, limits, because };
    }),
  );
}

/** SHA-256 over what the crosswalks, files and mended rows were, in their order. */
export function fingerprintOf(
  crosswalks: readonly Crosswalk[],
  files: readonly Pick<FileReading, 'fingerprint' | 'mended'>[],
): string {
  const prints = crosswalks.map(({ fingerprint }) => fingerprint);
  for (const { fingerprint, mended } of files) {
    prints.push(fingerprint);
    if (mended.length > 0) prints.push(JSON.stringify(mended));
  }
  return createHash('sha256').update(prints.join('\n')).digest('hex');
}

function toldOf({ seasons, files }: Withdrawn): WithdrawnSeasons {
  return { seasons, files: files.map(({ file, read }) => ({ file, read })) };
}

/** The account of an import; the same files, crosswalks and mended rows give the same fingerprint. */
export function importSum(
  crosswalks: readonly Crosswalk[],
  readings: readonly FileReading[],
  withdrawn: Withdrawn,
): ImportSum {
  return {
    files: readings.map(fileSum),
    definitionChanges: changesOf(crosswalks),
    ruleChanges: ruleChangesOf(crosswalks),
    ...asOfAll(crosswalks),
    ...(withdrawn.seasons.length === 0 ? {} : { withdrawn: toldOf(withdrawn) }),
    fingerprint: fingerprintOf(crosswalks, readings),
  };
}
