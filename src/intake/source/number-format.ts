/** How a sheet shows a number: as such, padded with zeros, as a date, as a time of day, or as a length of time. */
export type NumberFormat =
  | { readonly shows: 'number' }
  | { readonly shows: 'digits'; readonly width: number }
  | { readonly shows: 'date' }
  | { readonly shows: 'moment' }
  | { readonly shows: 'time' }
  | { readonly shows: 'duration' };

const built: readonly (readonly [first: number, last: number, format: NumberFormat['shows']])[] = [
  [14, 17, 'date'],
  [18, 21, 'time'],
  [22, 22, 'moment'],
  [27, 31, 'date'],
  [32, 35, 'time'],
  [36, 36, 'date'],
  [45, 45, 'time'],
  [46, 46, 'duration'],
  [47, 47, 'time'],
  [50, 58, 'date'],
];

/** What a format of those that need not be spelt out shows; ECMA-376 part 1, 18.8.30. */
export function builtInFormat(id: number): NumberFormat {
  const shows = built.find(([first, last]) => id >= first && id <= last)?.[2] ?? 'number';
  return shows === 'digits' ? { shows: 'number' } : { shows };
}

/** What a spelt-out format shows, by the letters of its first section that are not quoted. */
export function readNumberFormat(code: string): NumberFormat {
  const section = code
    .replace(/"[^"]*"|\\.|[_*]./gu, '')
    .split(';')[0]!
    .toLowerCase();
  if (/^0{2,}$/u.test(section)) return { shows: 'digits', width: section.length };
  if (/\[(?:h+|m+|s+)\]/u.test(section)) return { shows: 'duration' };
  const letters = section.replace(/\[[^\]]*\]|am\/pm|a\/p|general/gu, '');
  const hasTime = /[hs]/u.test(letters);
  const hasDate = /[yd]/u.test(letters) || (!hasTime && letters.includes('m'));
  if (hasDate) return { shows: hasTime ? 'moment' : 'date' };
  return { shows: hasTime ? 'time' : 'number' };
}
