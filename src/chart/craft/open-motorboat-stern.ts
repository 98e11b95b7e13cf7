import { outboardFromAstern } from './outboard.js';
import { bothSides, box, disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** An open motorboat with an outboard, seen from astern. */
export const openMotorboatStern: View = {
  name: 'stern',
  width: 190,
  height: 190,
  marks: [
    fitting('M 30 40 L 44 16 L 146 16 L 160 40 Z'),
    line('M 44 16 L 60 40 M 146 16 L 130 40', 'faint'),
    body('M 8 40 L 182 40 C 180 62 174 84 166 104 L 156 110 L 95 134 L 34 110 L 24 104 C 16 84 10 62 8 40 Z'),
    part('transom', 'M 20 46 L 170 46 C 168 66 163 84 156 101 L 95 124 L 34 101 C 27 84 22 66 20 46 Z', 50, 60),
    again('hull below waterline', 'M 34 110 L 95 134 L 156 110 L 156 105 L 95 128 L 34 105 Z'),
    again('seams and welds', bothSides('M 24 104 L 34 110 L 34 105 L 27 101 Z', middle)),
    again('through-hull fittings', `${disc(48, 88, 3.5)} ${disc(142, 88, 3.5)}`),
    again('zincs', disc(128, 58, 5)),
    line('M 125 55 L 131 61 M 131 55 L 125 61', 'faint'),
    again('swim platform', bothSides(box(22, 70, 44, 8, 2), middle)),
    line(bothSides('M 30 78 L 36 90 M 58 78 L 52 90', middle), 'faint'),
    part(
      'trim tabs and rams',
      bothSides('M 40 112 L 74 125.5 L 74 131 L 40 117.5 Z M 54 94 L 59 94 L 60 121 L 57 120 Z', middle),
      48,
      117.5,
    ),
    again('transducer', 'M 138 118 L 150 113.5 L 150 119 L 140 123 Z'),
    again('speed indicator', 'M 130 121 L 134 119.5 L 134 131 L 130 131 Z'),
    ...outboardFromAstern,
  ],
};
