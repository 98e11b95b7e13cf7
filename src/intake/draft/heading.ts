import { editDistance } from '../../problem/edit-distance.js';

/** A heading in words: lower case, cut at capitals, digits and punctuation: `lastWater_2` is last, water, 2. */
export function wordsOf(heading: string): readonly string[] {
  return heading
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{L})(\d)/gu, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

const washWords: ReadonlySet<string> = new Set(['wash', 'washed', 'washing', 'decon', 'decontamination', 'lavage']);

/** Whether a heading in words says that its column tells of a wash. */
export function tellsOfWash(words: readonly string[]): boolean {
  return words.some((word) => washWords.has(word));
}

function isAlike(word: string, wanted: string): number {
  if (word === wanted || `${word}s` === wanted || word === `${wanted}s`) return 1;
  if (word.length >= 3 && wanted.startsWith(word)) return 0.8;
  if (wanted.length >= 4 && word.startsWith(wanted)) return 0.8;
  return word.length >= 5 && editDistance(word, wanted) === 1 ? 0.7 : 0;
}

/**
 * How well a heading says a phrase, from 0 to 1: 1 where they have the same words, less where words are cut short, misspelt,
 * or others stand beside them.
 */
export function likeness(heading: readonly string[], phrase: readonly string[]): number {
  if (heading.length === 0 || phrase.length === 0) return 0;
  if (heading.join('') === phrase.join('')) return 1;
  let found = 0;
  for (const wanted of phrase) {
    const best = Math.max(...heading.map((word) => isAlike(word, wanted)));
    if (best === 0) return 0;
    found += best;
  }
  const extra = Math.max(0, heading.length - phrase.length);
  return (found / phrase.length) * (1 / (1 + 0.25 * extra));
}
