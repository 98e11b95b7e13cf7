import { pathPattern } from '../path-pattern.js';
import { profilesOf } from './column-profile.js';
import { dateFormOf } from './date-order.js';
import type { Sample } from './sample.js';
import { firstValues, separatorsIn } from './several-values.js';

/** The samples of files that are read alike: the same headings in the same dialect, and dates of the same form. */
export interface FileKind {
  readonly patterns: readonly string[];
  /** Of cells that hold several values, only the first is here. */
  readonly samples: readonly Sample[];
  /** What stands between several values, by the heading of their column. */
  readonly between: ReadonlyMap<string, string>;
}

/** One pattern for paths that differ in their digits only and that matches none of the others, or the paths themselves. */
function patternsFor(paths: readonly string[], others: readonly string[]): readonly string[] {
  if (paths.length === 1) return paths;
  const cut = paths.map((path) => path.split(/(\d+)/u));
  const [first] = cut;
  const isAlike = (other: readonly string[]) =>
    other.length === first!.length && other.every((part, at) => at % 2 === 1 || part === first![at]);
  if (!cut.every(isAlike)) return paths;
  const pattern = first!.map((part, at) => (cut.every((other) => other[at] === part) ? part : '*')).join('');
  // A star stands for anything within one name, so that it must not reach over a folder.
  const starred = pattern.replace(/\*+/gu, '*');
  return others.some((other) => pathPattern(starred).test(other)) ? paths : [starred];
}

/** The samples by what they have in common, in the order in which their first file was named. */
export function fileKinds(samples: readonly Sample[]): readonly FileKind[] {
  const kinds: { readonly key: string; readonly forms: (string | null)[]; readonly alike: Sample[] }[] = [];
  for (const sample of samples) {
    const { headings, encoding, delimiter, headerLine, headerSpan } = sample;
    const key = JSON.stringify([headings, encoding, delimiter, headerLine, headerSpan]);
    const forms = profilesOf(headings, sample.rows).map(dateFormOf);
    const agrees = (form: string | null, at: number) => form === null || forms[at] === null || form === forms[at];
    const kind = kinds.find((one) => one.key === key && one.forms.every(agrees));
    if (kind === undefined) kinds.push({ key, forms, alike: [sample] });
    else {
      kind.alike.push(sample);
      for (const [at, form] of forms.entries()) kind.forms[at] ??= form;
    }
  }
  return kinds.map(({ alike }) => {
    const between = separatorsIn(alike);
    const others = samples.filter((sample) => !alike.includes(sample));
    const patterns = patternsFor(
      alike.map(({ file }) => file),
      others.map(({ file }) => file),
    );
    return { patterns, samples: firstValues(alike, between), between };
  });
}
