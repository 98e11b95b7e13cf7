import { type ClosingSection, closingSection } from '../closing-sections.js';
import type { Term } from './terms.js';
import { termsOfPage } from './terms-list.js';
import { termsWords as words } from './terms-words.js';

/** The section of the terms that a page uses. */
export function termsSection(used: readonly Term[]): ClosingSection {
  return closingSection('terms', words.title, termsOfPage(used));
}
