import { choicesOf } from '../finding/choices.js';
import type { Finding, FindingChoices, FindingOption } from '../finding/finding.js';
import { conversion, convertToCompare } from '../formula/unit/convert.js';
import { readUnit } from '../formula/unit/read-unit.js';
import { describeUnit } from '../formula/unit/unit.js';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import type { Cell, ToldOption } from './document.js';
import { cellProblem } from './formula-cell.js';
import type { Knowledge } from './workings.js';

type Value = { readonly value: string | number } | { readonly problems: readonly Problem[] };

/**
 * What a finding is told by a sheet's sentence, with the notebook's resamples; or what is wrong with it: nothing more where an
 * input that it names has a problem of its own, for no finding may fall back on what nobody told it.
 */
export function toldChoices(
  finding: Finding,
  told: readonly ToldOption[],
  knowledge: Knowledge,
): FindingChoices | { readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const given = new Map<string, string | number>();
  let isTold = true;
  const known = finding.options ?? [];
  for (const { name, value } of told) {
    const option = known.find((one) => one.name === name.text);
    if (option === undefined) problems.push(unknownOption(finding, name, knowledge));
    else if (given.has(name.text)) problems.push(twice(name, knowledge));
    else {
      const read = readValue(option, value, knowledge);
      if ('problems' in read) {
        isTold = false;
        problems.push(...read.problems);
      } else given.set(name.text, read.value);
    }
  }
  return problems.length > 0 || !isTold ? { problems } : choicesOf(finding, given, knowledge.environment.resamples);
}

function unknownOption({ name, options = [] }: Finding, cell: Cell, { file }: Knowledge): Problem {
  const names = options.map((option) => option.name);
  const nearest = nearestName(cell.text, names);
  const remedy =
    names.length === 0
      ? `"${name}" can be told nothing: take out what stands behind "with".`
      : nearest === null
        ? `It can be told ${names.join(', ')}.`
        : `Did you mean "${nearest}"?`;
  return cellProblem(file, cell, 'unknown-option', `something that "${name}" can be told`, remedy);
}

function twice(cell: Cell, { file }: Knowledge): Problem {
  return cellProblem(file, cell, 'option-twice', 'each option once', 'Take one of the two out.');
}

function readValue(option: FindingOption, cell: Cell, knowledge: Knowledge): Value {
  if (cell.text.startsWith('"')) return textValue(option, cell.text.slice(1, -1), cell, knowledge);
  if (/^[-0-9]/.test(cell.text)) return numberValue(option, Number(cell.text.replaceAll(',', '')), cell, knowledge);
  return inputValue(option, cell, knowledge);
}

function textValue(option: FindingOption, text: string, cell: Cell, { file }: Knowledge): Value {
  const { name, kind, choices } = option;
  if (kind !== 'text') {
    const wanted = `a number for ${name}${option.unit === null ? '' : `, in ${option.unit}`}`;
    return { problems: [cellProblem(file, cell, 'wrong-option', wanted, 'Write it without quotes.')] };
  }
  if (choices === null || choices.includes(text)) return { value: text };
  const nearest = nearestName(text, choices);
  const remedy = nearest === null ? `Known are ${choices.join(', ')}.` : `Did you mean "${nearest}"?`;
  return { problems: [cellProblem(file, cell, 'wrong-option', `a ${name} that is known`, remedy)] };
}

function numberValue(option: FindingOption, value: number, cell: Cell, { file }: Knowledge): Value {
  const { name, kind, countsFrom } = option;
  const isCount = countsFrom === undefined || (Number.isInteger(value) && value >= countsFrom);
  if (kind === 'number' && Number.isFinite(value) && isCount) return { value };
  const number = countsFrom === undefined ? 'a number' : `a whole number of at least ${countsFrom}`;
  const wanted = kind === 'number' ? `${number} for ${name}` : `a text in quotes for ${name}`;
  return { problems: [cellProblem(file, cell, 'wrong-option', wanted, 'Correct the value.')] };
}

/** The value of an input, in the unit that the option is told in. */
function inputValue(option: FindingOption, cell: Cell, knowledge: Knowledge): Value {
  const { file, values } = knowledge;
  const input = values.get(cell.text);
  if (input?.kind === 'problem') return { problems: [] };
  if (input?.kind === 'text' && input.text !== null) return textValue(option, input.text, cell, knowledge);
  if (input?.kind === 'number' && input.standing === 'given' && input.value !== null) {
    if (option.unit === null) return numberValue(option, input.value, cell, knowledge);
    const unit = readUnit(option.unit);
    const how = 'unknown' in unit ? null : conversion(input.unit, unit.unit);
    if (how !== null) return numberValue(option, convertToCompare(input.value, how), cell, knowledge);
    const wanted = `${option.unit}, not ${describeUnit(input.unit) || 'a plain number'}`;
    return { problems: [cellProblem(file, cell, 'wrong-option', wanted, `Give ${option.name} in that unit.`)] };
  }
  const inputs = [...values].filter(([, value]) => value.kind !== 'number' || value.standing === 'given');
  const nearest = nearestName(
    cell.text,
    inputs.map(([name]) => name),
  );
  const remedy =
    nearest === null ? 'Name an input, or write the value; text stands in quotes.' : `Did you mean "${nearest}"?`;
  return { problems: [cellProblem(file, cell, 'wrong-option', `a value for ${option.name}`, remedy)] };
}
