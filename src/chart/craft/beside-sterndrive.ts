import { sterndriveFromSide } from './sterndrive.js';
import { body, movedMarks, type View } from './view.js';

/** A sterndrive on a piece of a transom, as some craft of a type have it. */
export const besideSterndrive: View = {
  name: 'with sterndrive',
  width: 122,
  height: 120,
  marks: movedMarks([body('M 128 112 L 77 112 L 94 180 L 128 180'), ...sterndriveFromSide], -6, -106),
};
