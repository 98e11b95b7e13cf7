import { bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { box } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A houseboat seen from above, its cabin and compartments drawn open. */
export const houseboatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 2 50 C 2 44 22 44 26 46 L 34 50 L 34 66 L 26 70 C 22 72 2 72 2 66 Z'),
    fitting('M 14 14 L 34 14 L 34 102 L 14 102 Z'),
    line('M 20 14 L 20 102 M 27 14 L 27 102', 'faint'),
    body('M 34 8 L 258 8 C 280 10 293 28 294 58 C 293 88 280 106 258 108 L 34 108 Z'),
    line('M 40 14 L 256 14 C 276 16 287 32 288 58 C 287 84 276 100 256 102 L 40 102 Z'),
    fitting(box(76, 18, 160, 80)),
    line('M 76 48 L 76 68 M 236 48 L 236 68', 'outline'),
    line('M 142 18 L 142 38 M 142 78 L 142 98', 'detail'),
    line(`${box(80, 78, 30, 17, 2)} ${box(148, 78, 42, 17, 2)} M 88 78 L 88 95 M 148 86 L 190 86`, 'faint'),
    part('cooling system', box(42, 46, 30, 24, 4), 56, 54),
    line('M 46 52 L 68 52 M 46 58 L 68 58 M 46 64 L 68 64', 'faint'),
    part('wet locker', box(82, 22, 40, 14, 2), 98, 28),
    part('bilge', box(82, 49, 66, 18, 3), 112, 58),
    part('hold', box(150, 22, 44, 20, 4), 172, 32),
    part('life jackets', jacketShape(206, 24), 220, 36),
    line(jacketStraps(206, 24), 'faint'),
    part('gear', bagShape(204, 74), 220, 84),
    line(bagHandles(204, 74), 'faint'),
    part('mooring lines', coilShape(262, 34), 264, 32),
    line(coilTurns(262, 34), 'faint'),
    part('anchor line', coilShape(268, 62), 270, 62),
    line(coilTurns(268, 62), 'faint'),
  ],
};
