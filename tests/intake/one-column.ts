import { importSmall, valuesOf } from './small-import.js';

/**
 * Imports one column of cells into a field of wash units, and says what became of each: its value, or the code of the problem
 * that set its row aside.
 */
export async function cellsOf(column: string, cells: readonly string[], settings = ''): Promise<readonly unknown[]> {
  const result = await importSmall(
    `
crosswalk: cells
files:
  - files: units.csv
    table: wash_units
    dialect: { delimiter: semicolon }
    missing: ["", NA, "-9"]
${settings}
    columns:
      no: { field: unit }
      cell: ${column}
    constants: { ${column.includes('field: kind') ? '' : 'kind: portable'} }
`,
    { 'units.csv': `no;cell\n${cells.map((cell, row) => `${row};"${cell.replaceAll('"', '""')}"\n`).join('')}` },
  );
  if (result.problems.length > 0) return result.problems.map(({ code }) => code);
  const field = /field: (\w+)/.exec(column)![1]!;
  const kept = valuesOf(result, 'wash_units', field);
  const lines = [...result.records.wash_units.origin.lineOf];
  return cells.map((_, row) => {
    const at = lines.indexOf(row + 2);
    return at >= 0 ? kept[at] : result.setAside.find(({ line }) => line === row + 2)!.code;
  });
}
