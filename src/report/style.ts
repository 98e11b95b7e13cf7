import { drawingStyle } from './style/drawing.js';
import { layoutStyle } from './style/layout.js';
import { printStyle } from './style/print.js';
import { tableStyle } from './style/table.js';
import { tokenStyle } from './style/tokens.js';
import { typeStyle } from './style/type.js';

/** The page's whole style sheet. */
export const pageStyle: string = [tokenStyle, typeStyle, layoutStyle, tableStyle, drawingStyle, printStyle].join('\n');
