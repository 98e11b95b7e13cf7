import { anchorShape, bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { aboveAndBelow, box } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** An open motorboat seen from above, its compartments drawn open. */
export const openMotorboatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 2 46 C 2 40 6 38 12 38 L 26 40 C 32 42 32 74 26 76 L 12 78 C 6 78 2 76 2 70 Z'),
    line('M 31 50 L 36 50 M 31 66 L 36 66'),
    body('M 36 14 C 110 6 170 6 214 12 C 254 20 282 40 292 58 C 282 76 254 96 214 104 C 170 110 110 110 36 102 Z'),
    line(
      'M 44 22 C 110 15 168 15 208 20 C 244 27 268 43 277 58 C 268 73 244 89 208 96 C 168 101 110 101 44 94 Z',
      'detail',
    ),
    line('M 216 21.5 L 216 94.5 M 130 17 L 130 99 M 154 17.5 L 154 98.5', 'faint'),
    line('M 154 24 L 172 30 L 172 86 L 154 92', 'detail'),
    part('bilge', box(48, 50, 62, 16, 3), 60, 58),
    part('live well', box(48, 25, 36, 19, 3), 66, 34),
    part('bait well', box(90, 25, 22, 19, 3), 101, 34),
    part('wet locker', box(48, 72, 40, 19, 3), 68, 82),
    part('life jackets', jacketShape(100, 73), 116, 86),
    line(jacketStraps(100, 73), 'faint'),
    part('gear', bagShape(176, 66), 192, 78),
    line(bagHandles(176, 66), 'faint'),
    line(aboveAndBelow(box(134, 26, 16, 22, 4), 58)),
    part('mooring lines', coilShape(195, 40), 196, 38),
    line(coilTurns(195, 40), 'faint'),
    part('anchor', anchorShape(240, 49), 246, 52),
    part('anchor line', coilShape(229, 68), 232, 72),
    line(coilTurns(229, 68), 'faint'),
  ],
};
