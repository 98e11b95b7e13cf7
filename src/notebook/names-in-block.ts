import type { Nodes } from 'mdast';
import type { Block } from './evaluated.js';

/** The names that a part of a document shows: those in braces of its prose, those of its table, or the sheet that it draws. */
export function namesInBlock(block: Block): readonly string[] {
  switch (block.kind) {
    case 'prose':
      return [...new Set(namesInProse(block.node))];
    case 'inputs':
    case 'selections':
    case 'figures':
      return block.names;
    case 'sheet':
      return [block.name];
    case 'chart':
      return [block.chart.sheet];
  }
}

function namesInProse(node: Nodes): readonly string[] {
  if (node.type === 'text') return [...node.value.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1]!.trim());
  return 'children' in node ? node.children.flatMap((child) => namesInProse(child as Nodes)) : [];
}
