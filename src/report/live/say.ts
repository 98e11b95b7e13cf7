/** Tells the reader what was done, in the page's own words for it; `{}` in them is what it was done to. */
export function say(word: string, thing: string): void {
  const said = document.getElementById('said');
  if (said !== null) said.textContent = wordOf(word).replace('{}', thing);
}

/** A word of the page, which carries them so that the script has none of its own. */
export function wordOf(word: string): string {
  return document.getElementById('said')?.dataset[word] ?? '';
}
