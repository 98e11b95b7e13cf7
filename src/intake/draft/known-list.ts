import type { TableName } from '../../record/field.js';
import type { Alias } from '../waters/alias.js';
import type { FileKind } from './file-kinds.js';
import type { FileProposal } from './proposal.js';

/** What drafted files list of one table: the keys, and the names that stand beside them. */
export interface KnownList {
  readonly table: TableName;
  readonly keys: ReadonlySet<string>;
  readonly names: readonly Alias[];
  /** Whether all rows of the list were looked at. */
  readonly isWhole: boolean;
}

/** The tables that others refer to by keys which people choose, and write in several ways. */
const keyFields: Readonly<Partial<Record<TableName, string>>> = {
  stations: 'station',
  waterbodies: 'waterbody',
  wash_units: 'unit',
};

/** A file of a draft with what is proposed for it. */
export interface DraftedFile {
  readonly kind: FileKind;
  readonly proposal: FileProposal;
}

/** The place of the column that is proposed for a field; -1 for none. */
export function placeOfField({ kind, proposal }: DraftedFile, field: string): number {
  const column = proposal.columns.find(({ use }) => use.kind === 'field' && use.field === field)?.column;
  return column === undefined ? -1 : kind.samples[0]!.headings.indexOf(column);
}

/** The lists of a table as one; null where no file lists it. */
export function listOf(lists: readonly KnownList[], table: TableName): KnownList | null {
  const all = lists.filter((list) => list.table === table);
  if (all.length === 0) return null;
  return {
    table,
    keys: new Set(all.flatMap(({ keys }) => [...keys])),
    names: all.flatMap(({ names }) => names),
    isWhole: all.every(({ isWhole }) => isWhole),
  };
}

/** What the files of a draft list of stations, waters and wash units. */
export function knownLists(files: readonly DraftedFile[]): readonly KnownList[] {
  return files.flatMap((file): readonly KnownList[] => {
    const { table, isWhole } = file.proposal;
    const key = placeOfField(file, keyFields[table.name] ?? '');
    if (key < 0) return [];
    const [name, region] = [placeOfField(file, 'name'), placeOfField(file, 'region')];
    const rows = file.kind.samples.flatMap((sample) => sample.rows).filter((row) => row[key] !== '');
    const names = new Map(
      rows.flatMap((row) => {
        const alias = { name: row[name] ?? '', region: row[region] ?? '', waterbody: row[key]! };
        return alias.name === '' ? [] : [[JSON.stringify(alias), alias] as const];
      }),
    );
    return [{ table: table.name, keys: new Set(rows.map((row) => row[key]!)), names: [...names.values()], isWhole }];
  });
}
