import type { Finding } from '../finding/finding.js';

const heads = {
  definition: 'Definition: ',
  numerator: 'Numerator: ',
  denominator: 'Denominator: ',
  leftOut: 'Left out: ',
  method: 'Method: ',
  source: 'Source: ',
} as const;

/** The account of a finding as six notes of its sheet, the definition first; the same whatever the records are. */
export function accountNotes({ account }: Finding): readonly string[] {
  return Object.entries(heads).map(([part, head]) => head + account[part as keyof typeof heads]);
}

/** Whether a note belongs to the account of a finding. */
export function isOfAccount(note: string): boolean {
  return Object.values(heads).some((head) => note.startsWith(head));
}

/** Whether a note belongs to the account of a finding and is not its definition. */
export function isBehindDefinition(note: string): boolean {
  return isOfAccount(note) && !note.startsWith(heads.definition);
}
