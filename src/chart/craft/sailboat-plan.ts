import { bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { box, disc } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A sailboat seen from above, its compartments drawn open. */
export const sailboatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 4 54 L 24 52 L 24 64 L 4 62 Z'),
    body('M 18 32 C 70 14 140 8 190 14 C 236 22 274 42 292 58 C 274 74 236 94 190 102 C 140 108 70 102 18 84 Z'),
    line('M 26 38 C 76 22 142 16 188 22 C 230 30 262 46 278 58 C 262 70 230 86 188 94 C 142 100 76 94 26 78 Z'),
    line('M 98 24 L 98 92', 'detail'),
    line('M 214 29 L 214 87', 'faint'),
    line(disc(176, 58, 4)),
    part('wet locker', 'M 34 76 L 90 86 L 90 76 L 34 68 Z', 52, 74),
    part('mooring lines', coilShape(48, 46), 48, 44),
    line(coilTurns(48, 46), 'faint'),
    part('cooling system', box(64, 44, 30, 24, 4), 80, 58),
    line('M 69 50 L 89 50 M 69 56 L 89 56 M 69 62 L 89 62', 'faint'),
    part('bilge', box(102, 49, 62, 17, 3), 132, 58),
    part('hold', box(104, 28, 50, 15, 3), 130, 34),
    part('gear', bagShape(106, 74), 124, 84),
    line(bagHandles(106, 74), 'faint'),
    part('life jackets', jacketShape(184, 66), 198, 78),
    line(jacketStraps(184, 66), 'faint'),
    part('anchor line', coilShape(238, 58), 240, 60),
    line(coilTurns(238, 58), 'faint'),
  ],
};
