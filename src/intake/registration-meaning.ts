import type { FieldRule } from './crosswalk.js';
import { fault } from './fault.js';
import { prefixOf, regionOfPrefix } from './registration.js';
import type { TextMeaning } from './text-cell.js';

/**
 * What a registration number means for the field of its state: the state of its prefix, by the crosswalk's own codes first
 * and then by 33 CFR part 173, appendix A. A number without a known prefix is a fault; nothing is taken for a postal code.
 */
export function registrationMeaning(
  rule: FieldRule,
  missing: ReadonlySet<string>,
  codeOf: (region: string) => number,
): (text: string) => TextMeaning {
  return (text) => {
    if (text === '' || missing.has(text)) return { kind: 'missing' };
    const prefix = prefixOf(text) ?? '';
    const declared = rule.codes?.get(prefix);
    if (declared === null) return { kind: 'missing' };
    const region = typeof declared === 'string' ? declared : regionOfPrefix(prefix);
    return region === null ? { kind: 'fault', fault: fault.unknownPrefix } : { kind: 'value', code: codeOf(region) };
  };
}
