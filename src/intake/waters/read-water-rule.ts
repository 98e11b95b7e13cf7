import type { Node } from 'yaml';
import type { Field } from '../../record/field.js';
import type { FieldRule } from '../crosswalk.js';
import type { YamlDocument } from '../yaml-document.js';
import { heldField, type WaterRule } from './alias.js';

/** The settings of a column whose names of waters are matched. */
export const waterSettings = ['match', 'region_column', 'region'] as const;

function heldRule(field: WaterRule['written'], column: string): FieldRule {
  return {
    field,
    columns: [column],
    codes: null,
    pattern: null,
    conversion: null,
    unit: null,
    hashed: false,
    fromRegistration: false,
    isWritten: false,
    preparation: null,
    missing: null,
    missingWhy: null,
    anyCase: false,
  };
}

/**
 * How a column of names is matched with the waters: the rule, and how its cells are held until then. Null, and a problem,
 * where the field refers to no water.
 */
export function readWaterRule(
  yaml: YamlDocument,
  node: Node,
  field: Field,
  column: string,
  settings: ReadonlyMap<string, Node>,
): { readonly rule: WaterRule; readonly held: readonly FieldRule[] } | null {
  if (field.type !== 'reference' || field.to !== 'waterbodies' || field.required) {
    yaml.complain('useless-setting', settings.get('match')!, 'match', 'a field that names a water', 'Remove it.');
    return null;
  }
  yaml.word(settings.get('match')!, 'by what the names are matched', ['aliases']);
  for (const [name, value] of settings) {
    if (name === 'field' || (waterSettings as readonly string[]).includes(name)) continue;
    yaml.complain('useless-setting', value, name, 'a setting that matched names can use', 'Remove it.');
  }
  const textOf = (name: string): string => {
    const setting = settings.get(name);
    return setting === undefined ? '' : (yaml.text(setting, `the ${name}`) ?? '').trim();
  };
  const regionColumn = textOf('region_column');
  if (regionColumn !== '' && settings.has('region')) {
    yaml.complain('useless-setting', node, 'region', 'either a region or its column', 'Remove one.');
  }
  const written = heldField(field, 'as written');
  const regionWritten = regionColumn === '' ? null : heldField(field, 'region as written');
  return {
    rule: { field, written, regionWritten, region: textOf('region') },
    held: [heldRule(written, column), ...(regionWritten === null ? [] : [heldRule(regionWritten, regionColumn)])],
  };
}
