import type { Environment } from '../environment.js';
import type { NumberValue } from '../value/evaluated.js';
import { numberFrom } from '../value/number.js';
import { argumentTakenAsKnown } from '../value/taken-as-known.js';

/** What a function gives, with a caution where one of its numbers comes from records and no resample follows it. */
export function withKnownArgument(
  found: NumberValue,
  name: string,
  { draws, standing }: NumberValue,
  environment: Environment,
): NumberValue {
  if (draws === null && standing !== 'estimate') return found;
  return numberFrom({ ...found, cautions: [...found.cautions, argumentTakenAsKnown(name)] }, environment);
}
