import type { Field } from '../../record/field.js';
import type { Assignment } from './assign-fields.js';
import type { KnownColumn } from './field-fit.js';
import { partNamed } from './part-words.js';
import { isFreeText, type PrivateShape, privateShapeOf } from './private-shape.js';
import type { ColumnProposal, ProposedCodes, Sureness } from './proposal.js';

const plain = {
  pattern: null,
  unit: null,
  between: null,
  codes: null,
  seasons: new Map<string, string>(),
  water: null,
  questions: [],
};

function drop(column: string, { what, byHeading, byValues }: PrivateShape): ColumnProposal {
  const sureness: Sureness = byHeading ? 'sure' : 'likely';
  const signs = [...(byHeading ? ['its heading'] : []), ...(byValues ? ['its values'] : [])].join(' and ');
  const hint =
    what === 'registration'
      ? '; { field: craft, private: hash } in its place would let repeat visits be counted, and region_from: registration would tell the home region'
      : '';
  return { ...plain, column, use: { kind: 'drop' }, sureness, why: `a ${what} by ${signs}${hint}` };
}

/** The codes to write down; null where every text is the code itself. */
function codesOf({ fit }: Assignment): ProposedCodes | null {
  if (fit.match === null) return null;
  const isItself = [...fit.match.codes].every(([text, code]) => text === code);
  return isItself ? null : fit.match.codes;
}

/** The lists on whose codes every rate of a season stands: none of them is taken from letters alone without asking. */
const decisive: ReadonlySet<string> = new Set(['outcome', 'extent', 'check state']);

/** What was read off the letters of texts that matter too much, or are no codes of a list; null for nothing. */
function letterQuestion({ field, fit }: Assignment, codes: ProposedCodes | null): string | null {
  const matters = field.type === 'integer' || (field.type === 'code' && decisive.has(field.codes.name));
  const guessed = [...(codes ?? [])].filter(([text]) => fit.match?.guessed.has(text) === true);
  if (!matters || guessed.length === 0) return null;
  const read = guessed.map(([text, code]) => `${text} as ${code}`).join(', ');
  return `Read off their letters alone: ${read}. Is that what they say?`;
}

function questionsOf(assignment: Assignment, codes: ProposedCodes | null, sureness: Sureness): readonly string[] {
  const { column, field, fit } = assignment;
  const questions: string[] = [];
  const isDecisive = field.type === 'code' && decisive.has(field.codes.name);
  if (sureness === 'unsure' || (isDecisive && fit.heading < 0.5))
    questions.push(`Is this ${field.name}? ${field.meaning}`);
  if (fit.order?.rival) {
    questions.push(`Are these dates ${fit.order.pattern} or ${fit.order.rival}? No row of the sample tells.`);
  }
  if (codes !== null && field.type === 'code' && [...codes.values()].includes(null)) {
    const known = field.codes.codes.map(({ code }) => code).join(', ');
    questions.push(`What do the texts without a code stand for? Codes: ${known}.`);
  }
  if (codes !== null && field.type === 'integer' && [...codes.values()].includes(null)) {
    questions.push('Which number does each of these texts stand for?');
  }
  if (fit.unit?.unit.startsWith('written or') && fit.unit.unit !== 'written or dollars') {
    questions.push(`Numbers without a unit are taken as ${fit.unit.unit.slice('written or '.length)}. Is that so?`);
  }
  if (column.between !== null) {
    questions.push('Some cells hold several values. Which of them counts: take first, last or only?');
  }
  const letters = letterQuestion(assignment, codes);
  if (letters !== null) questions.push(letters);
  return questions;
}

function surenessOf({ fit, field }: Assignment, codes: ProposedCodes | null): Sureness {
  if (field.type === 'code' && fit.match !== null && fit.match.plain + fit.match.short === 0) return 'unsure';
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
    between: column.between,
    codes,
    sureness,
    why: `${said}; ${fit.shows}`,
    questions: questionsOf(assignment, codes, sureness),
  };
}

/** Whether a column that looks private is better known as what its heading calls it, such as the name of a lake. */
function isKnownBetter(shape: PrivateShape, assignment: Assignment | undefined): boolean {
  if (assignment === undefined) return false;
  // "Reg." may head states or whole numbers; a number names a craft, and with it an owner.
  if (shape.what === 'registration' && assignment.field.name === 'home_region') return false;
  if (assignment.field.type === 'pseudonym') return shape.what === 'name' || shape.what === 'hull number';
  return !shape.byHeading && assignment.fit.heading >= 0.8;
}

function proposeCraft(column: string, shape: PrivateShape): ColumnProposal {
  const use = { kind: 'field', field: 'craft', hashed: true } as const;
  const why = `a ${shape.what}; a keyed hash lets repeat visits be counted`;
  return { ...plain, column, use, sureness: shape.byValues ? 'sure' : 'likely', why };
}

/** The question on a column whose cells name parts, in the words of a checklist that it could be folded into; null for none. */
function partsQuestion({ profile, between }: KnownColumn): string | null {
  const sign = between ?? [';', '|', ','].find((one) => profile.values.some(([text]) => text.includes(one))) ?? ',';
  const texts = [...new Set(profile.values.flatMap(([text]) => text.split(sign).map((part) => part.trim())))];
  const named = texts.flatMap((text) => {
    const part = partNamed(text);
    return part !== null && part.likeness >= 0.75 ? [`${JSON.stringify(text)}: ${part.component}`] : [];
  });
  if (texts.length < 2 || texts.length > 60 || named.length < texts.length * 0.75) return null;
  const other = texts.length === named.length ? '' : ' (and name the parts that are not told there)';
  const list = `between: ${JSON.stringify(sign)}, parts: { ${named.join(', ')} }`;
  const said = 'named: { state: fouled, finding: mussels }, otherwise: { state: not checked }';
  return `Do these cells name the parts on which mussels were found? Then take the column away here, and put under the file${other}: fold: { table: checks, lists: { ${JSON.stringify(profile.heading)}: { ${list}, ${said} } } }`;
}

/**
 * What is proposed for one column: private ones first, then the field it was given, then free text that may name people;
 * whatever remains is left to a person.
 */
export function proposeColumn(
  known: KnownColumn,
  assignment: Assignment | undefined,
  fields: ReadonlySet<Field['name']>,
  hasFold: boolean,
): ColumnProposal {
  const { profile } = known;
  const shape = privateShapeOf(profile);
  if (shape !== null && !isKnownBetter(shape, assignment)) {
    const asCraft = shape.what === 'hull number' && fields.has('craft');
    return asCraft ? proposeCraft(profile.heading, shape) : drop(profile.heading, shape);
  }
  if (assignment !== undefined) return proposeField(assignment);
  const column = profile.heading;
  const parts = fields.has('outcome') ? partsQuestion(known) : null;
  if (parts !== null) {
    const why = `${profile.filled} of ${profile.rows} rows name parts of craft`;
    return { ...plain, column, use: { kind: 'undecided' }, sureness: 'unsure', why, questions: [parts] };
  }
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
    questions: [
      `What does this column hold? Name its field, ${hasFold ? 'its part under fold, ' : ''}private: drop, or ignore with a reason.`,
    ],
  };
}
