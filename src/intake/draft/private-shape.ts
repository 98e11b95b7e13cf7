import { type ColumnProfile, shareOf } from './column-profile.js';
import { likeness, wordsOf } from './heading.js';

/** What a column says of a person or a craft that no store may hold. */
export interface PrivateShape {
  readonly what: 'phone' | 'mail address' | 'address' | 'registration' | 'hull number' | 'name' | 'plate';
  readonly byHeading: boolean;
  readonly byValues: boolean;
}

const headings: Readonly<Record<PrivateShape['what'], string>> = {
  phone: 'phone, tel, telephone, mobile, cell, phone number',
  'mail address': 'email, mail, e mail',
  address: 'address, street, city, zip, zip code, postcode, home town',
  registration:
    'registration, registration no, reg no, reg number, registration number, bow number, vessel number, cf number, immatriculation',
  'hull number': 'hin, hull no, hull number, hull id, hull identification number',
  plate: 'plate, licence plate, license plate, tag, trailer plate, licence, license',
  name: 'owner, owner name, operator, driver, name of owner, last name, first name, surname, contact, signature, booked by, entered by, recorded by, signed by, trailer owner, technician, washed by, inspector, inspector name, officer',
};

const shapes: Readonly<Partial<Record<PrivateShape['what'], (text: string) => boolean>>> = {
  phone: (text) =>
    /^\+?[\d\s().-]{7,20}$/u.test(text) &&
    /\d[\s().-]+\d/u.test(text) &&
    digits(text) >= 7 &&
    !isDate(text) &&
    !isNumber(text),
  'mail address': (text) => /^[^\s@]+@[^\s@]+\.[^\s@]+$/u.test(text),
  // 33 CFR 174.23: two letters, up to four digits, two letters (or three and three).
  registration: (text) => /^[A-Z]{2}[ -]?\d{1,4}[ -]?[A-Z]{1,3}$/u.test(text),
  // 33 CFR 181.25: twelve characters, three letters of the maker first.
  'hull number': (text) => /^(?:US-?)?[A-Z]{3}[A-Z0-9]{9}$/u.test(text) && /\d/u.test(text),
  name: (text) => /^\p{Lu}[\p{L}'.-]+(?: \p{Lu}[\p{L}'.-]*)+(?: \(.*\))?$/u.test(text) && !placeWord.test(text),
};

const placeWord =
  /\b(?:lake|river|creek|pond|reservoir|ramp|landing|point|bay|dam|marina|beach|park|gate|pass|pool|canal|sound|county|station|island|harbou?r|junction|ferry)\b(?!.*\))/iu;
const digits = (text: string): number => text.replace(/\D/gu, '').length;
const isNumber = (text: string): boolean => /^[+-]?\d+(?:[.,]\d+)?$/u.test(text);
const isDate = (text: string): boolean => /^\d{1,4}[-.]\d{1,2}[-.]\d{1,4}/u.test(text) && digits(text) <= 8;

/** Most of a column's texts must have the shape, so that a stray number does not make a column private. */
const most = 0.8;

/** Whether a column holds what must stay private, by its heading or by how its texts look; null for neither. */
export function privateShapeOf(column: ColumnProfile): PrivateShape | null {
  const words = wordsOf(column.heading);
  for (const [what, phrases] of Object.entries(headings) as [PrivateShape['what'], string][]) {
    const byHeading = phrases.split(', ').some((phrase) => likeness(words, wordsOf(phrase)) >= 0.95);
    const shape = shapes[what];
    const byValues = shape !== undefined && column.values.length > 2 && shareOf(column, shape) >= most;
    if (byHeading || byValues) return { what, byHeading, byValues };
  }
  return null;
}

/** Whether most texts of a column are sentences or notes, which may name people. */
export function isFreeText(column: ColumnProfile): boolean {
  const wordy = shareOf(column, (text) => text.split(/\s+/u).length >= 3);
  const named = ['memo', 'note', 'comment', 'remark', 'description', 'narrative', 'free text'].some(
    (phrase) => likeness(wordsOf(column.heading), wordsOf(phrase)) >= 0.8,
  );
  return named || (wordy >= 0.5 && column.values.length > 10);
}
