import type { Node } from 'yaml';
import { side } from '../record/codes.js';
import { components } from '../record/components.js';
import type { YamlDocument } from './yaml-document.js';

/** The sides of a craft, as records know them. */
export const sides = side.codes.map(({ code }) => code);

const componentNames = components.map(({ component }) => component);

/** A part of a craft that a checklist asks for. */
export interface CraftPart {
  readonly component: string;
  readonly side: string;
}

/** A component of the catalogue; null, and a problem, for any other name. */
export function readComponent(yaml: YamlDocument, node: Node): string | null {
  const component = yaml.text(node, 'a component');
  if (component === null || componentNames.includes(component)) return component;
  yaml.complainOfName('unknown-code', node, component, 'a part of the catalogue', componentNames);
  return null;
}

/** A part of a craft: a component alone, or a map of component and side. */
export function readPart(yaml: YamlDocument, node: Node, what: string): CraftPart | null {
  if (!yaml.isMap(node)) {
    const component = readComponent(yaml, node);
    return component === null ? null : { component, side: 'none' };
  }
  const settings = yaml.settings(node, what, ['component', 'side'], ['component']);
  const componentNode = settings.get('component');
  const component = componentNode === undefined ? null : readComponent(yaml, componentNode);
  const sideNode = settings.get('side');
  const sideName = sideNode === undefined ? 'none' : yaml.word(sideNode, 'a side', sides);
  return component === null || sideName === null ? null : { component, side: sideName };
}
