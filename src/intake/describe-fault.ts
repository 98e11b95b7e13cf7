import { nearestNames } from '../problem/nearest.js';
import type { FieldRule, SeasonalCode } from './crosswalk.js';
import { firstYear, lastYear } from './date-reader.js';
import { type Fault, fault, faultCodes } from './fault.js';
import type { Saying } from './remark.js';
import { sayingOf } from './rules/saying-of.js';
import { unitsFor } from './units.js';

/** The texts a rule knows for a field: those of its code map, or the field's own codes. */
function knownTexts(rule: FieldRule): readonly string[] {
  if (rule.codes !== null) return [...rule.codes.keys()].filter((text) => text !== '');
  return rule.field.type === 'code' ? rule.field.codes.codes.map(({ code }) => code) : [];
}

/** The seasons of a code, as a crosswalk writes them: `2023-2024`, `2025-`, `-2022`. */
function seasonsOf(held: readonly SeasonalCode[]): string {
  const written = held.map(({ from, to }) => {
    if (from === to) return String(from);
    return `${from === 0 ? '' : from}-${to === 9999 ? '' : to}`;
  });
  return written.join(', ');
}

function unknownCode(rule: FieldRule, seen: string): Omit<Saying, 'code'> {
  const near = seen === 'withheld' ? [] : nearestNames(seen, knownTexts(rule), 3);
  const held = rule.codes?.get(seen);
  if (Array.isArray(held)) {
    return {
      reason: `no meaning of this code for ${rule.field.name} in the row's season, only in ${seasonsOf(held)}`,
      remedy: 'Give the code a meaning for that season in the crosswalk, or mend the cell.',
    };
  }
  const named = near.map((name) => `"${name}"`).join(' or ');
  return {
    reason: `none of the known codes of ${rule.field.name}`,
    remedy: `${near.length === 0 ? '' : `Did you mean ${named}? `}Mend the cell, or add the code to the crosswalk.`,
  };
}

/** Why a cell sets its row aside, and what to do. */
export function describeFault(found: Fault, rule: FieldRule, seen: string): Saying {
  const { field } = rule;
  const pattern = rule.pattern?.text ?? '';
  const code = faultCodes[found]!;
  switch (found) {
    case fault.missingValue:
      return {
        code,
        reason: `${field.name} must have a value`,
        remedy:
          field.name === 'side'
            ? 'Fill it in from the form; where a blank stands for a part without sides, say codes: { "": none } in the crosswalk.'
            : 'Fill it in from the form.',
      };
    case fault.partlyMissing:
      return {
        code,
        reason: `${field.name} needs ${rule.columns.join(' and ')}, and one of them is empty`,
        remedy: field.required
          ? 'Fill in the empty cell.'
          : 'Fill in the empty cell, or say partly_blank: missing beside the columns in the crosswalk.',
      };
    case fault.notANumber:
      if (rule.columns.length > 1) {
        return {
          code,
          reason: `${field.name} is told by one of ${rule.columns.join(' and ')}, as a number`,
          remedy:
            'Leave the others blank; what stands there for nothing, such as 0.00, goes under missing beside them.',
        };
      }
      return {
        code,
        reason: `${field.name} is not a number`,
        remedy:
          field.type === 'integer'
            ? 'Write digits only, or say under codes in the crosswalk which number the text stands for, as in FY25: 2025.'
            : 'Write digits only; where the export writes units or marks, say unit: written and thousands in the crosswalk.',
      };
    case fault.unknownUnit: {
      const units = unitsFor('unit' in field ? field.unit : '').join(', ');
      return sayingOf(code, `${field.name} must be written with one of ${units}`);
    }
    case fault.notAsDeclared: {
      const like = rule.preparation?.within?.text;
      const seek = like === undefined ? 'one value and no more' : `a text like "${like}"`;
      return sayingOf(code, `${field.name} is declared to be ${seek}`);
    }
    case fault.notAWholeNumber:
      return { code, reason: `${field.name} is counted in whole numbers`, remedy: 'Write a whole number.' };
    case fault.outOfRange: {
      if (!('least' in field)) {
        const reason = `${field.name} lies outside the years ${firstYear} to ${lastYear}`;
        return { code, reason, remedy: 'Compare the year with the form.' };
      }
      const reason = `${field.name} is not between ${field.least} and ${field.most} ${field.unit}`;
      return { code, reason, remedy: 'Compare with the form, and look at the unit.' };
    }
    case fault.notADate:
      return { code, reason: `no date as ${pattern}`, remedy: 'Write a day that the calendar has, in that order.' };
    case fault.notATime:
      return { code, reason: `no date and time as ${pattern}`, remedy: 'Write both, in that order.' };
    case fault.noSuchLocalTime:
      return {
        code,
        reason: 'the clocks skipped this time in spring',
        remedy: 'Compare with the form; a device may not have changed to daylight-saving time.',
      };
    case fault.ambiguousLocalTime:
      return {
        code,
        reason: 'the clocks showed this time twice in autumn',
        remedy: 'Say which was meant, or set repeated: first or second in the crosswalk.',
      };
    case fault.unknownPrefix:
      return sayingOf(code);
    case fault.doesNotMatch:
      return {
        code,
        reason: `${field.name} is not written as it should be: ${field.meaning}`,
        remedy: 'Mend the cell.',
      };
    default:
      return { code, ...unknownCode(rule, seen) };
  }
}
