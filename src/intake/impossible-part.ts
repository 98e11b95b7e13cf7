import { lookFields } from '../record/tables/checks.js';
import type { Saying } from './remark.js';
import { consequenceOf, type RuleChoices } from './rules/rule-choices.js';
import { sayingOf } from './rules/saying-of.js';

/** What is said of a part that a craft of this kind does not have. */
export const impossiblePart: Saying = sayingOf('impossible-part');

/** What is noted of such a part where it was called clean and its crosswalk reads it as absent. */
export const takenAsAbsent: Saying = {
  ...sayingOf('impossible-part', `${impossiblePart.reason}; called clean, and read as absent by the crosswalk`),
  remedy: 'Nothing is to be mended, unless the type or the drive is wrong: compare with the form where they may be.',
};

/** The fields of a look that tell of something found; a look that fills in one of them is never read as absent. */
export const findingFields: readonly string[] = lookFields
  .map(({ name }) => name)
  .filter((name) => name !== 'component' && name !== 'side' && name !== 'state');

/** Whether a crosswalk reads a part as absent that the craft cannot carry and that is called clean. */
export function readsAsAbsent(choices: RuleChoices): boolean {
  return consequenceOf(choices, impossiblePart.code) === 'reads as absent';
}
