import type { Field } from '../../record/field.js';
import type { Assignment } from './assign-fields.js';
import type { KnownColumn } from './field-fit.js';
import { isFreeText, type PrivateShape, privateShapeOf } from './private-shape.js';
import type { ColumnProposal, ProposedCodes, Sureness } from './proposal.js';

const plain = {
  pattern: null,
  unit: null,
  codes: null,
  seasons: new Map<string, string>(),
  water: null,
  questions: [],
};

function drop(column: string, { what, byHeading, byValues }: PrivateShape): ColumnProposal {
  const sureness: Sureness = byHeading ? 'sure' : 'likely';
  const signs = [...(byHeading ? ['its heading'] : []), ...(byValues ? ['its values'] : [])].join(' and ');
  const hint = what === 'registration' ? '; region_from: registration would tell the home region' : '';
  return { ...plain, column, use: { kind: 'drop' }, sureness, why: `a ${what} by ${signs}${hint}` };
}

/** The codes to write down; null where every text is the code itself. */
function codesOf({ field, fit }: Assignment): ProposedCodes | null {
  if (field.type !== 'code' || fit.match === null) return null;
  const isItself = [...fit.match.codes].every(([text, code]) => text === code);
  return isItself ? null : fit.match.codes;
}

function questionsOf(assignment: Assignment, codes: ProposedCodes | null, sureness: Sureness): readonly string[] {
  const { field, fit } = assignment;
  const questions: string[] = [];
  if (sureness === 'unsure') questions.push(`Is this ${field.name}? ${field.meaning}`);
  if (fit.order?.rival) {
    questions.push(`Are these dates ${fit.order.pattern} or ${fit.order.rival}? No row of the sample tells.`);
  }
  if (codes !== null && field.type === 'code' && [...codes.values()].includes(null)) {
    const known = field.codes.codes.map(({ code }) => code).join(', ');
    questions.push(`What do the texts without a code stand for? Codes: ${known}.`);
  }
  return questions;
}

function surenessOf({ fit, field }: Assignment, codes: ProposedCodes | null): Sureness {
  if (fit.heading < 0.5) return fit.values >= 0.75 ? 'likely' : 'unsure';
  const guessed = codes !== null && fit.match !== null && fit.match.plain < 0.9;
  if (fit.heading >= 0.8 && !guessed && (fit.values >= 0.2 || field.type === 'text')) return 'sure';
  return 'likely';
}

function proposeField(assignment: Assignment): ColumnProposal {
  const { column, field, fit } = assignment;
  const codes = codesOf(assignment);
  const sureness = surenessOf(assignment, codes);
  const isNumber = field.type === 'number' || field.type === 'integer';
  const unit = isNumber && fit.unit !== null && fit.unit.unit !== field.unit ? fit.unit.unit : null;
  const said =
    fit.heading >= 0.95 ? 'the heading says so' : fit.heading >= 0.5 ? 'the heading is like it' : 'by its values alone';
  return {
    ...plain,
    column: column.profile.heading,
    use: { kind: 'field', field: field.name, hashed: field.type === 'pseudonym' },
    pattern: fit.order?.pattern ?? null,
    unit,
    codes,
    sureness,
    why: `${said}; ${fit.shows}`,
    questions: questionsOf(assignment, codes, sureness),
  };
}

/** Whether a column that looks private is better known as what its heading calls it, such as the name of a lake. */
function isKnownBetter(shape: PrivateShape, assignment: Assignment | undefined): boolean {
  if (assignment === undefined) return false;
  if (assignment.field.type === 'pseudonym') return shape.what === 'name' || shape.what === 'hull number';
  return !shape.byHeading && assignment.fit.heading >= 0.8;
}

function proposeCraft(column: string, shape: PrivateShape): ColumnProposal {
  const use = { kind: 'field', field: 'craft', hashed: true } as const;
  const why = `a ${shape.what}; a keyed hash lets repeat visits be counted`;
  return { ...plain, column, use, sureness: shape.byValues ? 'sure' : 'likely', why };
}

/**
 * What is proposed for one column: private ones first, then the field it was given, then free text that may name people;
 * whatever remains is left to a person.
 */
export function proposeColumn(
  known: KnownColumn,
  assignment: Assignment | undefined,
  fields: ReadonlySet<Field['name']>,
): ColumnProposal {
  const { profile } = known;
  const shape = privateShapeOf(profile);
  if (shape !== null && !isKnownBetter(shape, assignment)) {
    const asCraft = shape.what === 'hull number' && fields.has('craft');
    return asCraft ? proposeCraft(profile.heading, shape) : drop(profile.heading, shape);
  }
  if (assignment !== undefined) return proposeField(assignment);
  const column = profile.heading;
  if (isFreeText(profile)) {
    const use = { kind: 'ignore', reason: 'free text that may name people' } as const;
    return { ...plain, column, use, sureness: 'likely', why: 'words of a person, or a heading that asks for them' };
  }
  const said = `${profile.filled} of ${profile.rows} rows have a value, ${profile.values.length} different ones`;
  return {
    ...plain,
    column,
    use: { kind: 'undecided' },
    sureness: 'unsure',
    why: said,
    questions: ['What does this column hold? Name its field, private: drop, or ignore with a reason.'],
  };
}
