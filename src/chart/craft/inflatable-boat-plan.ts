import { anchorShape, bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { box } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** An inflatable boat seen from above, with what lies in it. */
export const inflatableBoatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 2 46 C 2 40 6 38 12 38 L 26 40 C 32 42 32 74 26 76 L 12 78 C 6 78 2 76 2 70 Z'),
    line('M 31 50 L 40 50 M 31 66 L 40 66'),
    body(
      'M 14 20 C 22 12 32 10 44 10 L 206 8 C 254 10 284 36 294 58 C 284 80 254 106 206 108 L 44 106 C 32 106 22 104 14 96 C 22 88 32 84 44 84 L 44 32 C 32 32 22 28 14 20 Z',
    ),
    line('M 44 32 L 204 30 C 232 32 252 46 260 58 C 252 70 232 84 204 86 L 44 84 Z'),
    fitting('M 40 34 L 48 34 L 48 82 L 40 82 Z'),
    line('M 44 21 L 204 19 C 244 21 268 42 278 58 C 268 74 244 95 204 97 L 44 95', 'faint'),
    line('M 92 9.5 L 92 31.5 M 92 84.5 L 92 106.5 M 168 8.5 L 168 30.5 M 168 85.5 L 168 107.5', 'faint'),
    fitting(`${box(150, 44, 26, 28, 4)} ${box(112, 42, 22, 32, 5)}`),
    line('M 170 46 L 170 70 M 117 42 L 117 74', 'faint'),
    part('bilge', box(54, 50, 46, 16, 3), 66, 58),
    part('gear', bagShape(56, 67), 72, 76),
    line(bagHandles(56, 67), 'faint'),
    part('life jackets', jacketShape(184, 62), 200, 72),
    line(jacketStraps(184, 62), 'faint'),
    part('mooring lines', coilShape(68, 41), 70, 40),
    line(coilTurns(68, 41), 'faint'),
    part('anchor line', coilShape(196, 44), 198, 42),
    line(coilTurns(196, 44), 'faint'),
    part('anchor', anchorShape(218, 49), 226, 53),
  ],
};
