import { bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { box } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A sterndrive cruiser seen from above, its compartments drawn open. */
export const sterndriveCruiserPlan: View = {
  name: 'from above',
  width: 296,
  height: 120,
  marks: [
    fitting('M 2 52 C 2 46 22 46 26 48 L 34 52 L 34 68 L 26 72 C 22 74 2 74 2 68 Z'),
    fitting('M 14 16 L 34 16 L 34 104 L 14 104 Z'),
    line('M 20 16 L 20 104 M 27 16 L 27 104', 'faint'),
    body('M 34 12 C 110 4 170 4 218 12 C 258 22 282 42 292 60 C 282 78 258 98 218 108 C 170 116 110 116 34 108 Z'),
    line('M 42 20 C 110 12 168 12 212 20 C 248 29 268 45 278 60 C 268 75 248 91 212 100 C 168 108 110 108 42 100 Z'),
    line('M 152 14.5 L 152 105.5', 'detail'),
    line('M 236 27 L 236 93', 'faint'),
    part('ballast tank', `${box(46, 23, 62, 12, 3)} ${box(46, 85, 62, 12, 3)}`, 76, 91),
    part('cooling system', box(46, 46, 34, 28, 4), 56, 54),
    line('M 50 52 L 76 52 M 50 60 L 76 60 M 50 68 L 76 68', 'faint'),
    part('bilge', box(84, 51, 62, 17, 3), 106, 60),
    part(
      'ballast bag',
      'M 114 86 C 114 82 140 82 144 86 C 147 90 147 95 144 98 C 138 101 118 101 114 98 C 111 94 111 89 114 86 Z',
      132,
      92,
    ),
    part('live well', box(114, 23, 28, 13, 3), 130, 28),
    part('wet locker', box(90, 39, 24, 9, 2), 96, 43),
    part('life jackets', jacketShape(160, 77), 174, 90),
    line(jacketStraps(160, 77), 'faint'),
    part('hold', box(158, 46, 46, 25, 4), 194, 58),
    part('gear', bagShape(162, 24), 178, 32),
    line(bagHandles(162, 24), 'faint'),
    part('mooring lines', coilShape(222, 42), 224, 40),
    line(coilTurns(222, 42), 'faint'),
    part('anchor line', coilShape(256, 60), 258, 62),
    line(coilTurns(256, 60), 'faint'),
  ],
};
