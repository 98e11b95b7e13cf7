import type { Node } from 'yaml';
import type { YamlDocument } from '../yaml-document.js';
import type { Alias } from './alias.js';

/** The aliases that a crosswalk lists itself, or the path of the file that does, beside the crosswalk. */
export interface AliasSource {
  readonly aliases: readonly Alias[];
  readonly file: string | null;
}

/** The section `aliases`: a list of names with region and water, or the path of a CSV file with those columns. */
export function readAliases(yaml: YamlDocument, node: Node): AliasSource {
  if (!yaml.isList(node)) return { aliases: [], file: yaml.text(node, 'a list of aliases, or the path of their file') };
  const aliases = yaml.items(node, 'aliases').flatMap((item): readonly Alias[] => {
    const settings = yaml.settings(item, 'an alias', ['name', 'region', 'waterbody'], ['name', 'waterbody']);
    const [name, region, waterbody] = ['name', 'region', 'waterbody'].map((setting) => {
      const text = settings.get(setting);
      return text === undefined ? '' : (yaml.text(text, `the ${setting}`) ?? '').trim();
    });
    return name === '' || waterbody === '' ? [] : [{ name: name!, region: region!, waterbody: waterbody! }];
  });
  return { aliases, file: null };
}
