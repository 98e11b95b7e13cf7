import type { RowValues } from './row-values.js';

/** Values with a value for every row, where one was the same for all of them. */
export function spreadConstant(values: RowValues, length: number): RowValues {
  if (values.kind !== 'constant') return values;
  const { value } = values;
  switch (value.kind) {
    case 'number':
      return { kind: 'number', values: new Float64Array(length).fill(value.value ?? Number.NaN), unit: value.unit };
    case 'date':
      return { kind: 'date', values: new Float64Array(length).fill(value.day ?? Number.NaN), unit: [] };
    case 'text': {
      const codes = new Uint8Array(length).fill(value.text === null ? 0 : 1);
      return { kind: 'text', codes, dictionary: ['', value.text ?? ''] };
    }
    default:
      throw new Error(`${value.kind} was not checked as a field`);
  }
}
