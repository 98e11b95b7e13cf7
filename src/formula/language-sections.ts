import type { Problem } from '../problem/problem.js';

/** A section of the reference of the formula language, with the codes of the problems that it helps to mend. */
export interface LanguageSection {
  readonly id: string;
  readonly title: string;
  readonly codes: readonly string[];
}

/** The sections of the reference, in their order. */
export const languageSections = [
  {
    id: 'writing',
    title: 'How a formula is written',
    codes: [
      'unexpected-character',
      'unexpected-word',
      'unfinished-text',
      'unfinished-formula',
      'no-formula',
      'too-long',
      'too-deep',
    ],
  },
  {
    id: 'names',
    title: 'Names, and what they stand for',
    codes: ['unknown-name', 'name-taken', 'loop', 'not-a-value', 'not-rows'],
  },
  { id: 'tables', title: 'Tables and their fields', codes: ['unknown-field', 'unknown-code'] },
  { id: 'declared', title: 'Sheets, figures, inputs and charts', codes: ['sheet-sentence'] },
  { id: 'rows', title: 'Rows, conditions and groups', codes: ['no-group', 'field-alone'] },
  { id: 'sheets', title: 'Asking a sheet', codes: ['unknown-column', 'unknown-sheet', 'not-this-sheet'] },
  {
    id: 'inputs',
    title: 'The same figure with other inputs',
    codes: ['not-a-figure', 'not-an-input', 'no-effect', 'not-again'],
  },
  {
    id: 'values',
    title: 'Numbers, texts, dates and lists',
    codes: ['wrong-kind', 'not-a-date', 'not-a-number', 'no-value', 'out-of-range'],
  },
  { id: 'units', title: 'Units', codes: ['units-differ', 'not-a-unit', 'wrong-format', 'unknown-format'] },
  { id: 'missing', title: 'What is missing', codes: [] },
  { id: 'intervals', title: 'Intervals', codes: [] },
  { id: 'functions', title: 'Functions', codes: ['unknown-function', 'wrong-arguments'] },
] as const satisfies readonly LanguageSection[];

/** The address of one section: `units`. */
export type SectionId = (typeof languageSections)[number]['id'];

const byCode = new Map<string, LanguageSection>(
  languageSections.flatMap((section) => section.codes.map((code): [string, LanguageSection] => [code, section])),
);

/** The section that helps to mend a problem, or null where it is not one of the language's: exported tables have fields. */
export function sectionFor({ code, place }: Problem): LanguageSection | null {
  return place.field === null && place.line > 0 && /\.md$/i.test(place.file) ? (byCode.get(code) ?? null) : null;
}
