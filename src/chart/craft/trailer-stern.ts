import { bothSides, box, disc } from './path.js';
import { again, body, fitting, line, type View } from './view.js';

const middle = 110;

/** A trailer seen from astern. */
export const trailerStern: View = {
  name: 'trailer, stern',
  width: 220,
  height: 132,
  marks: [
    body(bothSides(box(8, 66, 26, 58, 8), middle)),
    line(bothSides('M 14 70 L 14 120 M 21 70 L 21 120 M 28 70 L 28 120', middle), 'faint'),
    fitting(
      bothSides('M 4 62 C 4 52 10 48 21 48 C 32 48 38 52 38 62 L 38 68 L 33 68 L 33 62 L 9 62 L 9 68 L 4 68 Z', middle),
    ),
    fitting(box(38, 98, 144, 7)),
    again('cross-members', box(50, 80, 120, 11)),
    again('tube openings', bothSides(box(44, 76, 19, 19, 2), middle)),
    line(bothSides(box(48, 80, 11, 11, 1), middle)),
    again('brackets', bothSides('M 64 78 L 70 78 L 80 48 L 73 46 Z', middle)),
    again('bunks', bothSides('M 60 40 L 88 50 L 86 58 L 58 47 Z', middle)),
    again('rollers', 'M 92 64 L 106 68 L 114 68 L 128 64 L 128 76 L 114 73 L 106 73 L 92 76 Z'),
    line(`M 88 70 L 92 70 M 128 70 L 132 70 M 110 73 L 110 80`),
    fitting(box(24, 106, 30, 9, 2)),
    fitting(box(166, 106, 30, 9, 2)),
    line(`${disc(34, 110.5, 2.5)} ${disc(186, 110.5, 2.5)}`),
  ],
};
