import type { DefinitionChange, ImportSum } from '../record/file-sum.js';

/**
 * The first change of the meaning of some fields of a table that lies between two seasons: after the earlier, at the later or
 * before it, so that a season without records does not hide it; null where none does.
 */
export function definitionBreak(
  { definitionChanges }: ImportSum,
  { table, fields }: { readonly table: DefinitionChange['table']; readonly fields: readonly string[] },
  [earlier, later]: readonly [number, number],
): DefinitionChange | null {
  return (
    definitionChanges.find(
      (one) => one.table === table && fields.includes(one.field) && one.season > earlier && one.season <= later,
    ) ?? null
  );
}
