import { bagHandles, bagShape, jacketShape, jacketStraps } from './equipment.js';
import { aboveAndBelow, box } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 58;

/** A rowboat seen from above, with what lies in it. */
export const rowboatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    body('M 10 30 C 70 10 140 4 192 12 C 238 21 274 40 293 58 C 274 76 238 95 192 104 C 140 112 70 106 10 86 Z'),
    line('M 18 36 C 74 18 138 12 188 19 C 230 28 262 44 280 58 C 262 72 230 88 188 97 C 138 104 74 98 18 80 Z'),
    line('M 24 46 L 262 46 M 24 58 L 272 58 M 24 70 L 262 70', 'faint'),
    fitting('M 18 36 L 46 28.5 L 46 87.5 L 18 80 Z'),
    fitting('M 108 15.5 L 128 14.5 L 128 101.5 L 108 100.5 Z'),
    fitting('M 190 19.5 L 208 24 L 208 92 L 190 96.5 Z'),
    fitting('M 256 40.5 L 280 58 L 256 75.5 Z'),
    line('M 27 34 L 27 82 M 36 31 L 36 85', 'faint'),
    fitting(aboveAndBelow(box(141, 5, 14, 8, 2), middle)),
    again(
      'gear',
      aboveAndBelow(
        'M 30 34 C 34 27 64 25 72 28.5 L 214 30 L 230 29 L 230 35 L 214 34 L 72 32.5 C 64 36 36 39 30 34 Z',
        middle,
      ),
    ),
    line(aboveAndBelow('M 36 33.5 L 70 30.5', middle), 'faint'),
    part('life jackets', jacketShape(64, 49), 82, 54),
    line(jacketStraps(64, 49), 'faint'),
    part('gear', bagShape(148, 49), 164, 60),
    line(bagHandles(148, 49), 'faint'),
  ],
};
