import type { Task } from '../find-exports.js';
import type { FileReading } from '../read-file.js';
import type { Saying } from '../remark.js';
import type { PastLostKey } from './lost-keys.js';
import type { PastReading, PastRemark } from './past-import.js';

/** What a store keeps of a reading beside its rows; `own` remarks were made by the reading itself, and come first. */
export function rememberReading(
  reading: FileReading,
  own: number,
  task: Task,
  lostKeys: readonly PastLostKey[],
): PastReading {
  const { remarks, draft } = reading;
  const places = new Map<unknown, number>();
  const sayings: Saying[] = [];
  const kept: PastRemark[] = [];
  for (let at = 0; at < own; at++) {
    const saying = remarks.saying(at);
    let place = places.get(saying);
    if (place === undefined) {
      place = sayings.length;
      places.set(saying, place);
      sayings.push(saying);
    }
    const setsAside = remarks.setsAside(at) ? 1 : 0;
    kept.push([place, setsAside, remarks.line(at), remarks.row(at), remarks.position(at), remarks.seen(at) ?? '']);
  }
  return {
    file: reading.file,
    fingerprint: reading.fingerprint,
    crosswalk: reading.crosswalk,
    rules: task.crosswalk.fingerprint,
    rule: task.ruleNumber,
    tables: [draft.table.name, ...(draft.fold === null ? [] : [draft.fold.table.name])],
    headings: reading.headings,
    header: [...reading.header],
    read: reading.read,
    leftOut: reading.leftOut,
    missing: reading.missing,
    mended: reading.mended,
    sayings,
    remarks: kept,
    lostKeys,
  };
}
