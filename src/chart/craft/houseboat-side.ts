import { anchorShape, fenderLine, fenderShape } from './equipment.js';
import { box, disc } from './path.js';
import { sterndriveFromSide } from './sterndrive.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A houseboat with a sterndrive, seen from starboard. */
export const houseboatSide: View = {
  name: 'side',
  width: 500,
  height: 236,
  marks: [
    line('M 150 38 L 150 16 L 426 16 L 426 38 M 150 27 L 426 27 M 205 38 L 205 16 M 260 38 L 260 16', 'faint'),
    line('M 315 38 L 315 16 M 370 38 L 370 16', 'faint'),
    fitting('M 334 38 L 338 20 L 350 20 L 362 38 Z'),
    line('M 332 24 L 342 14 M 326 18 L 338 22', 'detail'),
    line('M 100 44 L 100 116 M 432 44 L 432 116', 'detail'),
    line(
      'M 106 116 L 118 44 M 116 116 L 128 44 M 108.5 101 L 118.5 101 M 111 86 L 121 86 M 113.5 71 L 123.5 71',
      'faint',
    ),
    line('M 116 56 L 126 56', 'faint'),
    line('M 408 116 L 408 86 L 488 86 L 488 116 M 408 101 L 488 101 M 448 116 L 448 86 M 468 116 L 468 86', 'faint'),
    line('M 82 116 L 82 88 L 98 88 M 82 102 L 98 102', 'faint'),
    body('M 134 116 L 134 44 L 398 44 L 404 116 Z'),
    fitting(
      `${box(146, 56, 44, 30, 3)} ${box(200, 56, 44, 30, 3)} ${box(290, 56, 44, 30, 3)} ${box(344, 56, 42, 30, 3)}`,
    ),
    fitting(box(254, 52, 26, 64, 2)),
    line(`${box(259, 58, 16, 24, 2)} M 275 92 L 275 98`, 'faint'),
    line('M 168 56 L 168 86 M 222 56 L 222 86 M 312 56 L 312 86 M 365 56 L 365 86', 'faint'),
    fitting(box(90, 38, 352, 6, 2)),
    body('M 78 116 L 492 116 C 490 132 480 150 462 164 C 446 176 428 180 404 180 L 94 180 Z'),
    part(
      'hull below waterline',
      'M 469 158 C 466.8 160.1 464.5 162.1 462 164 C 446 176 428 180 404 180 L 94 180 L 88.5 158 Z',
      372,
      169,
    ),
    part('waterline', 'M 477.2 149 C 474.8 152.1 472 155.1 469 158 L 88.5 158 L 86.2 149 Z', 432, 153.5),
    line('M 79.5 122 L 491.3 122'),
    part('seams and welds', `${box(206, 122, 5, 27)} ${box(296, 122, 5, 27)} ${box(386, 122, 5, 27)}`, 388.5, 136),
    line('M 208.5 158 L 208.5 180 M 298.5 158 L 298.5 180 M 388.5 158 L 388.5 180', 'faint'),
    part('through-hull fittings', `${disc(132, 136, 4)} ${disc(148, 136, 4)} ${disc(172, 136, 4)}`, 172, 136),
    part('fenders', `${fenderShape(242, 124)} ${fenderShape(346, 124)}`, 350, 138),
    line(`${fenderLine(242, 124)} ${fenderLine(346, 124)}`),
    part('anchor', anchorShape(476, 121), 482, 126),
    again('transom', 'M 78 116 L 84 116 L 100 180 L 94 180 Z'),
    part('swim platform', 'M 18 109 L 78 109 L 80 118 L 18 118 Z', 26, 113),
    part('transducer', 'M 112 180 L 130 180 L 125 188 L 110 187 Z', 120, 184),
    ...sterndriveFromSide,
  ],
};
