import { finding } from '../../record/codes.js';
import { matchCodes } from './code-match.js';
import type { ColumnProfile } from './column-profile.js';
import { likeness, wordsOf } from './heading.js';
import type { ColumnProposal } from './proposal.js';

const nothingFound = /^(?:no|none|nothing|clean|clear|ok|0|-)$/iu;

/** The column beside one of looks that tells what was seen; null for none. */
function foundIn(profiles: readonly ColumnProfile[]): ColumnProfile | null {
  const phrases = ['found', 'finding', 'what found', 'seen', 'result'].map(wordsOf);
  return (
    profiles.find(({ heading, values }) => {
      const like = Math.max(...phrases.map((phrase) => likeness(wordsOf(heading), phrase)));
      return like >= 0.8 && values.length <= 20 && values.some(([text]) => nothingFound.test(text));
    }) ?? null
  );
}

/**
 * Where a column says only whether a part was looked at, and another what was found: how the two give the state together, as
 * a question in the words of a crosswalk. Looked at is not clean, and not fouled either.
 */
export function proposeLooks(
  columns: readonly ColumnProposal[],
  profiles: readonly ColumnProfile[],
): readonly ColumnProposal[] {
  const found = foundIn(profiles);
  return columns.map((proposal) => {
    const { use, codes, column } = proposal;
    const isState = use.kind === 'field' && use.field === 'state' && found !== null && found.heading !== column;
    const isOnlyLooks = [...(codes ?? [])].every(([, code]) => code === null || code === 'not checked');
    if (!isState || codes === null || !isOnlyLooks) return proposal;
    const looks = [...codes].flatMap(([text, code]) => (code === null ? [text] : []));
    const not = [...codes].flatMap(([text, code]) => (code === null ? [] : [`${JSON.stringify(text)}: not checked`]));
    const seen = looks.flatMap((look) =>
      found.values.map(([text]) => `"${look} ${text}": ${nothingFound.test(text) ? 'clean' : 'fouled'}`),
    );
    const list = [...seen, ...not].join(', ');
    const matched = matchCodes(found, finding)?.codes;
    const what = found.values.map(([text]) =>
      nothingFound.test(text) ? `${text}:` : `${text}: ${matched?.get(text) ?? 'which code?'}`,
    );
    const question = `Does "${column}" say that a part was looked at, and "${found.heading}" what was found? Then take both away here, and put under the file: combine: { state: { columns: [${JSON.stringify(column)}, ${JSON.stringify(found.heading)}], codes: { ${list} } } }, and for the finding ${JSON.stringify(found.heading)}: { field: finding, codes: { ${what.join(', ')} } }`;
    return { ...proposal, sureness: 'unsure', questions: [question] };
  });
}
