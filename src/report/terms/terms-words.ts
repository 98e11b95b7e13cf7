/** The fixed words of the terms, on the page of methods and at the end of every page. */
export const termsWords = {
  title: 'Terms',
  about: 'What the words of the trade mean on these pages. Each is defined once, here.',
  onPage: 'Those that this page uses. All of them, with their sources, stand on the page of methods.',
  source: 'Source',
} as const;
