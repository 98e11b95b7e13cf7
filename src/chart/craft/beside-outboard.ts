import { outboardBracket, outboardFromSide } from './outboard.js';
import { body, movedMarks, type View } from './view.js';

/** An outboard on a piece of a transom, as some craft of a type have it. */
export const besideOutboard: View = {
  name: 'with outboard',
  width: 92,
  height: 120,
  marks: movedMarks(
    [...outboardBracket, body('M 146 97 L 94 96 L 106 174 L 146 174'), ...outboardFromSide],
    -16,
    -24,
    0.64,
  ),
};
