import { anchorShape, bagHandles, bagShape, coilShape, coilTurns, jacketShape, jacketStraps } from './equipment.js';
import { box, disc } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

/** A pontoon boat seen from above, its compartments drawn open. */
export const pontoonBoatPlan: View = {
  name: 'from above',
  width: 296,
  height: 116,
  marks: [
    fitting('M 2 46 C 2 40 6 38 12 38 L 26 40 C 32 42 32 74 26 76 L 12 78 C 6 78 2 76 2 70 Z'),
    body('M 282 12 C 290 14 295 19 296 23 L 282 32 Z M 282 84 L 296 93 C 295 97 290 102 282 104 Z'),
    body('M 36 10 L 276 10 C 282 10 285 13 285 20 L 285 96 C 285 103 282 106 276 106 L 36 106 Z'),
    line('M 46 17 L 270 17 C 276 17 278 19 278 24 L 278 92 C 278 97 276 99 270 99 L 46 99 Z', 'detail'),
    line('M 36 58 L 46 58', 'faint'),
    line(`${box(52, 20, 62, 14, 3)} ${box(196, 20, 76, 14, 3)} ${box(196, 82, 76, 14, 3)}`),
    line(`${box(142, 72, 22, 24, 4)} ${disc(153, 66, 4)}`),
    part('wet locker', box(54, 22, 28, 10, 2), 68, 26),
    part('life jackets', jacketShape(202, 78), 216, 90),
    line(jacketStraps(202, 78), 'faint'),
    part('bilge', box(52, 50, 56, 15, 3), 78, 58),
    part('live well', box(52, 74, 34, 18, 3), 70, 84),
    part('bait well', box(92, 74, 22, 18, 3), 104, 84),
    part('gear', bagShape(200, 46), 216, 55),
    line(bagHandles(200, 46), 'faint'),
    part('mooring lines', coilShape(134, 30), 136, 28),
    line(coilTurns(134, 30), 'faint'),
    part('anchor', anchorShape(244, 50), 250, 54),
    part('anchor line', coilShape(256, 27), 258, 27),
    line(coilTurns(256, 27), 'faint'),
  ],
};
