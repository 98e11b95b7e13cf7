import { choiceStyle } from './style/choice.js';
import { drawingStyle } from './style/drawing.js';
import { handoutStyle } from './style/handout.js';
import { layoutStyle } from './style/layout.js';
import { printStyle } from './style/print.js';
import { tableStyle } from './style/table.js';
import { tokenStyle } from './style/tokens.js';
import { typeStyle } from './style/type.js';

/** The whole style sheet of a page of that title. */
export function pageStyle(title: string): string {
  return [
    tokenStyle,
    typeStyle,
    layoutStyle,
    tableStyle,
    drawingStyle,
    choiceStyle,
    printStyle(title),
    handoutStyle,
  ].join('\n');
}
