import { bagHandles, bagShape, jacketShape, jacketStraps } from './equipment.js';
import { aboveAndBelow, box } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A personal watercraft seen from above, its hull drawn open under the seat. */
export const personalWatercraftPlan: View = {
  name: 'from above',
  width: 296,
  height: 110,
  marks: [
    fitting('M 6 45 L 26 43 L 26 67 L 6 65 Z'),
    body(
      'M 24 24 C 24 18 28 14 36 14 L 190 10 C 236 10 272 30 288 55 C 272 80 236 100 190 100 L 36 96 C 28 96 24 92 24 86 Z',
    ),
    line('M 34 24 L 188 20 C 226 20 258 36 272 55 C 258 74 226 90 188 90 L 34 86 Z', 'faint'),
    fitting('M 40 40 C 40 34 44 32 52 32 L 150 36 L 168 55 L 150 74 L 52 78 C 44 78 40 76 40 70 Z'),
    line(aboveAndBelow('M 176 54 L 168 30 L 158 14', 55), 'outline'),
    line(aboveAndBelow('M 44 24 L 146 24', 55), 'faint'),
    part('bilge', box(48, 46, 42, 18, 3), 60, 58),
    part('cooling system', box(98, 43, 40, 24, 4), 124, 50),
    line('M 104 49 L 132 49 M 104 55 L 132 55 M 104 61 L 132 61', 'faint'),
    fitting('M 190 32 L 256 42 L 256 68 L 190 78 Z'),
    part('life jackets', jacketShape(197, 45), 208, 56),
    line(jacketStraps(197, 45), 'faint'),
    part('gear', bagShape(225, 47), 240, 58),
    line(bagHandles(225, 47), 'faint'),
  ],
};
