import { conversion, convertToCompare } from '../unit/convert.js';
import { plain } from '../unit/unit.js';
import { givenNumber } from '../value/number.js';
import { minutesUnit, shareWithin } from '../value/waits.js';
import { numberGiven, type WholeFunction } from './declaration.js';
import { withKnownArgument } from './known-argument.js';
import { presentWaits } from './quantile.js';

/** The share of waits that had ended as hoped within a limit. */
export const share_within: WholeFunction = {
  works: 'on the whole',
  name: 'share_within',
  arguments: [
    { name: 'wait of rows', takes: 'wait field' },
    { name: 'limit', takes: 'number' },
  ],
  gives: 'a plain number with an interval',
  meaning:
    'The share of waits that had ended as hoped within a limit, a written number of minutes or an input with a unit of time. Open waits are censored; where some ended otherwise it is their cumulative incidence (Aalen and Johansen 1978).',
  example: 'share_within(turnaround of decontaminations, 90)',
  kindOf: ([, limit]) => {
    if (
      limit!.kind.kind === 'number' &&
      limit!.written === null &&
      conversion(limit!.kind.unit, minutesUnit) === null
    ) {
      const remedy = 'Write the minutes as a number, or use an input with the unit minutes or hours.';
      return { argument: 1, code: 'units-differ', wanted: 'a time', remedy };
    }
    return { kind: 'number', unit: plain };
  },
  evaluate: ([wait, limit], { environment }) => {
    const { value, written } = numberGiven(limit);
    if (value.value === null) return givenNumber(null, plain, value.why);
    const minutes = written ? value.value : convertToCompare(value.value, conversion(value.unit, minutesUnit)!);
    return withKnownArgument(shareWithin(presentWaits(wait), minutes, environment), 'limit', value, environment);
  },
};
