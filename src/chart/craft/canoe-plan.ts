import { bagHandles, bagShape, jacketShape, jacketStraps } from './equipment.js';
import { aboveAndBelow, box, turnedOver } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 37;
const side = 'M 3 37 C 50 18 100 7 148 7 C 196 7 246 18 293 37';

/** A canoe seen from above, with what lies in it. */
export const canoePlan: View = {
  name: 'canoe, from above',
  width: 296,
  height: 74,
  marks: [
    body(`${side} C 246 56 196 67 148 67 C 100 67 50 56 3 37 Z`),
    line('M 14 37 C 56 22 102 12 148 12 C 194 12 240 22 282 37 C 240 52 194 62 148 62 C 102 62 56 52 14 37 Z'),
    fitting(aboveAndBelow('M 3 37 L 24 28.5 C 28 31 28 35 28 37', middle)),
    fitting(aboveAndBelow('M 293 37 L 272 28.5 C 268 31 268 35 268 37', middle)),
    fitting(`${box(62, 21, 16, 32, 2)}`),
    fitting(`${box(212, 20, 14, 34, 2)}`),
    line('M 66 21 L 66 53 M 70 21 L 70 53 M 74 21 L 74 53 M 216 20 L 216 54 M 220 20 L 220 54', 'faint'),
    fitting('M 145 12 L 145 30 C 141 34 141 40 145 44 L 145 62 L 151 62 L 151 44 C 155 40 155 34 151 30 L 151 12 Z'),
    line(turnedOver('M 28 37 L 62 37', middle), 'faint'),
    part('life jackets', jacketShape(94, 20), 110, 26),
    line(jacketStraps(94, 20), 'faint'),
    part('gear', bagShape(168, 20), 184, 33),
    line(bagHandles(168, 20), 'faint'),
    again(
      'gear',
      'M 88 48 L 94 44.5 L 96 47 L 190 47.5 C 198 44 216 43 221 49 C 216 55 198 54 190 50.5 L 96 50 L 94 52 Z',
    ),
  ],
};
