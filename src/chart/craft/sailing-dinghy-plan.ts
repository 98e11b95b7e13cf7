import { anchorShape, bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { aboveAndBelow, box, disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 58;

/** A sailing dinghy seen from above, with what lies in it. */
export const sailingDinghyPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 2 54 L 16 53 L 16 63 L 2 62 Z'),
    body('M 14 28 C 64 12 130 6 184 12 C 232 20 272 40 293 58 C 272 76 232 96 184 104 C 130 110 64 104 14 88 Z'),
    line('M 30 36 C 74 24 130 20 176 24 C 200 28 212 40 214 58 C 212 76 200 88 176 92 C 130 96 74 92 30 80 Z'),
    line('M 214 58 L 282 58 M 218 22 L 218 94', 'faint'),
    line(aboveAndBelow('M 30 47 L 206 38', middle), 'detail'),
    fitting('M 122 22.5 L 134 22 L 134 94 L 122 93.5 Z'),
    again('centreboard', box(112, 53, 54, 10, 4)),
    line('M 118 58 L 160 58', 'faint'),
    line(disc(228, 58, 5)),
    fitting('M 14 55.5 L 78 56 L 78 60 L 14 60.5 Z'),
    part('gear', bagShape(44, 68), 60, 78),
    line(bagHandles(44, 68), 'faint'),
    part('life jackets', jacketShape(88, 68), 102, 80),
    line(jacketStraps(88, 68), 'faint'),
    part('mooring lines', coilShape(50, 42), 52, 40),
    line(coilTurns(50, 42), 'faint'),
    part('anchor line', coilShape(152, 37), 154, 36),
    line(coilTurns(152, 37), 'faint'),
    part('anchor', anchorShape(174, 66), 182, 70),
  ],
};
