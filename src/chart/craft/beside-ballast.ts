import { box } from './path.js';
import { body, line, part, type View } from './view.js';

/** The stern of a boat with water ballast from above, as some craft of a type have it. */
export const besideBallast: View = {
  name: 'with ballast',
  width: 132,
  height: 120,
  marks: [
    body('M 126 20 L 8 24 L 8 96 L 126 100'),
    line('M 14 30 L 126 26 M 14 90 L 126 94 M 14 30 L 14 90', 'detail'),
    part('ballast tank', `${box(20, 34, 70, 12, 3)} ${box(20, 74, 70, 12, 3)}`, 42, 40),
    part(
      'ballast bag',
      'M 44 53 C 44 48 74 48 78 53 C 82 58 82 64 78 68 C 72 71 50 71 44 68 C 40 64 40 58 44 53 Z',
      60,
      61,
    ),
    line('M 51 49.5 L 51 70.5 M 73 50 L 73 70.5', 'faint'),
  ],
};
