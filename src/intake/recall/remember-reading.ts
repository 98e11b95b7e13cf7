import type { Task } from '../find-exports.js';
import type { FileReading } from '../read-file.js';
import type { Saying } from '../remark.js';
import type { UnmatchedWater } from '../waters/alias.js';
import type { PastLostKey } from './lost-keys.js';
import type { PastReading, PastRemark } from './past-import.js';

/**
 * What a store keeps of a reading beside its rows; `own` remarks were made by the reading itself and by matching its names
 * of waters, and come first.
 */
export function rememberReading(
  reading: FileReading,
  own: number,
  task: Task,
  lostKeys: readonly PastLostKey[],
  unmatched: readonly UnmatchedWater[] | null,
): PastReading {
  const { remarks, draft } = reading;
  const places = new Map<Saying, number>();
  for (let at = 0; at < own; at++) {
    const saying = remarks.saying(at);
    if (!places.has(saying)) places.set(saying, places.size);
  }
  const tell = (at: number): PastRemark => {
    const [place, setsAside] = [places.get(remarks.saying(at))!, remarks.setsAside(at) ? 1 : 0] as const;
    return [place, setsAside, remarks.line(at), remarks.row(at), remarks.position(at), remarks.seen(at) ?? ''];
  };
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
    ...(unmatched === null ? {} : { unmatched }),
    ...(reading.absent.size === 0 ? {} : { absent: [...reading.absent] }),
    // A rule that was broken holds more than its words, and none of it where another thread read the file.
    sayings: [...places.keys()].map(({ code, reason, remedy }) => ({ code, reason, remedy })),
    // Made when it is asked for: a list of half a million is only held while it is written.
    get remarks() {
      return Array.from({ length: own }, (_, at) => tell(at));
    },
    lostKeys,
  };
}
